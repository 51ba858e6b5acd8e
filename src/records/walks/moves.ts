import type { Guide } from '../../calc/guide/guide.ts';
import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import { guideOf } from './guide-book.ts';
import { type Moved, openWalk, outOfGuide, walkOf } from './open-walk.ts';
import { findingsNow } from './position.ts';

/** Who does it, and when. */
export interface Doer {
  readonly byName: string;
  readonly atMs: number;
  readonly today: Day;
}

/** How a search ends: with a cause of its guide, in words of the crew's own, both, or with neither. */
export interface End {
  readonly cause: string | null;
  readonly note: string | null;
}

/** Begins a search. */
export function startWalk(record: TeamRecord, buildId: number, guide: Guide, { byName, atMs }: Doer): Moved {
  const begun = { buildId, symptom: guide.id, cameFrom: null, startedBy: byName, startedAtMs: atMs };
  const walk = record.walks.start(begun);
  return { value: walk, said: `search #${walk.id} begun: ${guide.name}` };
}

/**
 * Puts a search aside for whoever goes on with it.
 *
 * @throws UserError 'already-done' when somebody has left it before.
 */
export function leaveWalk(record: TeamRecord, walkId: number, { byName }: Doer): Moved {
  const walk = openWalk(record, walkId);
  if (walk.state === 'left') {
    throw new UserError(
      'already-done',
      `${walk.leftBy ?? ''} left it there already. Anybody can go on with it.`,
    );
  }
  record.walks.rewrite({ ...walk, state: 'left', leftBy: byName });
  return { value: walkOf(record, walkId), said: `search #${walkId} left by ${byName}` };
}

/** Takes a search up that was left. */
export function resumeWalk(record: TeamRecord, walkId: number, { byName }: Doer): Moved {
  const walk = openWalk(record, walkId);
  if (walk.state === 'left') record.walks.rewrite({ ...walk, state: 'open', leftBy: null });
  return { value: walkOf(record, walkId), said: `search #${walkId} taken up by ${byName}` };
}

/** Closes a search with what it was. */
export function finishWalk(record: TeamRecord, walkId: number, end: End, { byName, atMs }: Doer): Moved {
  const walk = openWalk(record, walkId);
  const cause = guideOf(walk.symptom).causes.find(({ id }) => id === end.cause);
  record.walks.rewrite({
    ...walk,
    ...end,
    state: 'finished',
    leftBy: null,
    endedBy: byName,
    endedAtMs: atMs,
  });
  const what = [cause?.name, end.note].filter(Boolean).join(', ');
  return { value: walkOf(record, walkId), said: `search #${walkId} closed: ${what || 'nothing found'}` };
}

/**
 * Closes a search that leads to another guide and begins that one, with the findings that hold there too.
 *
 * @throws UserError 'stale-message' when that cause leads nowhere.
 */
export function goOn(record: TeamRecord, walkId: number, cause: string, by: Doer): Moved {
  const walk = openWalk(record, walkId);
  const symptom = guideOf(walk.symptom).causes.find(({ id }) => id === cause)?.goesOn;
  if (symptom === undefined) throw outOfGuide();
  const guide = guideOf(symptom);
  finishWalk(record, walkId, { cause, note: null }, by);
  const begun = {
    buildId: walk.buildId,
    symptom,
    cameFrom: walkId,
    startedBy: by.byName,
    startedAtMs: by.atMs,
  };
  const next = record.walks.start(begun);
  for (const { step, outcome, note, byName, atMs } of findingsNow(walk)) {
    if (holdsIn(guide, step, outcome)) {
      record.walks.note({ walkId: next.id, round: 1, step, outcome, note, byName, atMs });
    }
  }
  return { value: walkOf(record, next.id), said: `search #${walkId} goes on as #${next.id}: ${guide.name}` };
}

/** Whether another guide has the same test with the same outcome. */
const holdsIn = (guide: Guide, step: string, outcome: string): boolean =>
  guide.tests.find(({ id }) => id === step)?.outcomes.some(({ id }) => id === outcome) ?? false;
