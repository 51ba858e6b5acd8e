import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Port } from './port.ts';

const PortRow = z
  .object({
    id: z.int(),
    build_id: z.int(),
    name: z.string(),
    end_id: z.string(),
    typed: z.string(),
    note: z.string().nullable(),
    link: z.string().nullable(),
    noted_by: z.string(),
    noted_on: z.string(),
  })
  .transform(
    ({ build_id: buildId, end_id: endId, noted_by: notedBy, noted_on: notedOn, ...same }): Port => ({
      ...same,
      buildId,
      endId,
      notedBy,
      notedOn,
    }),
  );

export interface PortStore {
  note(port: Omit<Port, 'id'>): Port;
  correct(port: Port): void;
  remove(id: number): void;
  find(id: number): Port | undefined;
  /** All ports of a build, by name. */
  ofBuild(buildId: number): readonly Port[];
}

export function openPortStore(db: Database): PortStore {
  const insert = db.prepare(
    `INSERT INTO port (build_id, name, end_id, typed, note, link, noted_by, noted_on)
     VALUES (@buildId, @name, @endId, @typed, @note, @link, @notedBy, @notedOn) RETURNING *`,
  );
  const update = db.prepare(
    `UPDATE port SET name = @name, end_id = @endId, typed = @typed, note = @note, link = @link,
       noted_by = @notedBy, noted_on = @notedOn WHERE id = @id`,
  );
  const remove = db.prepare('DELETE FROM port WHERE id = ?');
  const byId = db.prepare('SELECT * FROM port WHERE id = ?');
  const ofBuild = db.prepare('SELECT * FROM port WHERE build_id = ? ORDER BY name COLLATE NOCASE, id');
  return {
    note: (port) => PortRow.parse(insert.get(port)),
    correct: (port) => void update.run(port),
    remove: (id) => void remove.run(id),
    find: (id) => PortRow.optional().parse(byId.get(id)),
    ofBuild: (buildId) => z.array(PortRow).parse(ofBuild.all(buildId)),
  };
}
