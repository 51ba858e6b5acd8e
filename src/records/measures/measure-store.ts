import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Day } from '../../core/time.ts';
import type { Measure } from './measure.ts';

const Words = z.string().transform((text) => z.array(z.string()).parse(JSON.parse(text)));

const MeasureRow = z
  .object({
    id: z.int(),
    build_id: z.int(),
    what: z.string(),
    put_on: z.string(),
    put_by: z.string(),
    until: z.string().nullable(),
    part_id: z.int().nullable(),
    job_id: z.int().nullable(),
    answers: Words,
    required_at: z.string().nullable(),
    undone_before: z.string().nullable(),
    undone_on: z.string().nullable(),
    undone_by: z.string().nullable(),
    note: z.string().nullable(),
  })
  .transform(
    (row): Measure => ({
      id: row.id,
      buildId: row.build_id,
      what: row.what,
      putOn: row.put_on,
      putByName: row.put_by,
      until: row.until,
      partId: row.part_id,
      jobId: row.job_id,
      answers: row.answers,
      requiredAt: row.required_at,
      undoneBefore: row.undone_before,
      undoneOn: row.undone_on,
      undoneByName: row.undone_by,
      note: row.note,
    }),
  );

/** A measure as it is put in: nobody has undone it yet. */
export type NewMeasure = Omit<Measure, 'id' | 'undoneOn' | 'undoneByName'>;

export interface MeasureStore {
  put(measure: NewMeasure): Measure;
  /** Writes everything about it that can be corrected, `id` naming it. */
  correct(measure: Measure): void;
  undone(id: number, how: { readonly on: Day; readonly byName: string; readonly note: string | null }): void;
  find(id: number): Measure | undefined;
  /** All of a build's, undone ones too, the oldest first. */
  ofBuild(buildId: number): readonly Measure[];
}

export function openMeasureStore(db: Database): MeasureStore {
  const insert = db.prepare(
    `INSERT INTO measure (build_id, what, put_on, put_by, until, part_id, job_id, answers, required_at, undone_before, note)
     VALUES (@buildId, @what, @putOn, @putByName, @until, @partId, @jobId, @answers, @requiredAt, @undoneBefore, @note)
     RETURNING *`,
  );
  const correct = db.prepare(
    `UPDATE measure SET what = @what, until = @until, part_id = @partId, job_id = @jobId, answers = @answers,
       required_at = @requiredAt, undone_before = @undoneBefore, undone_on = @undoneOn, undone_by = @undoneByName,
       note = @note WHERE id = @id`,
  );
  const undone = db.prepare(
    'UPDATE measure SET undone_on = @on, undone_by = @byName, note = @note WHERE id = @id',
  );
  const byId = db.prepare('SELECT * FROM measure WHERE id = ?');
  const ofBuild = db.prepare('SELECT * FROM measure WHERE build_id = ? ORDER BY id');
  return {
    put: (measure) => MeasureRow.parse(insert.get({ ...measure, answers: JSON.stringify(measure.answers) })),
    correct: (measure) => void correct.run({ ...measure, answers: JSON.stringify(measure.answers) }),
    undone: (id, how) => void undone.run({ ...how, id }),
    find: (id) => MeasureRow.optional().parse(byId.get(id)),
    ofBuild: (buildId) => z.array(MeasureRow).parse(ofBuild.all(buildId)),
  };
}
