import { count, steer, steers, unit } from './atoms.ts';
import { addMonths, todayOf } from './days.ts';
import { askOf, type DayFind, dayOf, doubt, type Find, merge, noDay } from './find.ts';
import type { Unit } from './meanings.ts';
import type { DateContext } from './reading.ts';
import { any, map, maybe, once, type Rule, seq } from './rules.ts';

/** A counted span: "3 working days", "a fortnight", "two or three weeks". */
export interface Span {
  readonly amounts: readonly number[];
  readonly unit: Unit;
  /** "17h" without "in" may be a time of day. */
  readonly glued?: boolean;
  /** "acht Tage" is said for a week, "a few" for nothing certain. */
  readonly vague?: boolean;
}

/** Beyond this a count is a slip of the keys, not a wait. */
const MOST_YEARS = 150;
export const DAYS_IN: Readonly<Partial<Record<Unit, number>>> = {
  day: 1,
  week: 7,
  fortnight: 14,
  weekday: 1,
};

const plainSpan: Rule<Span> = once(
  any<Span>(
    map(seq(count, unit), ([n, u]) => ({ amounts: [n], unit: u })),
    map(seq(maybe(steer('the')), steer('few', 'couple'), maybe(steer('of')), unit), ([, word, , u]) => ({
      amounts: word === 'couple' ? [2, 3] : [2, 3],
      unit: u,
      vague: true,
    })),
    map(seq(count, steer('few', 'couple'), maybe(steer('of')), unit), ([, , , u]) => ({
      amounts: [2, 3],
      unit: u,
      vague: true,
    })),
    map(
      seq(maybe(steer('between')), count, steer('or', 'dash', 'to', 'by', 'and', 'slash'), count, unit),
      ([, a, , b, u]) => ({
        amounts: [a, b],
        unit: u,
      }),
    ),
    map(seq(count, unit, steer('or'), count, maybe(unit)), ([a, u, , b]) => ({ amounts: [a, b], unit: u })),
    map(seq(maybe(oneOf()), steer('half', 'halb'), maybe(oneOf()), unit), ([, , , u]) => halfOf(u)),
    map(seq(count, unit, steers('and'), oneOf(), steer('half')), ([n, u]) =>
      u === 'hour' ? { amounts: [n * 60 + 30], unit: 'minute' as const } : undefined,
    ),
  ),
);
function oneOf(): Rule<true> {
  return map(count, (n) => (n === 1 ? true : undefined));
}

function halfOf(whole: Unit): Span | undefined {
  if (whole === 'hour') return { amounts: [30], unit: 'minute' };
  return whole === 'year' ? { amounts: [6], unit: 'month' } : undefined;
}

/** "eight days" is German for a week, and "17h" may be a time of day. */
export const span: Rule<Span> = once((phrase, at) =>
  plainSpan(phrase, at).map((match) => {
    const texts = phrase.tokens.slice(at, match.next).map(({ text }) => text);
    if ((texts[0] === 'acht' || texts[0] === '8') && texts[1]?.startsWith('tag') === true) {
      return { ...match, value: { amounts: [7, 8], unit: 'day' as const, vague: true } };
    }
    return texts.at(-1) === 'h' ? { ...match, value: { ...match.value, glued: true } } : match;
  }),
);

/** A day moved by a span; `sign` is 1 forwards, -1 backwards. */
export function move(
  from: DayFind,
  { amounts, unit: u, vague }: Span,
  sign: 1 | -1,
  context: DateContext,
): Find {
  const finds = amounts.map((n) => moveBy(from, n, u, sign, context));
  const found = merge(finds, 'How long exactly?');
  return vague === true ? doubt(found, 'How long exactly?') : found;
}

function moveBy(from: DayFind, n: number, u: Unit, sign: 1 | -1, context: DateContext): Find {
  const { date } = from;
  if (n > yearsIn(u) * MOST_YEARS)
    return noDay(`${n} is too long a wait to be meant. Type a date such as 4 Dec.`);
  if (n === 0) return doubt(dayOf(date), 'Is this day meant?');
  switch (u) {
    case 'day':
    case 'week':
    case 'fortnight':
      return dayOf(date.add({ days: sign * n * (DAYS_IN[u] ?? 1) }));
    case 'month':
      return dayOf(addMonths(date, sign * n));
    case 'year':
      return dayOf(addMonths(date, sign * n * 12));
    case 'workday':
      return workdays(date, sign * n, context);
    case 'werktag':
      return werktage(date, sign * n, context);
    case 'weekday':
      return doubt(workdays(date, sign * n, context), 'Working days, or just not at weekends?');
    case 'minute':
    case 'hour':
    case 'quarter':
      return noDay('That counts no days. Type a number of days or weeks, or a date.');
  }
}

function yearsIn(u: Unit): number {
  if (u === 'year') return 1;
  if (u === 'month') return 12;
  return u === 'week' || u === 'fortnight' ? 52 : 366;
}

/** More working days than this reach beyond any delivery. */
const MOST_WORKDAYS = 500;

function workdays(date: Temporal.PlainDate, n: number, context: DateContext): Find {
  if (Math.abs(n) > MOST_WORKDAYS) return askOf('That is years away. Which day is meant?');
  const found = dayOf(Temporal.PlainDate.from(context.workingDays.add(date.toString(), n)));
  return context.workingDays.knowsHolidays
    ? found
    : { ...found, assumed: 'No country is set, so only weekends were skipped, not holidays.' };
}

/** A German Werktag may be a Saturday; where that changes the day, both are offered. */
function werktage(date: Temporal.PlainDate, n: number, context: DateContext): Find {
  const narrow = workdays(date, n, context);
  if (narrow.kind !== 'day') return narrow;
  let at = date;
  for (let left = Math.abs(n); left > 0; ) {
    at = at.add({ days: Math.sign(n) });
    const text = at.toString();
    const open =
      at.dayOfWeek === 6
        ? context.workingDays.holidayName(text) === undefined
        : context.workingDays.isWorkingDay(text);
    if (open) left--;
  }
  return merge(
    [narrow, dayOf(at, narrow.assumed === undefined ? {} : { assumed: narrow.assumed })],
    'Does Saturday count?',
  );
}

/** An elapsed span ends at an instant: an hour is an hour also in the night when clocks change. */
function elapsed({ amounts, unit: u, vague }: Span, sign: 1 | -1, context: DateContext): Find {
  const finds = amounts.map((n): Find => {
    if (n > 10_000) return noDay(`${n} is too long a wait to be meant. Type a date such as 4 Dec.`);
    const start = context.now.toZonedDateTime(context.zone);
    const end = start.add(u === 'hour' ? { hours: sign * n } : { minutes: sign * n });
    return {
      kind: 'day',
      date: end.toPlainDate(),
      time: end.toPlainTime().round('minute'),
      instantMs: end.epochMilliseconds,
    };
  });
  const found = merge(finds, 'How long exactly?');
  return vague === true ? doubt(found, 'How long exactly?') : found;
}

export function fromNow(value: Span, sign: 1 | -1, context: DateContext): Find {
  if (value.unit === 'hour' || value.unit === 'minute') return elapsed(value, sign, context);
  const today = todayOf(context);
  return move(dayOf(today), value, sign, context);
}
