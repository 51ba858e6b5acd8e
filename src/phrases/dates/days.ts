import { askOf, dayOf, type Find } from './find.ts';
import type { DateContext } from './reading.ts';

/** Day arithmetic on the ISO calendar: weeks run from Monday to Sunday, weekday 1 is Monday (ISO 8601). */
type PlainDate = Temporal.PlainDate;

export function todayOf(context: DateContext): PlainDate {
  return context.now.toPlainDate();
}

/** The first such weekday after `from`. */
export function coming(from: PlainDate, weekday: number): PlainDate {
  return from.add({ days: ((weekday - from.dayOfWeek + 6) % 7) + 1 });
}

/** The last such weekday before `from`. */
export function gone(from: PlainDate, weekday: number): PlainDate {
  return from.subtract({ days: ((from.dayOfWeek - weekday + 6) % 7) + 1 });
}

export function mondayOf(date: PlainDate): PlainDate {
  return date.subtract({ days: date.dayOfWeek - 1 });
}

/** Whole weeks from the week of `from` to the week of `to`. */
export function weeksApart(from: PlainDate, to: PlainDate): number {
  return mondayOf(from).until(mondayOf(to), { largestUnit: 'days' }).days / 7;
}

export function lastOfMonth(date: PlainDate): PlainDate {
  return date.with({ day: date.daysInMonth });
}

/** The date, or undefined where the calendar has none (31 November, 29 February 2027). */
export function calendarDate(year: number, month: number, day: number): PlainDate | undefined {
  if (month < 1 || month > 12 || day < 1 || day > 31 || year < 1 || year > 9999) return undefined;
  const first = Temporal.PlainDate.from({ year, month, day: 1 });
  return day > first.daysInMonth ? undefined : first.with({ day });
}

/** Monday of an ISO 8601 week; undefined where the year has no such week. */
export function mondayOfWeek(year: number, week: number): PlainDate | undefined {
  if (week < 1 || week > 53) return undefined;
  const fourth = Temporal.PlainDate.from({ year, month: 1, day: 4 });
  const monday = mondayOf(fourth).add({ weeks: week - 1 });
  return monday.add({ days: 3 }).year === year ? monday : undefined;
}

/** A day that stays put, or is held at the end of a shorter month. */
export function addMonths(date: PlainDate, months: number): PlainDate {
  return date.add({ months }, { overflow: 'constrain' });
}

/**
 * A weekday without more: the coming one, in a past field the latest one. On the day itself it may be today or a week
 * away, and where no direction is known either side is as likely.
 */
export function bareWeekday(weekday: number, context: DateContext): Find {
  const today = todayOf(context);
  const ahead = coming(today, weekday);
  const behind = gone(today, weekday);
  const away = context.direction === 'past' ? behind : ahead;
  if (today.dayOfWeek === weekday) return askOf('Today, or a week away?', today, away);
  if (context.direction === 'any') return askOf('The coming one, or the last one?', ahead, behind);
  return dayOf(away);
}

/** "next Friday": both customs agree only when the coming one lies in next week, or when today is that weekday. */
export function nextWeekday(weekday: number, context: DateContext): Find {
  const today = todayOf(context);
  const ahead = coming(today, weekday);
  if (today.dayOfWeek === weekday || weeksApart(today, ahead) === 1) return dayOf(ahead);
  return askOf('The coming one, or the one of next week?', ahead, ahead.add({ weeks: 1 }));
}

/** "last Friday", the mirror of "next". */
export function lastWeekday(weekday: number, context: DateContext): Find {
  const today = todayOf(context);
  const behind = gone(today, weekday);
  if (today.dayOfWeek === weekday || weeksApart(today, behind) === -1) return dayOf(behind);
  return askOf('The latest one, or the one of last week?', behind, behind.subtract({ weeks: 1 }));
}

/** "this Friday": the one of this week, unless that lies on the wrong side of today. */
export function thisWeekday(weekday: number, context: DateContext): Find {
  const today = todayOf(context);
  const inWeek = mondayOf(today).add({ days: weekday - 1 });
  const side = Temporal.PlainDate.compare(inWeek, today);
  const away = context.direction === 'past' ? gone(today, weekday) : coming(today, weekday);
  if (side === 0) return askOf('Today, or a week away?', today, away);
  const wrong = context.direction === 'past' ? side > 0 : context.direction === 'future' && side < 0;
  return wrong ? askOf('Which one is meant?', away, inWeek) : dayOf(inWeek);
}

/** "the coming Friday", also from the weekend before it. */
export function comingWeekday(weekday: number, context: DateContext): Find {
  const today = todayOf(context);
  const ahead = coming(today, weekday);
  return today.dayOfWeek === weekday ? askOf('Today, or a week away?', ahead, today) : dayOf(ahead);
}

/** "Friday week": counted from the coming Friday; on a Friday it may be counted from today. */
export function weekdayPlus(weekday: number, weeks: number, context: DateContext): Find {
  const today = todayOf(context);
  const ahead = coming(today, weekday).add({ weeks });
  if (today.dayOfWeek !== weekday) return dayOf(ahead);
  return askOf('Counted from today, or from the coming one?', today.add({ weeks }), ahead);
}
