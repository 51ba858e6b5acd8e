import { meridiem, on, part, steer, the, unitOf, wordOf } from './atoms.ts';
import { combine, type Said } from './combine.ts';
import { todayOf } from './days.ts';
import { askOf, dayOf, doubt, type Find } from './find.ts';
import type { PartOfDay } from './meanings.ts';
import { calendarDay, day, NIGHT_ENDS_HOUR, plainDay } from './named-days.ts';
import type { DateContext } from './reading.ts';
import { any, map, maybe, once, type Rule, seq } from './rules.ts';
import { bareTimeRule, timeRule } from './times.ts';

/** "end of day Friday", "close of play tomorrow", "eod": the day; the hour is the workshop's own. */
const closing = any<unknown>(
  steer('endofday'),
  seq(steer('end'), maybe(steer('of')), the, any<unknown>(unitOf('day'), steer('play', 'business'))),
  seq(steer('close'), steer('of'), steer('play', 'business')),
);
const openingThing = any<unknown>(seq(steer('last'), steer('thing')), seq(wordOf('first'), steer('thing')));
const dayEnd = once(any(closing, openingThing));

/** A part of the day by itself belongs to today. */
const dayPart: Rule<Said> = once(
  any<Said>(
    map(seq(the, steer('this'), part), ([, , p], context) => ({
      day: dayOf(todayOf(context)),
      part: p,
    })),
    map(seq(steer('last'), part), ([, p], context) =>
      p === 'night' || p === 'evening' ? { day: lastNight(context), part: p } : undefined,
    ),
    map(wordOf('tonight', 'tonite', '2nite'), (_value, context) => ({
      day: tonightFind(context),
      part: 'night' as const,
    })),
    map(seq(steer('in'), the, part), ([, , p], context) => ({ day: inThe(p, context), part: p })),
  ),
);

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

/** A season has no one day: at, by or over it is a question, and so are the longer ones by their bare name. */
export function seasonAsked(found: Find): Find {
  if (found.kind !== 'day' || found.season === undefined) return found;
  return askOf('Which day is meant?', found.date.subtract({ days: 1 }), found.date);
}

/** A day with "at", "on" or "for" before it, or without; a count of days ("for 3 days") is no day then. */
const placed: Rule<Find> = once(
  any(
    map(seq(the, day), ([, found]) => found),
    map(seq(steer('on', 'for', 'at'), the, calendarDay), ([, , found]) => seasonAsked(found)),
  ),
);

/** A day with or without part, time and "end of", in any order people put them. */
const said: Rule<Said> = once(
  any<Said>(
    map(seq(maybe(dayEnd), placed, maybe(dayEnd)), ([, found]) => ({ day: found })),
    map(seq(steer('early', 'late'), on, plainDay), ([, , found]) => ({ day: found })),
    map(seq(plainDay, steer('early', 'late')), ([found]) => ({ day: found })),
    map(seq(placed, partOfDay, maybe(bareTimeRule)), ([found, p, time]) => ({ day: found, part: p, time })),
    map(seq(placed, timeRule, maybe(partOfDay)), ([found, time, p]) => ({ day: found, part: p, time })),
    map(seq(placed, steer('by', 'until', 'till'), closing), ([found]) => ({ day: found })),
    map(seq(placed, steer('by', 'until', 'till'), timeRule), ([found, , time]) => ({ day: found, time })),
    map(seq(placed, bareTimeRule, partOfDay), ([found, time, p]) => ({ day: found, part: p, time })),
    map(
      seq(timeRule, maybe(partOfDay), maybe(steer('of')), placed, maybe(partOfDay)),
      ([time, p, , found, q]) => ({
        day: found,
        part: p ?? q,
        time,
      }),
    ),
    map(seq(bareTimeRule, placed, partOfDay), ([time, found, p]) => ({ day: found, part: p, time })),
    map(seq(bareTimeRule, on, dayPart), ([time, , whole]) => ({ ...whole, time })),
    map(seq(partOfDay, maybe(steer('of')), placed, maybe(timeRule)), ([p, , found, time]) => ({
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
    const found = combine(value, context);
    return found.kind === 'day' && found.season === 'several days' ? seasonAsked(found) : found;
  }),
);

function isPassed(found: Extract<Find, { kind: 'day' }>, context: DateContext): boolean {
  if (found.time === undefined) return false;
  const side = Temporal.PlainDateTime.compare(found.date.toPlainDateTime(found.time), context.now);
  return context.direction === 'future' ? side < 0 : side > 0;
}

const today: Rule<Find> = any<Find>(
  map(closing, (_value, context) => dayOf(todayOf(context))),
  map(openingThing, (_value, context) =>
    askOf('Which day?', todayOf(context).add({ days: 1 }), todayOf(context)),
  ),
  map(any<unknown>(steer('now'), seq(steer('just'), steer('now')), steer('just')), (_value, context) => ({
    kind: 'day' as const,
    date: todayOf(context),
    time: context.now.toPlainTime(),
  })),
);

/** A day, a day with its time, or a time, with nothing in doubt about it in its words. */
export const plain: Rule<Find> = once(any(moment, today));
