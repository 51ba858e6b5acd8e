import { type Day, sayDay } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import { isInPlace, type Measure } from './measure.ts';
import type { NewMeasure } from './measure-store.ts';

interface Done {
  readonly value: Measure;
  readonly said: string;
}

export function putMeasure(record: TeamRecord, measure: NewMeasure): Done {
  const value = record.measures.put(measure);
  return { value, said: `temporary measure #${value.id} put in: ${value.what}` };
}

/**
 * Notes that a measure has been undone, by whom and when.
 *
 * @throws UserError 'already-done' when somebody has noted that before.
 */
export function undoMeasure(
  record: TeamRecord,
  id: number,
  how: { readonly by: string; readonly on: Day; readonly note: string | undefined },
): Done {
  const measure = measureOf(record, id);
  requireInPlace(measure, how.on);
  record.measures.undone(id, { on: how.on, byName: how.by, note: how.note ?? measure.note });
  return { value: measureOf(record, id), said: `temporary measure #${id} undone: ${measure.what}` };
}

/** What can be corrected of a measure; what is left out stays as it is. */
export type MeasureChange = Partial<
  Pick<Measure, 'what' | 'until' | 'partId' | 'jobId' | 'answers' | 'requiredAt' | 'undoneBefore' | 'note'>
>;

export function changeMeasure(record: TeamRecord, id: number, change: MeasureChange): Done {
  const before = measureOf(record, id);
  record.measures.correct({ ...before, ...change });
  const value = measureOf(record, id);
  return { value, said: `temporary measure #${id} changed: ${value.what}` };
}

/** Puts a measure in that was undone: as a new one, since it begins again today. */
export function putAgain(record: TeamRecord, id: number, by: string, on: Day): Done {
  const measure = measureOf(record, id);
  if (isInPlace(measure)) throw new UserError('already-done', `“${measure.what}” is in place already.`);
  return putMeasure(record, { ...measure, putOn: on, putByName: by });
}

function requireInPlace(measure: Measure, today: Day): void {
  if (isInPlace(measure)) return;
  const { what, undoneByName, undoneOn } = measure;
  throw new UserError(
    'already-done',
    `“${what}” was undone by ${undoneByName ?? ''} on ${sayDay(undoneOn ?? today, today)}. Nothing was changed.`,
  );
}

/** @throws UserError 'stale-message' when a button names one that was taken back. */
export function measureOf(record: TeamRecord, id: number): Measure {
  const measure = record.measures.find(id);
  if (measure !== undefined) return measure;
  throw new UserError(
    'stale-message',
    'That temporary measure is no longer in the record. /temporary list shows what is.',
  );
}
