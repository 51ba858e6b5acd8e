import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Json } from '../../core/json.ts';
import type { Choice } from '../../core/user-error.ts';

/** A request that waits for one question to be settled. Kept, so that nothing has to be typed twice. */
export interface Draft {
  readonly id: number;
  readonly personId: string;
  readonly request: Json;
  readonly field: string;
  readonly choices: readonly Choice[];
}

/** Afterwards nobody presses a button of a message that old. */
const KEPT_FOR_MS = 30 * 24 * 3_600_000;

export interface DraftStore {
  /** Keeps one, and lets go of those older than 30 days. */
  keep(draft: Omit<Draft, 'id'>, atMs: number): Draft;
  find(id: number): Draft | undefined;
}

const DraftRow = z
  .object({ id: z.int(), person_id: z.string(), request: z.string(), field: z.string(), choices: z.string() })
  .transform(
    ({ id, person_id: personId, request, field, choices }): Draft => ({
      id,
      personId,
      request: z.json().parse(JSON.parse(request)),
      field,
      choices: z.array(z.object({ label: z.string(), value: z.string() })).parse(JSON.parse(choices)),
    }),
  );

export function openDraftStore(db: Database): DraftStore {
  const insert = db.prepare(
    'INSERT INTO draft (person_id, request, field, choices, at_ms) VALUES (?, ?, ?, ?, ?)',
  );
  const forget = db.prepare('DELETE FROM draft WHERE at_ms < ?');
  const byId = db.prepare('SELECT id, person_id, request, field, choices FROM draft WHERE id = ?');
  return {
    keep(draft, atMs) {
      forget.run(atMs - KEPT_FOR_MS);
      const { personId, request, field, choices } = draft;
      const saved = insert.run(personId, JSON.stringify(request), field, JSON.stringify(choices), atMs);
      return { ...draft, id: Number(saved.lastInsertRowid) };
    },
    find: (id) => DraftRow.optional().parse(byId.get(id)),
  };
}
