import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import {
  CONDITION_COLUMNS,
  ConditionRow,
  columnsOf,
  conditionsIn,
  GIVEN_CONDITIONS,
} from './condition-columns.ts';
import type { OwnKind, OwnLimit } from './reading.ts';

const KindRow = z
  .object({ id: z.int(), build_id: z.int(), name: z.string(), unit: z.string() })
  .transform(({ build_id: buildId, ...same }): OwnKind => ({ ...same, buildId }));

const LimitRow = z
  .object({
    id: z.int(),
    build_id: z.int(),
    kind: z.string(),
    min: z.number().nullable(),
    max: z.number().nullable(),
    ...ConditionRow,
    origin: z.enum(['maker', 'crew']),
    typed: z.string(),
    by_name: z.string(),
    set_on: z.string(),
  })
  .transform(
    (row): OwnLimit => ({
      id: row.id,
      buildId: row.build_id,
      kind: row.kind,
      min: row.min,
      max: row.max,
      conditions: conditionsIn(row),
      origin: row.origin,
      typed: row.typed,
      byName: row.by_name,
      setOn: row.set_on,
    }),
  );

/** What a crew measures by its own reckoning: kinds it made for itself, and the limits it goes by. */
export interface ReadingRuleStore {
  addKind(kind: Omit<OwnKind, 'id'>): OwnKind;
  changeKind(kind: OwnKind): void;
  removeKind(id: number): void;
  ownKinds(buildId: number): readonly OwnKind[];

  addLimit(limit: Omit<OwnLimit, 'id'>): OwnLimit;
  removeLimit(id: number): void;
  findLimit(id: number): OwnLimit | undefined;
  limits(buildId: number): readonly OwnLimit[];
}

export function openReadingRuleStore(db: Database): ReadingRuleStore {
  const addKind = db.prepare(
    'INSERT INTO reading_kind (build_id, name, unit) VALUES (@buildId, @name, @unit) RETURNING *',
  );
  const changeKind = db.prepare('UPDATE reading_kind SET name = @name, unit = @unit WHERE id = @id');
  const removeKind = db.prepare('DELETE FROM reading_kind WHERE id = ?');
  const ownKinds = db.prepare('SELECT * FROM reading_kind WHERE build_id = ? ORDER BY name COLLATE NOCASE');
  const addLimit = db.prepare(
    `INSERT INTO reading_limit (build_id, kind, min, max, ${CONDITION_COLUMNS}, origin, typed, by_name, set_on)
     VALUES (@buildId, @kind, @min, @max, ${GIVEN_CONDITIONS}, @origin, @typed, @byName, @setOn) RETURNING *`,
  );
  const removeLimit = db.prepare('DELETE FROM reading_limit WHERE id = ?');
  const limitById = db.prepare('SELECT * FROM reading_limit WHERE id = ?');
  const limits = db.prepare('SELECT * FROM reading_limit WHERE build_id = ? ORDER BY kind, id');
  return {
    addKind: (kind) => KindRow.parse(addKind.get(kind)),
    changeKind: (kind) => void changeKind.run(kind),
    removeKind: (id) => void removeKind.run(id),
    ownKinds: (buildId) => z.array(KindRow).parse(ownKinds.all(buildId)),
    addLimit: ({ conditions, ...limit }) =>
      LimitRow.parse(addLimit.get({ ...limit, ...columnsOf(conditions) })),
    removeLimit: (id) => void removeLimit.run(id),
    findLimit: (id) => LimitRow.optional().parse(limitById.get(id)),
    limits: (buildId) => z.array(LimitRow).parse(limits.all(buildId)),
  };
}
