import { count, dayword, of, ordinal, steer, steers, the, unit, weekday, workday } from './atoms.ts';
import { addMonths, bareWeekday, coming, todayOf, weeksApart } from './days.ts';
import { andThen, askOf, type DayFind, dayOf, doubt, type Find, merge, noDay } from './find.ts';
import type { Unit } from './meanings.ts';
import type { DateContext } from './reading.ts';
import { any, later, map, maybe, once, type Rule, seq } from './rules.ts';

/** A counted span: "3 working days", "a fortnight", "two or three weeks". */
interface Span {
  readonly amounts: readonly number[];
  readonly unit: Unit;
  /** "17h" without "in" may be a time of day. */
  readonly glued?: boolean;
  /** "acht Tage" is said for a week, "a few" for nothing certain. */
  readonly vague?: boolean;
}

/** Beyond this a count is a slip of the keys, not a wait. */
const MOST_YEARS = 150;
const DAYS_IN: Readonly<Partial<Record<Unit, number>>> = { day: 1, week: 7, fortnight: 14, weekday: 1 };

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
const span: Rule<Span> = once((phrase, at) =>
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

function fromNow(value: Span, sign: 1 | -1, context: DateContext): Find {
  if (value.unit === 'hour' || value.unit === 'minute') return elapsed(value, sign, context);
  const today = todayOf(context);
  return move(dayOf(today), value, sign, context);
}

function bareHours(): Rule<Span> {
  return map(span, (s) => (s.glued === true ? s : undefined));
}

const nowWords = once(any<unknown>(steer('now'), seq(dayword)));
const time = maybe(steer('time'));

/** Spans counted from now. "vor zwei Wochen" is German for ago. */
const spanFromNow: Rule<Find> = any(
  map(
    seq(
      maybe(any<unknown>(seq(steer('within'), maybe(steer('from'))), steer('in', 'plus'))),
      the,
      maybe(steer('next', 'coming')),
      span,
      time,
    ),
    ([lead, , word, s], context) => {
      if (lead === undefined && s.glued === true) return undefined;
      // "the next 3 days" without a lead is a span of days, not the day at its end.
      const found = fromNow(s, 1, context);
      return word !== undefined && lead === undefined ? doubt(found, 'Which day is meant?') : found;
    },
  ),
  map(seq(bareHours(), time), ([s], context) =>
    doubt(fromNow(s, 1, context), 'A time of day, or a number of hours?'),
  ),
  map(seq(span, steer('ago')), ([s], context) => fromNow(s, -1, context)),
  map(seq(steer('before'), span), ([, s], context) => fromNow(s, -1, context)),
  map(seq(span, steer('from'), steer('now')), ([s], context) => fromNow(s, 1, context)),
  map(
    seq(steer('from'), nowWords, maybe(steer('on')), maybe(steer('in')), span),
    ([, start, , , s], context) =>
      Array.isArray(start) && start[0] !== 0 ? undefined : fromNow(s, 1, context),
  ),
  map(seq(span, steer('later')), ([s], context) => doubt(fromNow(s, 1, context), 'Later than what?')),
  map(seq(workday, steer('after'), steer('next')), (_value, context) =>
    fromNow({ amounts: [2], unit: 'workday' }, 1, context),
  ),
);

const nextDay: Rule<Find> = any(
  map(seq(the, steer('next'), workday), (_value, context) =>
    fromNow({ amounts: [1], unit: 'workday' }, 1, context),
  ),
  map(seq(the, steer('nextbutone'), workday), (_value, context) =>
    fromNow({ amounts: [2], unit: 'workday' }, 1, context),
  ),
  map(seq(the, steer('last'), workday), (_value, context) =>
    fromNow({ amounts: [1], unit: 'workday' }, -1, context),
  ),
  map(seq(the, steer('next'), werktagUnit()), (_value, context) =>
    fromNow({ amounts: [1], unit: 'werktag' }, 1, context),
  ),
  map(seq(the, steer('next'), dayUnit('day')), (_value, context) =>
    askOf('Tomorrow?', todayOf(context).add({ days: 1 })),
  ),
  map(seq(the, steer('next'), dayUnit('weekday')), (_value, context) =>
    doubt(fromNow({ amounts: [1], unit: 'workday' }, 1, context), 'Which day is meant?'),
  ),
);

function werktagUnit(): Rule<Unit> {
  return dayUnit('werktag');
}

function dayUnit(only: Unit): Rule<Unit> {
  return map(unit, (u) => (u === only ? u : undefined));
}

/** Spans counted from a day, before or after it; `day` is any day the grammar knows. */
export function spansFrom(day: () => Rule<Find>): Rule<Find> {
  const anchor = later(day);
  const forward = (s: Span, found: Find, context: DateContext, sign: 1 | -1 = 1): Find => {
    const moved = andThen(found, (start) => move(start, s, sign, context));
    return found.kind === 'day' && found.season === 'several days'
      ? doubt(moved, 'Counted from which day?')
      : moved;
  };
  return any(
    spanFromNow,
    nextDay,
    map(seq(span, steer('from', 'after', 'following'), the, anchor), ([s, , , found], context) =>
      forward(s, found, context),
    ),
    map(seq(span, steer('before'), the, anchor), ([s, , , found], context) => forward(s, found, context, -1)),
    map(
      seq(steer('from'), the, anchor, maybe(steer('on')), maybe(steer('in', 'plus')), span),
      ([, , found, , , s], context) => forward(s, found, context),
    ),
    map(
      seq(maybe(steer('on')), the, dayUnit('day'), steer('after'), the, anchor),
      ([, , , , , found], context) => forward({ amounts: [1], unit: 'day' }, found, context),
    ),
    map(
      seq(maybe(steer('on')), the, dayUnit('day'), steer('before'), the, anchor),
      ([, , , , , found], context) => forward({ amounts: [1], unit: 'day' }, found, context, -1),
    ),
    map(
      seq(the, maybe(steer('next')), maybe(ordinal), workday, steer('after', 'following'), the, anchor),
      ([, , n, , , , found], context) => forward({ amounts: [n ?? 1], unit: 'workday' }, found, context),
    ),
    map(seq(the, maybe(steer('last')), workday, steer('before'), the, anchor), ([, , , , , found], context) =>
      forward({ amounts: [1], unit: 'workday' }, found, context, -1),
    ),
    map(seq(the, dayUnit('week'), of, steer('after', 'before'), the, anchor), ([, , , , , found]) =>
      doubt(found, 'Which day of that week?'),
    ),
  );
}

/** "a week on Friday", "today week", "Friday fortnight", "Freitag in einer Woche": whole weeks from a weekday or today. */
const wholeWeeks: Rule<number> = once(
  map(span, ({ amounts, unit: u, vague }) => {
    const days = (DAYS_IN[u] ?? 0) * (amounts[0] ?? 0);
    return vague !== true && amounts.length === 1 && u !== 'weekday' && days > 0 && days % 7 === 0
      ? days / 7
      : undefined;
  }),
);
const bareWeeks: Rule<number> = map(unit, (u) => (u === 'week' ? 1 : u === 'fortnight' ? 2 : undefined));

export function weeksFrom(
  plus: (weekday: number, weeks: number, context: DateContext) => Find,
  words: Rule<Find>,
): Rule<Find> {
  const byWeek = (found: Find, weeks: number): Find =>
    andThen(found, ({ date }) => dayOf(date.add({ weeks })));
  return any(
    map(seq(weekday, bareWeeks), ([day, weeks], context) => plus(day, weeks, context)),
    map(seq(any(wholeWeeks, bareWeeks), maybe(steer('on', 'from')), weekday), ([weeks, , day], context) =>
      plus(day, weeks, context),
    ),
    map(seq(words, bareWeeks), ([found, weeks]) => byWeek(found, weeks)),
    map(seq(span, words), ([s, found], context) => andThen(found, (start) => move(start, s, 1, context))),
    map(seq(wholeWeeks, steer('on', 'from'), words), ([weeks, , found]) => byWeek(found, weeks)),
    map(seq(words, steer('in'), span), ([found, , s], context) =>
      andThen(found, (start) => move(start, s, 1, context)),
    ),
    map(seq(weekday, steer('in'), span), ([day, , s], context) => weekdayIn(day, s, context)),
    map(seq(wholeWeeks, steer('ago'), maybe(steer('on')), weekday), ([weeks, , , day], context) =>
      andThen(bareWeekday(day, { ...context, direction: 'past' }), ({ date }) =>
        dayOf(date.subtract({ weeks })),
      ),
    ),
  );
}

/** "Freitag in zwei Wochen": counted from the coming Friday, or the Friday of the week after next; only then a question. */
function weekdayIn(day: number, s: Span, context: DateContext): Find {
  const today = todayOf(context);
  const ahead = coming(today, day);
  if (s.unit === 'day' && s.vague === true)
    return askOf('A week later, or eight days?', ahead.add({ weeks: 1 }));
  const weeks = ((DAYS_IN[s.unit] ?? 0) * (s.amounts[0] ?? 0)) / 7;
  if (s.amounts.length !== 1 || weeks <= 0 || !Number.isInteger(weeks))
    return noDay('That count does not end on such a weekday. Type a date.');
  const counted = ahead.add({ weeks });
  if (today.dayOfWeek === day)
    return askOf('Counted from today, or from the coming one?', today.add({ weeks }), counted);
  return weeksApart(today, ahead) === 0
    ? dayOf(counted)
    : askOf('Which one is meant?', counted.subtract({ weeks: 1 }), counted);
}
