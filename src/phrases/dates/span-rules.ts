import { dayword, of, ordinal, steer, the, unit, weekday, workday } from './atoms.ts';
import { bareWeekday, coming, todayOf, weeksApart } from './days.ts';
import { andThen, askOf, dayOf, doubt, type Find, noDay } from './find.ts';
import type { Unit } from './meanings.ts';
import type { DateContext } from './reading.ts';
import { any, later, map, maybe, once, type Rule, seq } from './rules.ts';
import { DAYS_IN, fromNow, move, type Span, span } from './spans.ts';

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
