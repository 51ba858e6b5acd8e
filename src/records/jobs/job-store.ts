import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Job, JobNeed } from './job.ts';
import { type NeedRow, needColumns, readNeed, readNeeds } from './need-rows.ts';

const Tools = z.array(z.string());

const JobRow = z
  .object({
    id: z.int(),
    build_id: z.int(),
    name: z.string(),
    stage: z.string().nullable(),
    system: z.string().nullable(),
    minutes_least: z.number().nullable(),
    minutes_likely: z.number().nullable(),
    minutes_most: z.number().nullable(),
    people: z.int(),
    tools: z.string(),
    note: z.string().nullable(),
    done_on: z.string().nullable(),
    done_by: z.string().nullable(),
    dropped: z.int(),
  })
  .transform((row): Omit<Job, 'needs'> => {
    const { minutes_least: least, minutes_likely: likely, minutes_most: most } = row;
    return {
      id: row.id,
      buildId: row.build_id,
      name: row.name,
      stage: row.stage,
      system: row.system,
      minutes: least === null || likely === null || most === null ? null : { least, likely, most },
      people: row.people,
      tools: row.tools === '[]' ? [] : Tools.parse(JSON.parse(row.tools)),
      note: row.note,
      doneOn: row.done_on,
      doneByName: row.done_by,
      dropped: row.dropped === 1,
    };
  });

const Rows = z.array(JobRow);

const KeyRow = z.object({ id: z.int(), set_key: z.string() });

export type NewJob = Omit<Job, 'id' | 'needs' | 'doneOn' | 'doneByName' | 'dropped'> & {
  /** Its key in the starting set; null for the crew's own. */
  readonly setKey: string | null;
};

export interface JobStore {
  /** Writes a job down that needs nothing yet. */
  add(job: NewJob): Job;
  find(id: number): Job | undefined;
  /** Every job of a build with its needs, dropped and done ones included, by number. */
  ofBuild(buildId: number): readonly Job[];
  /** The jobs of a build that came from the starting set, by their key there. */
  fromSet(buildId: number): ReadonlyMap<string, number>;
  /** Everything of a job but its needs. */
  change(job: Job): void;
  need(jobId: number, need: JobNeed): void;
  /** Takes a need away; of a part, however many of it. */
  unneed(jobId: number, need: JobNeed): void;
}

export function openJobStore(db: Database): JobStore {
  const insert = db.prepare(
    `INSERT INTO job (build_id, name, set_key, stage, system, minutes_least, minutes_likely, minutes_most, people, tools, note)
     VALUES (@buildId, @name, @setKey, @stage, @system, @least, @likely, @most, @people, @tools, @note) RETURNING *`,
  );
  const update = db.prepare(
    `UPDATE job SET name = @name, stage = @stage, system = @system, minutes_least = @least, minutes_likely = @likely,
       minutes_most = @most, people = @people, tools = @tools, note = @note, done_on = @doneOn, done_by = @doneByName,
       dropped = @dropped WHERE id = @id`,
  );
  const byId = db.prepare('SELECT * FROM job WHERE id = ?');
  const ofBuild = db.prepare('SELECT * FROM job WHERE build_id = ? ORDER BY id');
  const keys = db.prepare('SELECT id, set_key FROM job WHERE build_id = ? AND set_key IS NOT NULL');
  const needsOf = db.prepare('SELECT * FROM job_need WHERE job_id = ? ORDER BY id');
  const needsOfBuild = db.prepare<[number], NeedRow>(
    `SELECT job_need.* FROM job_need JOIN job ON job.id = job_need.job_id WHERE job.build_id = ? ORDER BY job_need.id`,
  );
  const need = db.prepare(
    `INSERT INTO job_need (job_id, kind, part_id, quantity, needed_job_id, case_id, stage)
     VALUES (@jobId, @kind, @partId, @quantity, @neededJobId, @caseId, @stage)`,
  );
  const unneed = db.prepare(
    `DELETE FROM job_need WHERE job_id = @jobId AND kind = @kind AND part_id IS @partId
       AND needed_job_id IS @neededJobId AND case_id IS @caseId AND stage IS @stage`,
  );
  return {
    add: (job) => ({ ...JobRow.parse(insert.get({ ...job, ...columnsOf(job) })), needs: [] }),
    find(id) {
      const row = JobRow.optional().parse(byId.get(id));
      return row && { ...row, needs: needsOf.all(id).map(readNeed) };
    },
    ofBuild(buildId) {
      const needs = readNeeds(needsOfBuild.all(buildId));
      return Rows.parse(ofBuild.all(buildId)).map((job) => ({ ...job, needs: needs.get(job.id) ?? [] }));
    },
    fromSet: (buildId) =>
      new Map(
        z
          .array(KeyRow)
          .parse(keys.all(buildId))
          .map(({ id, set_key: key }) => [key, id] as const),
      ),
    change: (job) => void update.run({ ...job, ...columnsOf(job), dropped: job.dropped ? 1 : 0 }),
    need: (jobId, what) => void need.run({ jobId, ...needColumns(what) }),
    unneed(jobId, what) {
      const { quantity: _any, ...named } = needColumns(what);
      unneed.run({ jobId, ...named });
    },
  };
}

const columnsOf = ({ minutes, tools }: Pick<Job, 'minutes' | 'tools'>) => ({
  least: minutes?.least ?? null,
  likely: minutes?.likely ?? null,
  most: minutes?.most ?? null,
  tools: JSON.stringify(tools),
});
