import { todayOf } from './days.ts';
import { andThen, type DayFind, dayOf, doubt, type Find, optionsOf } from './find.ts';
import type { PartOfDay } from './meanings.ts';
import type { DateContext, DateOption } from './reading.ts';
import { inPart, type Time } from './times.ts';

/** Brings a day, a part of the day and a time together. */
export interface Said {
  /** Undefined when only a time was said. */
  readonly day?: Find;
  readonly part?: PartOfDay | undefined;
  readonly time?: Time | undefined;
}

const HALF = 720;
/** A bare hour is read only where it falls into a working day; outside it is asked back. */
const WORK = { from: 6 * 60, to: 19 * 60 };

export function combine({ day, part, time }: Said, context: DateContext): Find {
  if (day === undefined)
    return time === undefined
      ? { kind: 'ask', question: 'Which day?', options: [] }
      : timeOnly(time, context);
  if (time === undefined)
    return part === undefined ? day : andThen(day, (found) => partOf(found, part, context));
  const settled = part === undefined ? time : inPart(time, part);
  if (settled === undefined)
    return doubt(day, 'That time does not go with that part of the day. What time is meant?');
  if (day.kind === 'ask')
    return settled.twelve || settled.unsure === true ? day : withTime(day, settled.minutes);
  return andThen(day, (found) => timed(found, settled, part, context));
}

/** A part of today that is over, or still to come in a past field, is not what the field wants. */
function partOf(day: DayFind, part: PartOfDay, context: DateContext): Find {
  if (!day.date.equals(todayOf(context))) return day;
  const now = context.now.hour;
  const ends: Readonly<Record<PartOfDay, number>> = {
    morning: 12,
    noonish: 15,
    afternoon: 18,
    evening: 24,
    night: 24,
  };
  const starts: Readonly<Record<PartOfDay, number>> = {
    morning: 0,
    noonish: 11,
    afternoon: 12,
    evening: 17,
    night: 18,
  };
  if (context.direction === 'future' && now >= ends[part]) {
    return doubt(day, 'That part of today is over. Is today meant all the same?');
  }
  if (context.direction === 'past' && now < starts[part]) {
    return doubt(day, 'That part of today is still to come. Is today meant all the same?');
  }
  return day;
}

function timed(day: DayFind, time: Time, part: PartOfDay | undefined, context: DateContext): Find {
  const isToday = day.date.equals(todayOf(context));
  if (time.unsure === true) return doubt(at(day, time.minutes), 'What time is meant?');
  if (!time.twelve && time.face !== true) return at(day, time.minutes);
  if (isToday && part === undefined) return timeOnly(time, context);
  const first = likely(time.minutes);
  const other = (first + HALF) % (2 * HALF);
  return {
    kind: 'ask',
    question: 'Morning or afternoon?',
    options: [...optionsOf(at(day, first)), ...optionsOf(at(day, other))],
  };
}

/** Of the two times a dial shows, the one in working hours. */
function likely(minutes: number): number {
  const morning = minutes % HALF;
  return morning >= 7 * 60 ? morning : morning + HALF;
}

function at(day: DayFind, minutes: number): DayFind {
  return { ...day, time: clockTime(minutes) };
}

function clockTime(minutes: number): Temporal.PlainTime {
  return Temporal.PlainTime.from({ hour: Math.floor(minutes / 60), minute: minutes % 60 });
}

function withTime(day: Extract<Find, { kind: 'ask' }>, minutes: number): Find {
  const time = clockTime(minutes).toString({ smallestUnit: 'minute' });
  const options = day.options.map((option): DateOption => ({ day: option.day, time }));
  return { ...day, options };
}

/** A time without a day: today's, as long as it lies the right way; a bare hour is the next to come. */
function timeOnly(time: Time, context: DateContext): Find {
  const today = dayOf(todayOf(context));
  if (time.unsure === true) return doubt(at(today, time.minutes), 'What time is meant?');
  const now = context.now.hour * 60 + context.now.minute;
  const forward = context.direction !== 'past';
  const faces = time.twelve ? [time.minutes, time.minutes + HALF] : [time.minutes];
  const fitting = faces.filter((minutes) => (forward ? minutes >= now : minutes <= now));
  const away = dayOf(todayOf(context).add({ days: forward ? 1 : -1 }));
  const question = forward
    ? 'That time has gone today. Which day is meant?'
    : 'That time is still to come today. Which day is meant?';
  const [first] = fitting;
  if (first === undefined) {
    return {
      kind: 'ask',
      question,
      options: [...faces.map((minutes) => at(away, minutes)), at(today, faces[0] ?? 0)].flatMap(optionsOf),
    };
  }
  const certain = time.twelve
    ? first >= WORK.from && first <= WORK.to && (forward || fitting.length === 1)
    : true;
  if (certain && context.direction !== 'any') return at(today, first);
  return {
    kind: 'ask',
    question: 'What time is meant?',
    options: fitting.flatMap((minutes) => optionsOf(at(today, minutes))),
  };
}
