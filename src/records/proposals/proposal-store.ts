import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Json } from '../../core/json.ts';

/** Something shown to a person that takes effect only when they say so. */
export interface Proposal {
  readonly id: number;
  readonly personId: string;
  /** What it is to become: `orders`, `record`. */
  readonly kind: string;
  readonly content: Json;
}

export interface ProposalStore {
  /** Keeps it, and forgets those that nobody has said yes to for thirty days. */
  keep(proposal: Omit<Proposal, 'id'>, atMs: number): Proposal;
  find(id: number): Proposal | undefined;
  forget(id: number): void;
}

const KEPT_FOR_MS = 30 * 24 * 3_600_000;

const ProposalRow = z
  .object({ id: z.int(), person_id: z.string(), kind: z.string(), content: z.string() })
  .transform(
    ({ id, person_id: personId, kind, content }): Proposal => ({
      id,
      personId,
      kind,
      content: z.json().parse(JSON.parse(content)),
    }),
  );

export function openProposalStore(db: Database): ProposalStore {
  const insert = db.prepare('INSERT INTO proposal (person_id, kind, content, at_ms) VALUES (?, ?, ?, ?)');
  const byId = db.prepare('SELECT id, person_id, kind, content FROM proposal WHERE id = ?');
  const remove = db.prepare('DELETE FROM proposal WHERE id = ?');
  const removeOld = db.prepare('DELETE FROM proposal WHERE at_ms < ?');
  return {
    keep(proposal, atMs) {
      removeOld.run(atMs - KEPT_FOR_MS);
      const { personId, kind, content } = proposal;
      const saved = insert.run(personId, kind, JSON.stringify(content), atMs);
      return { ...proposal, id: Number(saved.lastInsertRowid) };
    },
    find: (id) => ProposalRow.optional().parse(byId.get(id)),
    forget: (id) => void remove.run(id),
  };
}
