import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { LogHeader } from './log-header.ts';

const Roles = z.record(z.string(), z.string());

const HeaderRow = z
  .object({
    id: z.int(),
    fingerprint: z.string(),
    roles: z.string(),
    told_by: z.string(),
    told_on: z.string(),
  })
  .transform(
    ({ id, fingerprint, roles, told_by: toldBy, told_on: toldOn }): LogHeader => ({
      id,
      fingerprint,
      roles: Roles.parse(JSON.parse(roles)),
      toldBy,
      toldOn,
    }),
  );

export interface LogHeaderStore {
  /** Keeps what was said of a header, in place of what was said before. */
  tell(header: Omit<LogHeader, 'id'>): LogHeader;
  forget(id: number): void;
  find(id: number): LogHeader | undefined;
  ofMark(fingerprint: string): LogHeader | undefined;
  all(): readonly LogHeader[];
}

export function openLogHeaderStore(db: Database): LogHeaderStore {
  const insert = db.prepare(
    `INSERT INTO log_header (fingerprint, roles, told_by, told_on)
     VALUES (@fingerprint, @roles, @toldBy, @toldOn) RETURNING *`,
  );
  const update = db.prepare(
    `UPDATE log_header SET roles = @roles, told_by = @toldBy, told_on = @toldOn
     WHERE fingerprint = @fingerprint RETURNING *`,
  );
  const remove = db.prepare('DELETE FROM log_header WHERE id = ?');
  const byId = db.prepare('SELECT * FROM log_header WHERE id = ?');
  const byMark = db.prepare('SELECT * FROM log_header WHERE fingerprint = ?');
  const all = db.prepare('SELECT * FROM log_header ORDER BY id DESC');
  const ofMark = (mark: string) => HeaderRow.optional().parse(byMark.get(mark));
  return {
    tell(header) {
      const row = { ...header, roles: JSON.stringify(header.roles) };
      return HeaderRow.parse(ofMark(header.fingerprint) === undefined ? insert.get(row) : update.get(row));
    },
    forget: (id) => void remove.run(id),
    find: (id) => HeaderRow.optional().parse(byId.get(id)),
    ofMark,
    all: () => z.array(HeaderRow).parse(all.all()),
  };
}
