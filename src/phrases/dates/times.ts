import { clock, count, meridiem, numberToken, pair, steer, the } from './atoms.ts';
import type { PartOfDay } from './meanings.ts';
import type { DateContext } from './reading.ts';
import { any, map, maybe, once, type Rule, seq } from './rules.ts';

/** Minutes after midnight. */
type Minutes = number;

/** A time of day as said. `twelve` leaves open which half of the day is meant; `unsure` is asked back always. */
export interface Time {
  readonly minutes: Minutes;
  readonly twelve: boolean;
  /** The figures as typed are a 24-hour time too ("8:30"). */
  readonly face?: boolean;
  readonly unsure?: boolean;
  /** "8 Uhr" is 08:00, unless the evening is named beside it. */
  readonly uhr?: boolean;
}

const HALF = 720;

function exact(hour: number, minute: number): Time | undefined {
  return hour <= 23 && minute <= 59 ? { minutes: hour * 60 + minute, twelve: false } : undefined;
}

function uhr(hour: number, minute: number): Time | undefined {
  const time = exact(hour, minute);
  return time === undefined ? undefined : { ...time, uhr: true };
}

/** An hour of the twelve-hour dial; from 13 on it is of the day. */
function dial(hour: number, minute: number): Time | undefined {
  if (hour > 12 || hour === 0) return exact(hour, minute);
  return minute <= 59 ? { minutes: (hour % 12) * 60 + minute, twelve: true } : undefined;
}

/** Puts a dial time into its half; a 24-hour time that contradicts it is no time. */
export function inHalf(time: Time, half: 'am' | 'pm'): Time | undefined {
  if (time.twelve || time.face === true || (time.uhr === true && time.minutes <= HALF + 59)) {
    return { minutes: (time.minutes % HALF) + (half === 'pm' ? HALF : 0), twelve: false };
  }
  return time.minutes >= HALF === (half === 'pm') ? time : undefined;
}

const hour: Rule<number> = map(numberToken, ({ n, digits }) =>
  digits.length <= 2 && n <= 24 ? n : undefined,
);
const minuteCount: Rule<number> = map(seq(count, maybe(minutesWord())), ([n]) =>
  n > 0 && n < 60 ? n : undefined,
);

function minutesWord(): Rule<true> {
  return (phrase, at) =>
    phrase.tokens[at]?.meanings.some((m) => m.is === 'unit' && m.unit === 'minute') === true
      ? [{ value: true, next: at + 1 }]
      : [];
}

/** "half eight" is half past in English, "halb acht" half an hour before in German. */
function before(h: number, minutes: number): Time | undefined {
  if (h < 1 || h > 12) return undefined;
  return { minutes: ((h % 12) * 60 - minutes + HALF) % HALF, twelve: true };
}

const one: Rule<true> = map(count, (n) => (n === 1 ? true : undefined));

const spoken: Rule<Time> = once(
  any(
    map(seq(steer('half'), maybe(steer('past')), hour), ([, past, h], context) => {
      const time = h <= 12 ? dial(h, 30) : undefined;
      return time !== undefined && past === undefined && context.locale === 'en-US'
        ? { ...time, unsure: true }
        : time;
    }),
    map(seq(steer('halb'), hour), ([, h]) => before(h, 30)),
    map(seq(maybe(one), steer('quarter', 'viertel'), steer('past', 'after'), hour), ([, , , h]) =>
      h <= 12 ? dial(h, 15) : undefined,
    ),
    map(
      seq(maybe(one), steer('quarter', 'viertel'), steer('to', 'till', 'of', 'before'), hour),
      ([, , , h]) => before(h, 15),
    ),
    map(seq(minuteCount, steer('past', 'after'), hour), ([m, , h]) => (h <= 12 ? dial(h, m) : undefined)),
    map(seq(minuteCount, steer('to', 'till', 'before'), hour), ([m, , h]) => before(h, m)),
    map(seq(minuteCount, steer('before'), steer('halb'), hour), ([m, , , h]) => before(h, 30 + m)),
    map(seq(minuteCount, steer('after'), steer('halb'), hour), ([m, , , h]) =>
      m < 30 ? before(h, 30 - m) : undefined,
    ),
    map(seq(steer('viertel'), hour), ([, h]) => unsure(before(h, 45))),
  ),
);

function unsure(time: Time | undefined): Time | undefined {
  return time === undefined ? undefined : { ...time, unsure: true };
}

const figures: Rule<Time> = once(
  any(
    map(clock, ({ hour: h, minute, padded }, context) => {
      const time = exact(h, minute);
      if (time !== undefined && isGerman(context)) return { ...time, uhr: true };
      if (time === undefined || padded || h >= 10 || h === 0) return time;
      return { ...time, face: true };
    }),
    map(seq(clock, steer('uhr')), ([{ hour: h, minute }]) => uhr(h, minute)),
    map(seq(pair, steer('uhr')), ([{ a, b, mark }]) => (mark === '.' ? uhr(a, b) : undefined)),
    map(seq(hour, steer('uhr')), ([h]) => uhr(h, 0)),
    map(seq(hour, steer('uhr'), numberToken), ([h, , { n, digits }]) =>
      digits.length === 2 ? uhr(h, n) : undefined,
    ),
    map(fourFigures(), (n) => {
      const time = exact(Math.floor(n / 100), n % 100);
      // "Friday 2027" is as likely a year.
      return n >= 2000 && n < 2060 ? unsure(time) : time;
    }),
    map(seq(hour, steer('oclock')), ([h]) => (h >= 1 && h <= 12 ? dial(h, 0) : undefined)),
  ),
);

/** "0830"; behind a day of a month such figures are the year. */
function fourFigures(): Rule<number> {
  return (phrase, at) => {
    const before = phrase.tokens.slice(0, at).findLast(({ text }) => text !== '-' && text !== '/');
    const follows = (before?.meanings ?? []).some(
      ({ is }) => is === 'month' || is === 'ordinal' || is === 'number' || is === 'name',
    );
    return numberToken(phrase, at).flatMap(({ value: { n, digits }, next }) =>
      digits.length !== 4 || (follows && n >= 1900 && n < 2200) ? [] : [{ value: n, next }],
    );
  };
}

/** Figures that are a time only because am, pm or "at" says so. */
export const pointed: Rule<Time> = map(pair, ({ a, b, mark, text }) =>
  mark === '.' && /\.\d\d$/.test(text) ? dotted(a, b, text) : undefined,
);

function dotted(h: number, minute: number, text: string): Time | undefined {
  const time = exact(h, minute);
  return time === undefined || h > 12 || text.startsWith('0') ? time : { ...time, face: true };
}

const plainHour: Rule<Time> = map(hour, (h) => dial(h, 0));

const withHalf: Rule<Time> = map(seq(any(spoken, figures, pointed, plainHour), meridiem), ([time, half]) =>
  inHalf(time, half),
);

const noon: Rule<Time> = any(
  map(seq(maybe(twelve()), steer('noon')), () => exact(12, 0)),
  map(seq(maybe(twelve()), steer('midnight')), () => ({ minutes: 0, twelve: false, unsure: true })),
);

function twelve(): Rule<true> {
  return map(hour, (h) => (h === 12 ? true : undefined));
}

function isGerman(context: DateContext): boolean {
  return context.locale?.startsWith('de') === true;
}

/** 12am is the start of a day to some and its end to others; it is asked back. */
const halved: Rule<Time> = map(withHalf, (time) => (time.minutes === 0 ? { ...time, unsure: true } : time));

const firm: Rule<Time> = once(any(halved, spoken, figures, noon));

/** A time that stands on its own: "3pm", "at 4", "half eight". A bare figure needs its "at". */
export const timeRule: Rule<Time> = once(
  any(
    map(seq(maybe(lead()), firm, maybe(steer('sharp'))), ([, time]) => time),
    map(seq(lead(), any(plainHour, pointed)), ([, time]) => time),
    map(seq(steer('about'), the, any(firm, plainHour)), ([, , time]) => unsure(time)),
  ),
);

/** A time whose part of the day follows, so a bare figure will do: "7 this morning", "8 in the evening". */
export const bareTimeRule: Rule<Time> = once(any(timeRule, plainHour, pointed));

function lead(): Rule<unknown> {
  return steer('at');
}

/** The half of the day that a named part settles; undefined where the hour does not go with the part. */
export function inPart(time: Time, part: PartOfDay): Time | undefined {
  const h = Math.floor((time.minutes % HALF) / 60);
  switch (part) {
    case 'morning':
      return h === 0 && time.twelve ? undefined : inHalf(time, 'am');
    case 'noonish':
      return h === 0 || h <= 2 ? inHalf(time, 'pm') : inHalf(time, 'am');
    case 'afternoon':
      return h <= 6 ? inHalf(time, 'pm') : undefined;
    case 'evening':
      return h >= 4 ? inHalf(time, 'pm') : undefined;
    case 'night':
      return h >= 6 ? inHalf(time, 'pm') : undefined;
  }
}
