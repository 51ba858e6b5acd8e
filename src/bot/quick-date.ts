import { workingDays } from '../calendar/working-days.ts';
import type { Answer, Fact } from '../core/reply.ts';
import { addDays, type Day, sayFullDay, wallTime } from '../core/time.ts';
import { UserError } from '../core/user-error.ts';
import type { DayContext } from '../phrases/day-asked.ts';
import type { QuickAnswer } from '../phrases/quick/reading.ts';
import { dateLocale, FIRST_SETTINGS, type TeamSettings } from '../records/team/team.ts';
import type { Hand } from './hand.ts';

/** Next year's holidays are known in every list; further than this nobody looks for the next one. */
const FURTHEST_DAYS = 400;

/** Where a crew is, for its days; outside a crew's channel nobody's country is known, and the clock is the first one's. */
export function dayContext({
  clock,
  ...hand
}: Pick<Hand, 'clock'> & { readonly settings: TeamSettings | null }): DayContext {
  const { settings } = hand;
  const { zone } = settings ?? FIRST_SETTINGS;
  return {
    now: wallTime(clock.nowMs(), zone),
    zone,
    locale: settings === null ? null : dateLocale(settings.country),
    direction: 'future',
    workingDays: workingDays(settings?.country ?? null),
  };
}

/** The crew's settings; null where there is no crew. */
export function settingsHere(hand: Hand): TeamSettings | null {
  try {
    return hand.record.settings.read();
  } catch (error) {
    if (error instanceof UserError && error.code === 'not-now') return null;
    throw error;
  }
}

/**
 * Which day it is, how far off, and whether anybody works on it.
 *
 * @throws UserError 'not-now' about a holiday where no country is known.
 */
export function dayAnswer(reading: QuickAnswer, context: DayContext): Answer {
  if (reading.form === 'holiday' && !context.workingDays.knowsHolidays) throw noCountry();
  const day = reading.numbers['date'];
  const found = typeof day === 'string' ? day : nextHoliday(context);
  const name = context.workingDays.holidayName(found);
  const asked = reading.form === 'holiday' && typeof day === 'string';
  return {
    kind: 'answer',
    subject: 'Date',
    result:
      reading.form === 'days-until'
        ? untilWords(found, context)
        : asked
          ? verdictOn(found, name)
          : `${sayFullDay(found)}${name === undefined ? '' : `, ${name}`}`,
    facts: factsOf(found, context),
    ...(context.workingDays.knowsHolidays
      ? {}
      : {
          smallPrint: ['No country is known here, so only weekends are left out: ask in the crew’s channel.'],
        }),
    audience: 'crew',
    data: {
      kind: 'date',
      date: found,
      holiday: name ?? null,
      workingDay: context.workingDays.isWorkingDay(found),
      days: daysUntil(found, context),
      workingDays: context.workingDays.between(todayOf(context), found),
    },
  };
}

const verdictOn = (day: Day, name: string | undefined): string =>
  name === undefined ? `No: ${sayFullDay(day)} is no public holiday` : `Yes: ${sayFullDay(day)} is ${name}`;

function untilWords(day: Day, context: DayContext): string {
  const working = context.workingDays.between(todayOf(context), day);
  return `${plural(daysUntil(day, context), 'day')}, ${plural(working, 'working day')}, to ${sayFullDay(day)}`;
}

const todayOf = ({ now }: DayContext): Day => now.toPlainDate().toString();

const daysUntil = (day: Day, context: DayContext): number =>
  Temporal.PlainDate.from(todayOf(context)).until(Temporal.PlainDate.from(day), { largestUnit: 'days' }).days;

function factsOf(day: Day, context: DayContext): readonly Fact[] {
  const days = daysUntil(day, context);
  const working = context.workingDays.between(todayOf(context), day);
  const { weekOfYear } = Temporal.PlainDate.from(day);
  return [
    ['From today', days === 0 ? 'today' : `${plural(days, 'day')}, ${plural(working, 'working day')}`],
    ...(weekOfYear === undefined ? [] : [['Week', String(weekOfYear)] as const]),
  ];
}

const plural = (count: number, what: string): string => `${count} ${what}${Math.abs(count) === 1 ? '' : 's'}`;

const noCountry = (): UserError =>
  new UserError(
    'not-now',
    'Holidays are a country’s, and none is known here: ask in a channel of the crew, where /team sets it.',
  );

/** @throws UserError 'not-found' when the list ends. */
function nextHoliday(context: DayContext): Day {
  let day = todayOf(context);
  for (let ahead = 0; ahead < FURTHEST_DAYS; ahead += 1) {
    day = addDays(day, 1);
    if (context.workingDays.holidayName(day) !== undefined) return day;
  }
  throw new UserError('not-found', 'There is no public holiday in the list within the next year.');
}
