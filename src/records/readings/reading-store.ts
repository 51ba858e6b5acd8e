import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import {
  CONDITION_COLUMNS,
  ConditionRow,
  columnsOf,
  conditionsIn,
  GIVEN_CONDITIONS,
} from './condition-columns.ts';
import type { Reading, Sample } from './reading.ts';

const ReadingRow = z
  .object({
    id: z.int(),
    build_id: z.int(),
    kind: z.string(),
    value: z.number(),
    unit: z.string(),
    shown_in: z.string(),
    typed: z.string(),
    ...ConditionRow,
    taken_at_ms: z.int(),
    by_name: z.string(),
    note: z.string().nullable(),
    link: z.string().nullable(),
    first_value: z.number().nullable(),
    set_id: z.int().nullable(),
  })
  .transform(
    (row): Reading => ({
      id: row.id,
      buildId: row.build_id,
      kind: row.kind,
      value: row.value,
      unit: row.unit,
      shownIn: row.shown_in,
      typed: row.typed,
      conditions: conditionsIn(row),
      takenAtMs: row.taken_at_ms,
      byName: row.by_name,
      note: row.note,
      link: row.link,
      firstValue: row.first_value,
      setId: row.set_id,
    }),
  );

const SampleRow = z
  .object({ id: z.int(), value: z.number(), taken_at_ms: z.int(), ...ConditionRow })
  .transform(
    (row): Sample => ({
      id: row.id,
      value: row.value,
      takenAtMs: row.taken_at_ms,
      conditions: conditionsIn(row),
    }),
  );

const Count = z.object({ count: z.int() });

const UsedKind = z
  .object({ kind: z.string(), count: z.int(), last: z.int() })
  .transform(({ last: lastAtMs, ...same }) => ({ ...same, lastAtMs }));

export interface ReadingStore {
  log(reading: Omit<Reading, 'id'>): Reading;
  /** Writes a reading as it now is. */
  rewrite(reading: Reading): void;
  remove(id: number): void;
  find(id: number): Reading | undefined;
  /** The newest of a kind, at a place where one is named. */
  latest(buildId: number, kind: string, place?: string): Reading | undefined;
  /** Every reading of a kind, the oldest first. */
  ofKind(buildId: number, kind: string): readonly Reading[];
  /** The same as values and conditions alone, read off the index. */
  series(buildId: number, kind: string): readonly Sample[];
  count(buildId: number, kind?: string): number;
  /** Of a build, or of one kind: the newest first. */
  page(buildId: number, kind: string | undefined, most: number, from: number): readonly Reading[];
  /** The newest readings of a build, the newest first. */
  newest(buildId: number, most: number): readonly Reading[];
  /** Those taken since an instant, the oldest first. */
  since(buildId: number, ms: number): readonly Reading[];
  /** What was measured so far, the latest kind first. */
  kindsUsed(
    buildId: number,
  ): readonly { readonly kind: string; readonly count: number; readonly lastAtMs: number }[];
}

export function openReadingStore(db: Database): ReadingStore {
  const insert = db.prepare(
    `INSERT INTO reading (build_id, kind, value, unit, shown_in, typed, ${CONDITION_COLUMNS}, taken_at_ms, by_name, note, link, first_value, set_id)
     VALUES (@buildId, @kind, @value, @unit, @shownIn, @typed, ${GIVEN_CONDITIONS}, @takenAtMs, @byName, @note, @link, @firstValue, @setId)
     RETURNING *`,
  );
  const update = db.prepare(
    `UPDATE reading SET kind = @kind, value = @value, unit = @unit, shown_in = @shownIn, typed = @typed, place = @place,
       speed_rpm = @speedRpm, temperature_c = @temperatureC, boost_kpa = @boostKPa, fuel = @fuel, states = @states,
       taken_at_ms = @takenAtMs, by_name = @byName, note = @note, link = @link, first_value = @firstValue,
       set_id = @setId WHERE id = @id`,
  );
  const remove = db.prepare('DELETE FROM reading WHERE id = ?');
  const byId = db.prepare('SELECT * FROM reading WHERE id = ?');
  const latest = db.prepare(
    `SELECT * FROM reading WHERE build_id = @buildId AND kind = @kind AND (@place IS NULL OR place = @place)
     ORDER BY taken_at_ms DESC, id DESC LIMIT 1`,
  );
  const ofKind = db.prepare('SELECT * FROM reading WHERE build_id = ? AND kind = ? ORDER BY taken_at_ms, id');
  const series = db.prepare(
    `SELECT id, value, taken_at_ms, ${CONDITION_COLUMNS} FROM reading WHERE build_id = ? AND kind = ?
     ORDER BY taken_at_ms, id`,
  );
  const OF = 'build_id = @buildId AND (@kind IS NULL OR kind = @kind)';
  const count = db.prepare(`SELECT count(*) AS count FROM reading WHERE ${OF}`);
  const page = db.prepare(
    `SELECT * FROM reading WHERE ${OF} ORDER BY taken_at_ms DESC, id DESC LIMIT @most OFFSET @from`,
  );
  const newest = db.prepare(
    'SELECT * FROM reading WHERE build_id = ? ORDER BY taken_at_ms DESC, id DESC LIMIT ?',
  );
  const since = db.prepare(
    'SELECT * FROM reading WHERE build_id = ? AND taken_at_ms >= ? ORDER BY taken_at_ms, id',
  );
  const used = db.prepare(
    `SELECT kind, count(*) AS count, max(taken_at_ms) AS last FROM reading WHERE build_id = ?
     GROUP BY kind ORDER BY last DESC, kind`,
  );
  return {
    log: ({ conditions, ...reading }) =>
      ReadingRow.parse(insert.get({ ...reading, ...columnsOf(conditions) })),
    rewrite: ({ conditions, ...reading }) => void update.run({ ...reading, ...columnsOf(conditions) }),
    remove: (id) => void remove.run(id),
    find: (id) => ReadingRow.optional().parse(byId.get(id)),
    latest: (buildId, kind, place) =>
      ReadingRow.optional().parse(latest.get({ buildId, kind, place: place ?? null })),
    ofKind: (buildId, kind) => z.array(ReadingRow).parse(ofKind.all(buildId, kind)),
    series: (buildId, kind) => z.array(SampleRow).parse(series.all(buildId, kind)),
    count: (buildId, kind) => Count.parse(count.get({ buildId, kind: kind ?? null })).count,
    page: (buildId, kind, most, from) =>
      z.array(ReadingRow).parse(page.all({ buildId, kind: kind ?? null, most, from })),
    newest: (buildId, most) => z.array(ReadingRow).parse(newest.all(buildId, most)),
    since: (buildId, ms) => z.array(ReadingRow).parse(since.all(buildId, ms)),
    kindsUsed: (buildId) => z.array(UsedKind).parse(used.all(buildId)),
  };
}
