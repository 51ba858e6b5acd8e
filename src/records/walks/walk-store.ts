import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Finding, Walk } from './walk.ts';

const WalkRow = z.object({
  id: z.int(),
  build_id: z.int(),
  symptom: z.string(),
  came_from: z.int().nullable(),
  state: z.enum(['open', 'left', 'finished']),
  started_by: z.string(),
  started_at_ms: z.int(),
  left_by: z.string().nullable(),
  cause: z.string().nullable(),
  ended_by: z.string().nullable(),
  ended_at_ms: z.int().nullable(),
  note: z.string().nullable(),
});

const FindingRow = z
  .object({
    id: z.int(),
    walk_id: z.int(),
    round: z.int(),
    step: z.string(),
    outcome: z.string(),
    note: z.string().nullable(),
    by_name: z.string(),
    at_ms: z.int(),
    first_outcome: z.string().nullable(),
  })
  .transform(
    ({ walk_id: walkId, by_name: byName, at_ms: atMs, first_outcome: firstOutcome, ...same }): Finding => ({
      ...same,
      walkId,
      byName,
      atMs,
      firstOutcome,
    }),
  );

/** A search as it is begun. */
export type NewWalk = Pick<Walk, 'buildId' | 'symptom' | 'cameFrom' | 'startedBy' | 'startedAtMs'>;

export interface WalkStore {
  start(walk: NewWalk): Walk;
  find(id: number): Walk | undefined;
  /** Every search of a build, the newest first. */
  ofBuild(buildId: number): readonly Walk[];
  /** Writes how it stands and how it ended, `id` naming it. */
  rewrite(walk: Walk): void;
  note(finding: Omit<Finding, 'id' | 'firstOutcome'>): Finding;
  /** Writes a finding as it now is. */
  correct(finding: Finding): void;
  takeBack(findingId: number): void;
}

export function openWalkStore(db: Database): WalkStore {
  const insert = db.prepare(
    `INSERT INTO walk (build_id, symptom, came_from, state, started_by, started_at_ms)
     VALUES (@buildId, @symptom, @cameFrom, 'open', @startedBy, @startedAtMs) RETURNING *`,
  );
  const update = db.prepare(
    `UPDATE walk SET state = @state, left_by = @leftBy, cause = @cause, ended_by = @endedBy,
       ended_at_ms = @endedAtMs, note = @note WHERE id = @id`,
  );
  const byId = db.prepare('SELECT * FROM walk WHERE id = ?');
  const ofBuild = db.prepare('SELECT * FROM walk WHERE build_id = ? ORDER BY id DESC');
  const findings = db.prepare('SELECT * FROM walk_finding WHERE walk_id = ? ORDER BY id');
  const note = db.prepare(
    `INSERT INTO walk_finding (walk_id, round, step, outcome, note, by_name, at_ms)
     VALUES (@walkId, @round, @step, @outcome, @note, @byName, @atMs) RETURNING *`,
  );
  const correct = db.prepare(
    `UPDATE walk_finding SET outcome = @outcome, note = @note, by_name = @byName, at_ms = @atMs,
       first_outcome = @firstOutcome WHERE id = @id`,
  );
  const takeBack = db.prepare('DELETE FROM walk_finding WHERE id = ?');
  const walkIn = (row: unknown): Walk => {
    const read = WalkRow.parse(row);
    return {
      id: read.id,
      buildId: read.build_id,
      symptom: read.symptom,
      cameFrom: read.came_from,
      state: read.state,
      startedBy: read.started_by,
      startedAtMs: read.started_at_ms,
      leftBy: read.left_by,
      cause: read.cause,
      endedBy: read.ended_by,
      endedAtMs: read.ended_at_ms,
      note: read.note,
      findings: z.array(FindingRow).parse(findings.all(read.id)),
    };
  };
  return {
    start: (walk) => walkIn(insert.get(walk)),
    find(id) {
      const row = byId.get(id);
      return row === undefined ? undefined : walkIn(row);
    },
    ofBuild: (buildId) => ofBuild.all(buildId).map(walkIn),
    rewrite: ({ findings: _findings, ...walk }) => void update.run(walk),
    note: (finding) => FindingRow.parse(note.get(finding)),
    correct: (finding) => void correct.run(finding),
    takeBack: (findingId) => void takeBack.run(findingId),
  };
}
