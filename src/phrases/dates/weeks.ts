import { isoWeek, numberToken, of, on, ordinal, steer, steers, the, unitOf, weekday } from './atoms.ts';
import { mondayOf, mondayOfWeek, todayOf } from './days.ts';
import { andThen, askOf, dayOf, type Find, noDay } from './find.ts';
import type { DateContext } from './reading.ts';
import { any, map, maybe, once, type Rule, seq } from './rules.ts';

/** Weeks, named as this, next, last, or by their ISO 8601 number. A week is found as its Monday. */
const week = unitOf('week');

function relative(weeks: number): (value: unknown, context: DateContext) => Find {
  return (_value, context) => dayOf(mondayOf(todayOf(context)).add({ weeks }));
}

const relativeWeek: Rule<Find> = any(
  map(seq(steer('this'), week), relative(0)),
  map(seq(the, steer('next', 'coming'), week), relative(1)),
  map(seq(the, steer('last'), week), relative(-1)),
  map(seq(the, steer('nextbutone'), week), relative(2)),
  map(seq(the, week, steers('after', 'next')), relative(2)),
);

const numberedWeek: Rule<Find> = any(
  map(
    seq(
      maybe(steer('in')),
      any(steer('weekno'), week),
      numberToken,
      maybe(seq(maybe(steer('slash')), numberToken)),
    ),
    ([, , n, year], context) => (n.digits === '' ? undefined : weekNumber(n.n, year?.[1].n, context)),
  ),
  map(seq(the, ordinal, steer('weekno')), ([, n], context) => weekNumber(n, undefined, context)),
  map(isoWeek, ({ week: n, year, weekday: day }, context) =>
    day === undefined ? weekNumber(n, year, context) : undefined,
  ),
);

/** The Monday of a numbered week; without a year, of the first such week whose Friday is still to come. */
function weekNumber(week: number, year: number | undefined, context: DateContext): Find {
  const today = todayOf(context);
  if (year !== undefined) {
    const monday = mondayOfWeek(year < 100 ? 2000 + year : year, week);
    if (monday === undefined) return noDay(`${year} has no week ${week}. Type a week from 1 to 52 or 53.`);
    return dayOf(monday, { yearSaid: true });
  }
  if (week < 1 || week > 53) return noDay(`There is no week ${week}. Type a week from 1 to 53.`);
  const years = context.direction === 'past' ? [1, 0, -1, -2] : [-1, 0, 1, 2];
  const mondays = years.flatMap((offset) => mondayOfWeek(today.year + offset, week) ?? []);
  const fitting = mondays.find((monday) => {
    const side = Temporal.PlainDate.compare(monday.add({ days: 4 }), today);
    return context.direction === 'past' ? side <= 0 : side >= 0;
  });
  if (fitting === undefined) return noDay(`No year near has a week ${week}. Type a date such as 4 Dec.`);
  return context.direction === 'any' ? askOf('Which day is meant?', fitting) : dayOf(fitting);
}

const anyWeek = once(any(relativeWeek, numberedWeek));

function within(monday: Find, day: number): Find {
  return andThen(monday, ({ date, yearSaid }) =>
    dayOf(date.add({ days: day - 1 }), { yearSaid: yearSaid === true }),
  );
}

/** A relative week alone is a question; a numbered one is due by its Friday. */
const wholeWeek: Rule<Find> = any(
  map(relativeWeek, (monday) =>
    andThen(monday, ({ date }) => askOf('Which day of that week?', date, date.add({ days: 4 }))),
  ),
  map(numberedWeek, (monday) => within(monday, 5)),
);

const dayOfNamedWeek: Rule<Find> = any(
  map(seq(anyWeek, on, weekday), ([monday, , day], context) => namedDay(monday, day, context)),
  map(seq(weekday, of, the, anyWeek), ([day, , , monday], context) => namedDay(monday, day, context)),
  map(isoWeek, ({ week: n, year, weekday: day }, context) =>
    day === undefined ? undefined : within(weekNumber(n, year, context), day),
  ),
);

/** Americans often let the week begin on Sunday, so the Sunday of a named week is a question there. */
function namedDay(monday: Find, day: number, context: DateContext): Find {
  const found = within(monday, day);
  if (day !== 7 || context.locale !== 'en-US') return found;
  return andThen(found, ({ date }) => askOf('Which Sunday is meant?', date, date.subtract({ weeks: 1 })));
}

const currentWeek: Rule<Find> = map(seq(the, week), (_value, context) => dayOf(mondayOf(todayOf(context))));
const edgeWeek = once(any(anyWeek, currentWeek));

/** The working week ends on Friday and starts on Monday; a Friday or Monday off makes it a question. */
function edge(monday: Find, day: number, context: DateContext): Find {
  return andThen(within(monday, day), (found) => {
    if (!context.workingDays.isWorkingDay(found.date.toString()))
      return askOf('Which day is meant?', found.date);
    return found;
  });
}

const edgesOfWeek: Rule<Find> = any(
  map(seq(the, steer('end'), of, edgeWeek), ([, , , monday], context) => edge(monday, 5, context)),
  map(seq(the, steer('start'), of, edgeWeek), ([, , , monday], context) => edge(monday, 1, context)),
  map(seq(the, steer('early', 'beginning'), of, edgeWeek), ([, , , monday]) => pick(monday, 0, 1)),
  map(seq(the, steer('late'), of, edgeWeek), ([, , , monday]) => pick(monday, 3, 4)),
  map(seq(the, steer('mid'), of, edgeWeek), ([, , , monday]) => pick(monday, 2)),
  map(seq(steer('mid'), week), (_value, context) => pick(dayOf(mondayOf(todayOf(context))), 2)),
  map(seq(anyWeek, steer('early', 'late', 'start', 'end', 'mid', 'beginning')), ([monday]) =>
    pick(monday, 0, 4),
  ),
);

function pick(monday: Find, ...offsets: readonly number[]): Find {
  return andThen(monday, ({ date }) =>
    askOf('Which day of that week?', ...offsets.map((days) => date.add({ days }))),
  );
}

const weekends: Rule<Find> = map(
  seq(
    maybe(steer('on', 'at', 'in')),
    the,
    maybe(steer('this', 'next', 'last', 'coming', 'nextbutone')),
    steer('weekend'),
  ),
  ([, , which], context) => {
    const shift = which === 'last' ? -1 : 0;
    const saturday = mondayOf(todayOf(context)).add({ days: 5, weeks: shift });
    const days = [saturday, saturday.add({ days: 1 })];
    const later = which === 'next' ? days.map((day) => day.add({ weeks: 1 })) : [];
    return askOf('Saturday or Sunday?', ...days, ...later);
  },
);

/** Everything said by the week. */
export const weekRules: Rule<Find> = once(any(wholeWeek, dayOfNamedWeek, edgesOfWeek, weekends));
