import { crewOf } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { type Day, sayDay, wallTime } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import { readDate } from '../../phrases/dates/dates.ts';
import { dateLocale } from '../../records/team/team.ts';

const EXACTLY = /^=(\d{4}-\d{2}-\d{2})$/;

/**
 * A day gone by or today, such as that of the first start.
 *
 * @throws UserError 'which-one' about the option `field`, 'bad-input' for no day, 'out-of-range' for one to come.
 */
export function readDayPast(hand: Hand, field: string, typed: string): Day {
  const { settings, today, days } = crewOf(hand);
  const picked = EXACTLY.exec(typed)?.[1];
  if (picked !== undefined) return picked;
  const read = readDate(typed, {
    now: wallTime(hand.clock.nowMs(), settings.zone),
    zone: settings.zone,
    locale: dateLocale(settings.country),
    direction: 'past',
    workingDays: days,
  });
  if (read.verdict === 'ask') {
    throw new UserError('which-one', read.question, {
      field,
      choices: read.options.map(({ day }) => ({ label: sayDay(day, today), value: `=${day}` })),
    });
  }
  if (read.verdict === 'refuse')
    throw new UserError('bad-input', `${field}: ${read.problem} Nothing was changed.`);
  if (read.day <= today) return read.day;
  throw new UserError(
    'out-of-range',
    `${field}: ${sayDay(read.day, today)} is still to come. Nothing was changed.`,
  );
}
