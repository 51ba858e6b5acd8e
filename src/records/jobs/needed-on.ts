import { atOnce } from '../../calc/schedule/simulate.ts';
import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import { planOf } from './plan.ts';
import { readJobBook } from './read-facts.ts';
import { neededDays } from './start-day.ts';
import { USUAL_WEEK } from './week.ts';

/** The start of all chance: the same record gives the same answer. */
export const SEED = 20_261;

/**
 * By when each part that nobody has ordered is needed for the last stage of a build, by the part's number: the day on
 * which its first job would begin half of the time. Empty where nothing is planned or no day can be said.
 */
export function neededOn(record: TeamRecord, buildId: number, today: Day): ReadonlyMap<number, Day> {
  const book = readJobBook(record, buildId, today);
  const stage = book.stages.filter(({ passed }) => !passed).at(-1);
  if (stage === undefined) return new Map();
  try {
    const crew = record.weeks.find(buildId) ?? USUAL_WEEK;
    const away = record.weeks.away(buildId);
    return atOnce(neededDays(planOf({ book, stage, crew, away, today, worksToday: true }), today, SEED));
  } catch (error) {
    // a loop or a crew that never works is told to whoever asks for the day itself
    if (error instanceof UserError) return new Map();
    throw error;
  }
}
