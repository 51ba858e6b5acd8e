import { dayword, on, steer, the, unitOf, weekday, wordOf } from './atoms.ts';
import {
  bareWeekday,
  coming,
  comingWeekday,
  gone,
  lastWeekday,
  nextWeekday,
  thisWeekday,
  todayOf,
  weekdayPlus,
} from './days.ts';
import { feastRules } from './feast-rules.ts';
import { dateRules, ordinalRules } from './figures.ts';
import { andThen, askOf, dayOf, doubt, type Find, merge } from './find.ts';
import { monthRules } from './months.ts';
import type { DateContext } from './reading.ts';
import { any, map, maybe, once, type Rule, seq } from './rules.ts';
import { spansFrom, weeksFrom } from './span-rules.ts';
import { weekRules } from './weeks.ts';

const first = wordOf('first');

/** Hours in which "tomorrow" may still mean the day that has just begun. */
export const NIGHT_ENDS_HOUR = 5;

/** "today", "tomorrow" and their kin. After midnight people still call the coming day tomorrow. */
const relativeDay: Rule<Find> = once(
  any(
    map(dayword, dayFromToday),
    map(seq(the, unitOf('day'), steer('after'), dayword), ([, , , offset], context) =>
      offset === 1 ? dayFromToday(2, context) : undefined,
    ),
    map(seq(the, unitOf('day'), steer('before'), dayword), ([, , , offset], context) =>
      offset === -1 ? dayFromToday(-2, context) : undefined,
    ),
  ),
);

function dayFromToday(offset: number, context: DateContext): Find {
  const date = todayOf(context).add({ days: offset });
  if (offset <= 0 || context.now.hour >= NIGHT_ENDS_HOUR) return dayOf(date);
  return askOf('Counted from before midnight, or from now?', date.subtract({ days: 1 }), date);
}

const weekdays: Rule<Find> = once(
  any(
    map(weekday, bareWeekday),
    map(seq(the, steer('this'), weekday), ([, , day], context) => thisWeekday(day, context)),
    map(seq(maybe(steer('the', 'this')), steer('coming'), weekday), ([, , day], context) =>
      comingWeekday(day, context),
    ),
    map(seq(the, steer('next'), weekday), ([, , day], context) => nextWeekday(day, context)),
    map(seq(the, steer('last'), weekday), ([, , day], context) => lastWeekday(day, context)),
    map(seq(the, steer('nextbutone', 'following'), weekday), ([, , day], context) =>
      askOf(
        'Which one is meant?',
        coming(todayOf(context), day),
        coming(todayOf(context), day).add({ weeks: 1 }),
      ),
    ),
    map(seq(weekday, steer('next', 'coming')), ([day], context) =>
      askOf(
        'The coming one, or the one of next week?',
        coming(todayOf(context), day),
        coming(todayOf(context), day).add({ weeks: 1 }),
      ),
    ),
    map(seq(weekday, steer('last')), ([day], context) =>
      doubt(lastWeekday(day, context), 'Which one is meant?'),
    ),
  ),
);

/** A day said twice, by weekday and by date: the two must agree. */
const checked: Rule<Find> = once(
  any(
    map(
      seq(
        maybe(steer('this', 'next', 'last', 'coming')),
        weekday,
        on,
        the,
        any(dateRules, ordinalRules, notMorgen(), feastRules),
      ),
      ([, day, , , found], context) => agree(day, found, context),
    ),
    map(seq(the, ordinalRules, weekday), ([, found]) =>
      doubt(found, 'A date, or which such weekday of a month?'),
    ),
    map(seq(relativeDay, on, the, dateRules), ([a, , , b]) =>
      merge([a, b], 'Those are two days. Which is meant?'),
    ),
    map(
      seq(any(dateRules, relativeDay, feastRules), maybe(steer('slash', 'dash')), weekday),
      ([found, , day], context) => agree(day, found, context),
    ),
  ),
);

/** Behind a weekday, "morgen" is its morning. */
function notMorgen(): Rule<Find> {
  return (phrase, at) => (phrase.tokens[at]?.text === 'morgen' ? [] : relativeDay(phrase, at));
}

function agree(day: number, found: Find, context: DateContext): Find {
  const fits = (text: string): boolean => Temporal.PlainDate.from(text).dayOfWeek === day;
  if (found.kind === 'no') return found;
  if (found.kind === 'day') {
    if (found.date.dayOfWeek === day) return found;
    return askOf(
      'The weekday and the date do not agree. Which is meant?',
      found.date,
      ...around(found.date, day, context),
    );
  }
  const fitting = found.options.filter((option) => fits(option.day));
  const [only] = fitting;
  if (only !== undefined && fitting.length === 1 && found.options.length > 1 && found.far !== true) {
    return dayOf(Temporal.PlainDate.from(only.day));
  }
  return found;
}

function around(date: Temporal.PlainDate, day: number, context: DateContext): readonly Temporal.PlainDate[] {
  const sides = [gone(date, day), coming(date, day)];
  const today = todayOf(context);
  return context.direction === 'future'
    ? sides.filter((side) => Temporal.PlainDate.compare(side, today) >= 0)
    : sides;
}

/** Days that stand in the calendar by themselves: what "on", "at" and "for" may stand before. */
export const calendarDay: Rule<Find> = once(
  any(
    relativeDay,
    weekdays,
    dateRules,
    ordinalRules,
    weekRules,
    monthRules,
    feastRules,
    checked,
    weekdayBeside(),
  ),
);

/** "the Friday after Christmas", "first Monday after the 6th", "letzten Freitag vor Weihnachten". */
function weekdayBeside(): Rule<Find> {
  const anchor = any(dateRules, ordinalRules, feastRules);
  return any(
    map(
      seq(the, maybe(any<unknown>(steer('next'), first)), weekday, steer('after', 'following'), the, anchor),
      ([, , n, , , found]) => andThen(found, ({ date }) => dayOf(coming(date, n))),
    ),
    map(seq(the, maybe(steer('last')), weekday, steer('before'), the, anchor), ([, , n, , , found]) =>
      andThen(found, ({ date }) => dayOf(gone(date, n))),
    ),
  );
}

/** A weekday or today, tomorrow and their kin. */
export const plainDay: Rule<Find> = any(relativeDay, weekdays);

/** Every way to name one day. */
export const day: Rule<Find> = once(
  any(
    calendarDay,
    weeksFrom(weekdayPlus, relativeDay),
    spansFrom(() => day),
  ),
);
