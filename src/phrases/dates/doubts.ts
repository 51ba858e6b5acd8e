import { numberToken, on, steer, steers, the, unitOf, weekday } from './atoms.ts';
import { combine } from './combine.ts';
import { mondayOf, todayOf } from './days.ts';
import { dateRules, dayAndMonth, ordinalRules } from './figures.ts';
import { andThen, askOf, dayOf, doubt, type Find, noDay, optionsOf } from './find.ts';
import { plain } from './moments.ts';
import { day } from './named-days.ts';
import type { DateContext } from './reading.ts';
import { any, map, maybe, once, type Rule, seq } from './rules.ts';
import { pointed } from './times.ts';

const EARLIEST = 'That is the earliest day. Which day is it due?';

/** Phrases that name a day without settling on it. Each is asked back with what it may come to. */
export const vague: Rule<Find> = once(
  any(
    map(steer('asap', 'soon', 'sometime', 'later'), () => askOf('Which day should it be by?')),
    map(steer('never'), () => noDay('"Never" is no day. Type a date such as 4 Dec.')),
    map(seq(steer('about', 'sometime'), maybe(steer('about', 'on', 'in')), the, plain), ([, , , found]) =>
      doubt(found, 'Is this day meant?'),
    ),
    map(seq(plain, steer('about')), ([found]) => doubt(found, 'Is this day meant?')),
    map(seq(steer('not'), steer('before'), the, plain), ([, , , found]) => doubt(found, EARLIEST)),
    map(seq(maybe(steer('by', 'until')), steer('before'), the, day), ([, , , found], context) =>
      beforeDay(found, context),
    ),
    map(seq(steer('after'), the, day), ([, , found], context) => afterDay(found, context)),
    map(seq(steer('before', 'after'), timed()), ([, found]) => doubt(found, 'By that time, or when else?')),
    map(
      seq(
        steer('from', 'earliest', 'starting', 'beginning'),
        maybe(steer('on', 'from')),
        the,
        plain,
        maybe(any<unknown>(steer('on'), steer('starting'))),
      ),
      ([, , , found]) => doubt(found, EARLIEST),
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
      ([found]) => doubt(found, EARLIEST),
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
    map(seq(steer('between'), the, unitOf('year')), () => askOf('Which of those days is meant?')),
  ),
);

/** A time said, with or without a day. */
function timed(): Rule<Find> {
  return map(plain, (found) => (optionsOf(found).some(({ time }) => time !== undefined) ? found : undefined));
}

function weekOf(found: Find): Find {
  return andThen(found, ({ date }) =>
    askOf('Which day of that week?', mondayOf(date), mondayOf(date).add({ days: 4 })),
  );
}

/** "before Christmas" ends on the day before it; before any other day is a question. */
function beforeDay(found: Find, context: DateContext): Find {
  return andThen(found, (end) => {
    const eve = end.date.subtract({ days: 1 });
    if (end.season !== undefined && end.date.month === 12 && context.direction === 'future')
      return dayOf(eve);
    return askOf('By the day before?', eve, end.date);
  });
}

function afterDay(found: Find, context: DateContext): Find {
  return andThen(found, ({ date }) =>
    askOf('How long after?', Temporal.PlainDate.from(context.workingDays.add(date.toString(), 1))),
  );
}

/** Two days or more named together: a question, even where the first would do. */
export const several: Rule<Find> = map(
  seq(
    maybe(any<unknown>(steer('between'), steer('from'))),
    the,
    plain,
    steer('or', 'and', 'slash', 'dash', 'to', 'by', 'until', 'till'),
    the,
    plain,
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
export const dayRange: Rule<Find> = any(
  map(seq(numberToken, steer('dash'), numberToken), ([a, , b], context) =>
    doubt(dayAndMonth(a.n, b.n, undefined, context), 'A date, or a span?'),
  ),
  map(
    seq(
      maybe(steer('between', 'from')),
      the,
      anyNumber(),
      steer('dash', 'to', 'or', 'and', 'by', 'slash', 'until'),
      the,
      dateRules,
    ),
    ([, , , , , found]) => doubt(found, 'That is several days. Which is meant?'),
  ),
);

function anyNumber(): Rule<unknown> {
  return any<unknown>(numberToken, ordinalRules);
}

/** "9.30" by itself may be a time of day. */
export const pointedTime: Rule<Find> = map(pointed, (time, context) =>
  combine({ time: { ...time, unsure: true } }, context),
);

/** A bare number may be a day, a month, an hour or a count. */
export const bareNumber: Rule<Find> = map(
  seq(maybe(weekday), on, the, numberToken),
  ([wd, , , { n }], context) => {
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
  },
);
