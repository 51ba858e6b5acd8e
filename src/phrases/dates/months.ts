import {
  month,
  numberToken,
  of,
  on,
  ordinal,
  steer,
  steers,
  the,
  unitOf,
  weekday,
  wordOf,
  workday,
} from './atoms.ts';
import { calendarDate, coming, gone, lastOfMonth, todayOf } from './days.ts';
import { andThen, askOf, dayOf, doubt, type Find, noDay } from './find.ts';
import type { DateContext } from './reading.ts';
import { any, map, maybe, once, type Rule, seq } from './rules.ts';

/** Months and years and their edges. A month or year is found as its first day. */
const monthUnit = unitOf('month');
const yearUnit = unitOf('year');

/** A year in four figures, or in two after a month or as '27. */
export const year: Rule<number> = map(numberToken, ({ n, digits }) =>
  digits.length === 4 && n >= 1900 && n <= 2199 ? n : undefined,
);

function months(shift: number): (value: unknown, context: DateContext) => Find {
  return (_value, context) => dayOf(todayOf(context).with({ day: 1 }).add({ months: shift }));
}

const relativeMonth: Rule<Find> = once(
  any(
    map(seq(steer('this'), monthUnit), months(0)),
    map(seq(the, steer('next', 'coming'), monthUnit), months(1)),
    map(seq(the, steer('last'), monthUnit), months(-1)),
    map(seq(the, steer('nextbutone'), monthUnit), months(2)),
    map(seq(the, monthUnit, steers('after', 'next')), months(2)),
  ),
);
const currentMonth: Rule<Find> = map(seq(the, monthUnit), months(0));

interface NamedMonth {
  readonly month: number;
  readonly year: number | undefined;
}
const namedMonth: Rule<NamedMonth> = once(map(seq(month, maybe(year)), ([n, y]) => ({ month: n, year: y })));

/** The day that `pick` takes in a named month: of the year said, else of the nearest month in which it fits. */
function inMonth(
  named: NamedMonth,
  pick: (first: Temporal.PlainDate) => Temporal.PlainDate,
  context: DateContext,
): Find {
  const today = todayOf(context);
  if (named.year !== undefined) {
    return dayOf(pick(Temporal.PlainDate.from({ year: named.year, month: named.month, day: 1 })), {
      yearSaid: true,
    });
  }
  const days = [-1, 0, 1].map((offset) =>
    pick(Temporal.PlainDate.from({ year: today.year + offset, month: named.month, day: 1 })),
  );
  return nearest(days, context);
}

/** Of the same day in several years, the one meant: the next, in a past field the latest, else the nearest by far. */
export function nearest(days: readonly Temporal.PlainDate[], context: DateContext): Find {
  const today = todayOf(context);
  const ahead = days.find((day) => Temporal.PlainDate.compare(day, today) >= 0);
  const behind = days.findLast((day) => Temporal.PlainDate.compare(day, today) <= 0);
  if (context.direction !== 'any') {
    const found = context.direction === 'future' ? ahead : behind;
    const other = context.direction === 'future' ? behind : ahead;
    if (found === undefined)
      return noDay('There is no such day near. Type a date with its year, such as 4 Dec 2026.');
    if (!isFar(found, today)) return dayOf(found);
    const dates = [found, ...(other === undefined ? [] : [other])];
    return { ...askOf('That is most of a year away. Which one is meant?', ...dates), far: true };
  }
  const near = [ahead, behind].filter((day) => day !== undefined);
  const [first, second] = near.sort((a, b) => gap(a, today) - gap(b, today));
  if (first === undefined)
    return noDay('There is no such day near. Type a date with its year, such as 4 Dec 2026.');
  if (gap(first, today) <= 91 || second === undefined) return dayOf(first);
  return askOf('Which year is meant?', first, second);
}

function gap(day: Temporal.PlainDate, today: Temporal.PlainDate): number {
  return Math.abs(today.until(day, { largestUnit: 'days' }).days);
}

/** More than nine months away, either way: without a year that is more often a slip than meant. */
export function isFar(day: Temporal.PlainDate, today: Temporal.PlainDate): boolean {
  return (
    Temporal.PlainDate.compare(day, today.add({ months: 9 })) > 0 ||
    Temporal.PlainDate.compare(day, today.subtract({ months: 9 })) < 0
  );
}

/** Applies a pick to any kind of month. */
function eachMonth(
  pick: (first: Temporal.PlainDate, context: DateContext) => Temporal.PlainDate,
): Rule<Find> {
  return any(
    map(namedMonth, (named, context) => inMonth(named, (first) => pick(first, context), context)),
    map(any(relativeMonth, currentMonth), (found, context) =>
      andThen(found, ({ date }) => dayOf(pick(date, context))),
    ),
  );
}

const first = (date: Temporal.PlainDate): Temporal.PlainDate => date;
const middle = (date: Temporal.PlainDate): Temporal.PlainDate => date.with({ day: 15 });
const question = 'Which day of the month?';
const whole = doubtful(
  any(
    map(relativeMonth, (found) => found),
    map(namedMonth, (named, context) => inMonth(named, lastOfMonth, context)),
  ),
);

function doubtful(rule: Rule<Find>): Rule<Find> {
  return map(rule, (found) => (found.kind === 'no' ? found : { kind: 'ask', question, options: [] }));
}

const monthEdges: Rule<Find> = any(
  map(seq(the, steer('end'), of, the, eachMonth(lastOfMonth)), ([, , , , found]) => found),
  map(seq(any(relativeMonth, currentMonth), steer('end')), ([found]) =>
    andThen(found, ({ date }) => dayOf(lastOfMonth(date))),
  ),
  map(seq(namedMonth, steer('end')), ([named], context) => inMonth(named, lastOfMonth, context)),
  map(seq(the, steer('monthend')), (_value, context) => dayOf(lastOfMonth(todayOf(context)))),
  map(seq(the, steer('start'), of, the, eachMonth(first)), ([, , , , found]) => found),
  map(seq(the, steer('mid'), of, the, eachMonth(middle)), ([, , , , found]) => found),
  doubtful(
    map(seq(the, steer('early', 'late', 'beginning'), of, the, eachMonth(first)), ([, , , , found]) => found),
  ),
  map(seq(any(steer('in'), steer('sometime'), the), maybe(steer('in')), whole), ([, , found]) => found),
);

const yearFirst: Rule<Find> = once(
  any(
    map(seq(the, maybe(steer('this')), yearUnit), (_value, context) =>
      dayOf(todayOf(context).with({ month: 1, day: 1 })),
    ),
    map(seq(the, steer('next'), yearUnit), (_value, context) =>
      dayOf(todayOf(context).with({ month: 1, day: 1 }).add({ years: 1 })),
    ),
    map(year, (n) => dayOf(Temporal.PlainDate.from({ year: n, month: 1, day: 1 }), { yearSaid: true })),
  ),
);
const lastOfYear = ({ date, yearSaid }: { date: Temporal.PlainDate; yearSaid?: boolean }): Find =>
  dayOf(date.with({ month: 12, day: 31 }), { yearSaid: yearSaid === true });

const yearEdges: Rule<Find> = any(
  map(seq(the, steer('end'), of, the, yearFirst), ([, , , , found]) => andThen(found, lastOfYear)),
  map(seq(the, yearUnit, steer('end')), (_value, context) =>
    dayOf(todayOf(context).with({ month: 12, day: 31 })),
  ),
  map(seq(the, steer('yearend')), (_value, context) => dayOf(todayOf(context).with({ month: 12, day: 31 }))),
  map(seq(the, steer('start'), of, the, steer('next'), yearUnit), (_value, context) =>
    dayOf(todayOf(context).with({ month: 1, day: 1 }).add({ years: 1 })),
  ),
  map(seq(the, steer('early', 'late', 'beginning', 'mid'), of, the, yearFirst), () =>
    askOf('Which day of the year?'),
  ),
  map(seq(maybe(steer('in')), the, steer('next', 'this', 'last'), yearUnit), () =>
    askOf('Which day of the year?'),
  ),
  map(seq(maybe(steer('in')), year), () => askOf('Which day of the year?')),
);

/** "last day of the month", "first day of next month". */
const edgeDays: Rule<Find> = any(
  map(seq(the, steer('last'), unitOf('day'), of, the, eachMonth(lastOfMonth)), ([, , , , , found]) => found),
  map(seq(the, ordinal, unitOf('day'), of, the, eachMonth(first)), ([, n, , , , found]) =>
    n === 1 ? found : undefined,
  ),
);

const nth: Rule<number> = any(
  ordinal,
  map(steer('last'), () => -1),
);

/** The nth such weekday of the month that begins on `start`; undefined when the month has none. */
function nthWeekday(start: Temporal.PlainDate, n: number, day: number): Temporal.PlainDate | undefined {
  if (n === -1) return gone(start.add({ months: 1 }), day);
  const found = coming(start.subtract({ days: 1 }), day).add({ weeks: n - 1 });
  return n >= 1 && found.month === start.month ? found : undefined;
}

function nthWorkday(
  start: Temporal.PlainDate,
  n: number,
  context: DateContext,
): Temporal.PlainDate | undefined {
  const from = n === -1 ? start.add({ months: 1 }) : start.subtract({ days: 1 });
  if (n > 20) return undefined;
  const found = Temporal.PlainDate.from(context.workingDays.add(from.toString(), n));
  return found.month === start.month ? found : undefined;
}

const monthOfNth: Rule<{ readonly starts: readonly Temporal.PlainDate[]; readonly said: boolean }> = any(
  map(namedMonth, ({ month: n, year: y }, context) => {
    const today = todayOf(context);
    const years = y === undefined ? [today.year - 1, today.year, today.year + 1] : [y];
    return {
      starts: years.map((at) => Temporal.PlainDate.from({ year: at, month: n, day: 1 })),
      said: y !== undefined,
    };
  }),
  map(any(relativeMonth, currentMonth), (found) =>
    found.kind === 'day' ? { starts: [found.date], said: true } : undefined,
  ),
  map(seq(wordOf('new', 'neuen', 'neues', 'neuem'), yearUnit), (_value, context) => ({
    starts: [todayOf(context).with({ month: 1, day: 1 }).add({ years: 1 })],
    said: true,
  })),
);

const nthInMonth: Rule<Find> = map(
  seq(
    the,
    nth,
    any<{ readonly day: number | undefined }>(
      map(weekday, (day) => ({ day })),
      map(workday, () => ({ day: undefined })),
    ),
    of,
    the,
    monthOfNth,
  ),
  ([, n, { day }, , , { starts, said }], context) => {
    const days = starts.flatMap((start) => {
      const found = day === undefined ? nthWorkday(start, n, context) : nthWeekday(start, n, day);
      return found === undefined ? [] : [found];
    });
    const [only] = days;
    if (only === undefined) return noDay('That month has no such day. Type a date such as 4 Dec.');
    return said ? dayOf(only, { yearSaid: true }) : nearest(days, context);
  },
);

/** "the 3rd of next month", "15. des Monats". */
const ordinalOfMonth: Rule<Find> = map(
  seq(on, the, ordinal, of, the, any(relativeMonth, currentMonth)),
  ([, , n, , , found]) =>
    andThen(found, ({ date }) => {
      const day = calendarDate(date.year, date.month, n);
      return day === undefined ? noDay(`That month has no ${n}th day. Type another day.`) : dayOf(day);
    }),
);

/** "1st of the month" names this month's or the next one's: which, the calendar shows only when the first is past. */
const ordinalOfTheMonth: Rule<Find> = map(ordinalOfMonth, (found, context) => {
  if (found.kind !== 'day' || context.direction !== 'future') return found;
  const today = todayOf(context);
  if (Temporal.PlainDate.compare(found.date, today) >= 0) return found;
  return doubt(dayOf(found.date.add({ months: 1 })), 'This month or next?');
});

/** Everything said by the month or the year. */
export const monthRules: Rule<Find> = once(
  any(monthEdges, edgeDays, yearEdges, nthInMonth, ordinalOfTheMonth),
);
