import { dayword, meridiem, numberToken, on, part, steer, steers, the, unitOf, weekday } from './atoms.ts';
import { combine, type Said } from './combine.ts';
import {
  bareWeekday,
  coming,
  comingWeekday,
  gone,
  lastWeekday,
  mondayOf,
  nextWeekday,
  thisWeekday,
  todayOf,
  weekdayPlus,
} from './days.ts';
import { feast, feastRules } from './feast-rules.ts';
import { dateRules, ordinalRules } from './figures.ts';
import { andThen, askOf, dayOf, doubt, type Find, merge, noDay, optionsOf } from './find.ts';
import type { PartOfDay } from './meanings.ts';
import { monthRules } from './months.ts';
import type { DateContext } from './reading.ts';
import { any, later, map, maybe, once, type Rule, seq } from './rules.ts';
import { spansFrom, weeksFrom } from './spans.ts';
import { bareTimeRule, timeRule } from './times.ts';
import { weekRules } from './weeks.ts';

/** Hours in which "tomorrow" may still mean the day that has just begun. */
const NIGHT_ENDS_HOUR = 5;

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
      seq(maybe(steer('this', 'next', 'last', 'coming')), weekday, on, the, datedDay()),
      ([, day, , , found], context) => agree(day, found, context),
    ),
    map(seq(datedDay(), maybe(steer('slash', 'dash')), weekday), ([found, , day], context) =>
      agree(day, found, context),
    ),
  ),
);

function datedDay(): Rule<Find> {
  return any(dateRules, ordinalRules, relativeDay, feastRules);
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
  if (only !== undefined && fitting.length === 1 && found.options.length > 1 && found.question !== FAR) {
    return dayOf(Temporal.PlainDate.from(only.day));
  }
  return found;
}
const FAR = 'That is most of a year away. Which one is meant?';

function around(date: Temporal.PlainDate, day: number, context: DateContext): readonly Temporal.PlainDate[] {
  const sides = [gone(date, day), coming(date, day)];
  const today = todayOf(context);
  return context.direction === 'future'
    ? sides.filter((side) => Temporal.PlainDate.compare(side, today) >= 0)
    : sides;
}

/** Every way to name one day. */
const day: Rule<Find> = once(
  any(
    relativeDay,
    weekdays,
    dateRules,
    ordinalRules,
    weekRules,
    monthRules,
    feastRules,
    checked,
    weeksFrom(weekdayPlus, relativeDay),
    spansFrom(() => day),
  ),
);

/** "end of day Friday", "close of play tomorrow", "eod": the day; the hour is the workshop's own. */
const dayEnd = once(
  any<unknown>(
    steer('endofday'),
    seq(steer('end'), maybe(steer('of')), the, any<unknown>(unitOf('day'), steer('play', 'business'))),
    seq(steer('close'), steer('of'), steer('play', 'business')),
    seq(steer('last', 'first-thing'), steer('thing')),
    map(seq(firstWord(), steer('thing')), () => true),
  ),
);

function firstWord(): Rule<true> {
  return (phrase, at) => (phrase.tokens[at]?.text === 'first' ? [{ value: true, next: at + 1 }] : []);
}

/** A part of the day by itself belongs to today. */
const dayPart: Rule<Said> = once(
  any<Said>(
    map(seq(the, any(steer('this'), tonightLead()), part), ([, , p], context) => ({
      day: dayOf(todayOf(context)),
      part: p,
    })),
    map(seq(steer('last'), part), ([, p], context) =>
      p === 'night' || p === 'evening' ? { day: lastNight(context), part: p } : undefined,
    ),
    map(tonight(), (_value, context) => ({ day: tonightFind(context), part: 'night' as const })),
    map(seq(steer('in'), the, part), ([, , p], context) => ({ day: inThe(p, context), part: p })),
  ),
);

function tonightLead(): Rule<never> {
  return () => [];
}

function tonight(): Rule<true> {
  return (phrase, at) =>
    ['tonight', 'tonite', '2nite'].includes(phrase.tokens[at]?.text ?? '')
      ? [{ value: true, next: at + 1 }]
      : [];
}

function tonightFind(context: DateContext): Find {
  const today = dayOf(todayOf(context));
  return context.now.hour < NIGHT_ENDS_HOUR
    ? doubt(today, 'The night that is on, or the coming one?')
    : today;
}

function lastNight(context: DateContext): Find {
  const yesterday = dayOf(todayOf(context).subtract({ days: 1 }));
  return context.now.hour < NIGHT_ENDS_HOUR ? doubt(yesterday, 'Which night is meant?') : yesterday;
}

/** "in the morning": tomorrow's once the morning is over; earlier it is a question. */
function inThe(p: PartOfDay, context: DateContext): Find {
  const today = todayOf(context);
  if (p === 'morning' && context.direction === 'future') {
    const tomorrow = today.add({ days: 1 });
    if (context.now.hour >= 12) return dayOf(tomorrow);
    return context.now.hour < NIGHT_ENDS_HOUR
      ? askOf('Which morning?', today, tomorrow)
      : askOf('Which morning?', tomorrow, today);
  }
  return askOf('Which day is meant?', today);
}

const early = maybe(steer('early', 'late'));
const partOfDay: Rule<PartOfDay> = once(
  any(
    map(
      seq(early, maybe(any(steer('in'), steer('at'), steer('on'))), the, plainPart(), maybe(part)),
      ([, , , p]) => p,
    ),
    meridiemPart(),
  ),
);

/** "morgen" is a part of the day only behind the day it belongs to or "am"; elsewhere it is tomorrow. */
function plainPart(): Rule<PartOfDay> {
  return (phrase, at) => {
    const before = phrase.tokens[at - 1]?.meanings ?? [];
    const follows = before.some(
      (m) => m.is === 'weekday' || m.is === 'dayword' || (m.is === 'steer' && m.word === 'on'),
    );
    return phrase.tokens[at]?.text === 'morgen' && !follows ? [] : part(phrase, at);
  };
}

/** "tomorrow am": behind a word, not a figure, am and pm name half a day. */
function meridiemPart(): Rule<PartOfDay> {
  return (phrase, at) => {
    const follows = (phrase.tokens[at - 1]?.meanings ?? []).some(
      ({ is }) => is === 'weekday' || is === 'dayword' || is === 'month' || is === 'name',
    );
    return !follows
      ? []
      : meridiem(phrase, at).map(({ value, next }) => ({
          value: value === 'am' ? 'morning' : 'afternoon',
          next,
        }));
  };
}

/** A day with or without part, time and "end of", in any order people put them. */
const said: Rule<Said> = once(
  any<Said>(
    map(seq(maybe(dayEnd), on, the, day, maybe(dayEnd)), ([, , , found]) => ({ day: found })),
    map(seq(on, day, partOfDay, maybe(bareTimeRule)), ([, found, p, time]) => ({
      day: found,
      part: p,
      time,
    })),
    map(seq(on, day, timeRule, maybe(partOfDay)), ([, found, time, p]) => ({ day: found, part: p, time })),
    map(seq(on, day, bareTimeRule, partOfDay), ([, found, time, p]) => ({ day: found, part: p, time })),
    map(
      seq(timeRule, maybe(partOfDay), maybe(steer('on', 'of')), the, day, maybe(partOfDay)),
      ([time, p, , , found, q]) => ({
        day: found,
        part: p ?? q,
        time,
      }),
    ),
    map(seq(bareTimeRule, on, the, day, partOfDay), ([time, , , found, p]) => ({
      day: found,
      part: p,
      time,
    })),
    map(seq(bareTimeRule, maybe(on), dayPart), ([time, , whole]) => ({ ...whole, time })),
    map(seq(partOfDay, maybe(steer('on', 'of')), the, day, maybe(timeRule)), ([p, , , found, time]) => ({
      day: found,
      part: p,
      time,
    })),
    map(seq(dayPart, maybe(bareTimeRule)), ([whole, time]) => ({ ...whole, time })),
    map(timeRule, (time) => ({ time })),
    map(seq(bareTimeRule, partOfDay), ([time, p]) => ({ time, part: p })),
    map(seq(partOfDay, timeRule), ([p, time]) => ({ time, part: p })),
  ),
);

const moment: Rule<Find> = once(
  map(said, (value, context) => {
    if (value.day === undefined && value.part !== undefined && value.time !== undefined) {
      // "8 in the evening": today's, if it lies the right way.
      const settled = combine({ day: dayOf(todayOf(context)), part: value.part, time: value.time }, context);
      return settled.kind === 'day' && isPassed(settled, context)
        ? doubt(settled, 'That time has gone today. Which day is meant?')
        : settled;
    }
    return combine(value, context);
  }),
);

function isPassed(found: Extract<Find, { kind: 'day' }>, context: DateContext): boolean {
  if (found.time === undefined) return false;
  const side = Temporal.PlainDateTime.compare(found.date.toPlainDateTime(found.time), context.now);
  return context.direction === 'future' ? side < 0 : side > 0;
}

const today: Rule<Find> = any(
  map(dayEnd, (_value, context) => dayOf(todayOf(context))),
  map(any<unknown>(steer('now'), seq(steer('just'), steer('now')), steer('just')), (_value, context) => ({
    kind: 'day' as const,
    date: todayOf(context),
    time: context.now.toPlainTime(),
  })),
);

const plain: Rule<Find> = once(any(moment, today));

/** A deadline is its last day; a season has none. */
const deadline: Rule<Find> = once(
  any(
    map(seq(deadlineWords(), the, plain, maybe(latest())), ([, , found]) => seasonAsked(found)),
    map(seq(plain, latest()), ([found]) => seasonAsked(found)),
    map(seq(steer('at', 'on', 'in'), the, feast), ([, , found]) => seasonAsked(found)),
  ),
);

function seasonAsked(found: Find): Find {
  if (found.kind !== 'day' || found.season !== true) return found;
  return askOf('Which day is meant?', found.date.subtract({ days: 1 }), found.date);
}

function deadlineWords(): Rule<unknown> {
  const to = maybe(steer('to', 'for'));
  return any<unknown>(
    seq(steer('by', 'until', 'till'), maybe(steer('latest')), maybe(steer('on', 'at')), to),
    seq(steer('latest'), maybe(steer('by')), to, maybe(steer('on'))),
    seq(steer('at'), the, steer('latest'), maybe(steer('by'))),
    seq(steer('no', 'not'), steer('later'), steer('than')),
    seq(steer('not'), steer('after')),
    seq(steer('on'), steer('or'), steer('before')),
    steer('within'),
    steer('for'),
  );
}

function latest(): Rule<unknown> {
  return any<unknown>(
    steer('latest'),
    seq(steer('at'), the, steer('latest')),
    seq(steer('on'), steer('latest')),
    seq(steer('or'), steer('before')),
  );
}

const vague: Rule<Find> = once(
  any(
    map(steer('asap', 'soon', 'sometime', 'later'), () => askOf('Which day should it be by?')),
    map(steer('never'), () => noDay('"Never" is no day. Type a date such as 4 Dec.')),
    map(seq(steer('about', 'sometime'), maybe(steer('about', 'on', 'in')), the, plain), ([, , , found]) =>
      doubt(found, 'Is this day meant?'),
    ),
    map(seq(plain, steer('about')), ([found]) => doubt(found, 'Is this day meant?')),
    map(seq(maybe(steer('not')), steer('before'), the, plain), ([not, , , found], context) =>
      beforeDay(not !== undefined, found, context),
    ),
    map(seq(steer('by', 'until'), steer('before'), the, plain), ([, , , found], context) =>
      beforeDay(false, found, context),
    ),
    map(seq(steer('after'), the, plain), ([, , found], context) => afterDay(found, context)),
    map(
      seq(
        steer('from', 'earliest', 'starting', 'beginning'),
        maybe(steer('on', 'from')),
        the,
        plain,
        maybe(any<unknown>(steer('on'), steer('starting'))),
      ),
      ([, , , found]) => doubt(found, 'That is the earliest day. Which day is it due?'),
    ),
    map(
      seq(
        plain,
        any<unknown>(
          steer('earliest'),
          seq(steer('at'), the, steer('earliest')),
          steers('or', 'later'),
          steers('or', 'after'),
        ),
      ),
      ([found]) => doubt(found, 'That is the earliest day. Which day is it due?'),
    ),
    map(seq(maybe(steer('on')), steer('every'), maybe(plain)), ([, , found]) =>
      found === undefined
        ? askOf('One day only can be kept. Which?')
        : doubt(found, 'One day only can be kept. This one?'),
    ),
    map(seq(steer('weekof'), maybe(on), the, day), ([, , , found]) => weekOf(found)),
    map(seq(the, unitOf('week'), steer('starting', 'beginning', 'of', 'from'), the, day), ([, , , , found]) =>
      weekOf(found),
    ),
    map(steersName(), () => askOf('Which of those days is meant?')),
  ),
);

/** "zwischen den Jahren": the days between Christmas and New Year. */
function steersName(): Rule<unknown> {
  return seq(steer('between'), the, unitOf('year'));
}

function weekOf(found: Find): Find {
  return andThen(found, ({ date }) =>
    askOf('Which day of that week?', mondayOf(date), mondayOf(date).add({ days: 4 })),
  );
}

/** "before Christmas" ends on the day before it; before any other day is a question, as is "not before". */
function beforeDay(not: boolean, found: Find, context: DateContext): Find {
  if (not) return doubt(found, 'That is the earliest day. Which day is it due?');
  return andThen(found, (end) => {
    const eve = end.date.subtract({ days: 1 });
    if (end.season === true && end.date.month === 12 && context.direction === 'future') return dayOf(eve);
    return askOf('By the day before?', eve, end.date);
  });
}

function afterDay(found: Find, context: DateContext): Find {
  return andThen(found, ({ date }) =>
    askOf('How long after?', Temporal.PlainDate.from(context.workingDays.add(date.toString(), 1))),
  );
}

const weekEnding: Rule<Find> = map(
  seq(any<unknown>(steer('weekending'), seq(unitOf('week'), steer('ending'))), on, the, day),
  ([, , , found]) => found,
);

/** Two days or more named together: a question, even where the first would do. */
const several: Rule<Find> = map(
  seq(
    maybe(any<unknown>(steer('between'), steer('from'))),
    the,
    later(() => plain),
    steer('or', 'and', 'slash', 'dash', 'to', 'by', 'until', 'till'),
    the,
    later(() => plain),
  ),
  ([, , a, , , b]) => {
    if (a.kind === 'no' && b.kind === 'no') return a;
    return {
      kind: 'ask' as const,
      question: 'Which of these is meant?',
      options: [...optionsOf(a), ...optionsOf(b)],
    };
  },
);

/** "1.-3.12.", "1 to 3 December": the month is said once. */
const dayRange: Rule<Find> = map(
  seq(
    maybe(steer('between', 'from')),
    the,
    anyNumber(),
    steer('dash', 'to', 'or', 'and', 'by', 'slash', 'until'),
    the,
    dateRules,
  ),
  ([, , , , , found]) => doubt(found, 'That is several days. Which is meant?'),
);

function anyNumber(): Rule<unknown> {
  return any<unknown>(numberToken, ordinalRules);
}

/** A bare number may be a day, a month, an hour or a count. */
const bareNumber: Rule<Find> = map(seq(maybe(weekday), on, the, numberToken), ([wd, , , { n }], context) => {
  if (n < 1 || n > 31) return undefined;
  const start = todayOf(context).with({ day: 1 });
  const dates = [0, 1].flatMap((months) => {
    const first = start.add({ months });
    return n <= first.daysInMonth ? [first.with({ day: n })] : [];
  });
  const ahead = dates.filter(
    (date) =>
      Temporal.PlainDate.compare(date, todayOf(context)) > 0 && (wd === undefined || date.dayOfWeek === wd),
  );
  return askOf('A day of the month, an hour or a number of days?', ...ahead.slice(0, 1));
});

/**
 * The whole grammar: rules that may stand for a complete phrase, in tiers. A later tier is asked only when no earlier
 * one fits, so that "vor einer Woche" is a week ago and not the time before a week.
 */
export const TIERS: readonly Rule<Find>[] = [
  plain,
  any(deadline, weekEnding),
  any(vague, several, dayRange, bareNumber),
];

/** Merges what the ways to read a phrase came to. */
export function settle(finds: readonly Find[]): Find {
  return merge(finds, 'Which day is meant?');
}
