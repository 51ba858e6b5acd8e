import { month, numberToken, ordinal, pair, steer, the, triple, ymd } from './atoms.ts';
import { calendarDate, todayOf } from './days.ts';
import { askOf, dayOf, doubt, type Find, merge, noDay } from './find.ts';
import { nearest, year } from './months.ts';
import type { DateContext } from './reading.ts';
import { any, map, maybe, once, type Rule, seq } from './rules.ts';

/** Days named by figures: ISO 8601, day and month, day of the month, and slashed or dotted figures by locale. */
const dayNumber: Rule<number> = any(
  ordinal,
  map(numberToken, ({ n, digits }) => (digits.length === 1 || digits.length === 2 ? n : undefined)),
);
const mark = maybe(steer('dash', 'slash'));
const shortYear: Rule<number> = map(numberToken, ({ n, digits }) =>
  digits.length === 2 && n >= 20 ? 2000 + n : undefined,
);
const anyYear = any(year, shortYear);

const MONTH_NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** A day and a month, with the year said or sought. */
export function dayAndMonth(
  day: number,
  monthOf: number,
  yearOf: number | undefined,
  context: DateContext,
): Find {
  const today = todayOf(context);
  if (calendarDate(2000, monthOf, day) === undefined) {
    const name = MONTH_NAMES[monthOf - 1];
    return noDay(
      name === undefined
        ? `There is no month ${monthOf}. Type a date such as 4 Dec.`
        : `${name} has no day ${day}. Type another day.`,
    );
  }
  if (yearOf !== undefined) {
    const date = calendarDate(yearOf, monthOf, day);
    return date === undefined
      ? noDay(`${yearOf} has no such day. Type another date.`)
      : dayOf(date, { yearSaid: true });
  }
  // Eight years hold a 29 February whatever year it is.
  const years = Array.from({ length: 17 }, (_, index) => today.year - 8 + index);
  return nearest(
    years.flatMap((at) => calendarDate(at, monthOf, day) ?? []),
    context,
  );
}

const namedMonthDate: Rule<Find> = any(
  map(
    seq(the, dayNumber, maybe(steer('of', 'dash', 'slash')), month, mark, maybe(anyYear)),
    ([, d, , m, , y], context) => dayAndMonth(d, m, y, context),
  ),
  map(seq(month, the, dayNumber, maybe(year)), ([m, , d, y], context) => dayAndMonth(d, m, y, context)),
);

/** "the 15th": the next one; in a past field the latest; today's own number is a question. */
function dayOfMonth(day: number, context: DateContext): Find {
  const today = todayOf(context);
  if (day < 1 || day > 31) return noDay(`No month has a day ${day}. Type a day from 1 to 31.`);
  const start = today.with({ day: 1 });
  const days = [-2, -1, 0, 1, 2].flatMap((shift) => {
    const first = start.add({ months: shift });
    return calendarDate(first.year, first.month, day) ?? [];
  });
  const ahead = days.filter((date) => Temporal.PlainDate.compare(date, today) > 0);
  const behind = days.filter((date) => Temporal.PlainDate.compare(date, today) < 0).reverse();
  const away = context.direction === 'past' ? behind[0] : ahead[0];
  if (away === undefined) return noDay(`There is no day ${day} near. Type the month too.`);
  if (day === today.day) return askOf('Today, or a month away?', today, away);
  if (context.direction === 'any')
    return askOf('The next one, or the last one?', away, ...behind.slice(0, 1));
  const months = Math.abs((away.year - today.year) * 12 + away.month - today.month);
  return months > 1 ? askOf('Which month is meant?', away) : dayOf(away);
}

const ordinalDate: Rule<Find> = map(seq(the, ordinal), ([, n], context) => dayOfMonth(n, context));

const isoDate: Rule<Find> = map(ymd, ({ year: y, month: m, day }) => {
  const date = calendarDate(y, m, day);
  if (date === undefined) return noDay(`There is no day ${y}-${m}-${day}. Type a date such as 2026-12-04.`);
  return dayOf(date, { yearSaid: true });
});

type Order = 'day-first' | 'month-first' | 'unknown';

/** Which way round a locale writes figures parted by `mark`. Where it is not settled, both are tried. */
function orderOf(mark: string, locale: string | null): Order {
  const german = locale?.startsWith('de') === true;
  if (mark.startsWith('.')) return german || isDayFirst(locale) ? 'day-first' : 'unknown';
  if (locale === 'en-US') return 'month-first';
  return isDayFirst(locale) ? 'day-first' : 'unknown';
}

function isDayFirst(locale: string | null): boolean {
  return locale !== null && /^en-(?:GB|IE|AU|NZ)$/.test(locale);
}

/** Figures in one order or the other. A locale's own order that gives no day makes the other a question only. */
function figures(a: number, b: number, yearOf: number | undefined, order: Order, context: DateContext): Find {
  const dayFirst = dayAndMonth(a, b, yearOf, context);
  const monthFirst = dayAndMonth(b, a, yearOf, context);
  const which = 'Which is the day, and which is the month?';
  if (order === 'unknown') return merge([dayFirst, monthFirst], which);
  const [own, other] = order === 'day-first' ? [dayFirst, monthFirst] : [monthFirst, dayFirst];
  if (own.kind !== 'no') return own;
  return other.kind === 'no' ? own : merge([other, { kind: 'ask', question: which, options: [] }], which);
}

const figureDate: Rule<Find> = any(
  map(triple, ({ a, b, year: y, mark: at }, context) =>
    figures(a, b, y, orderOf(at, context.locale), context),
  ),
  map(pair, ({ a, b, mark: at }, context) => {
    const german = context.locale?.startsWith('de') === true;
    const find = figures(a, b, undefined, orderOf(at, context.locale), context);
    if (at === '.' && find.kind === 'no' && a < 24 && b < 60) return undefined;
    // Slashes are not German; whatever they mean has to be said back.
    if (at === '/' && german) return doubt(find, 'Is that a date? If so, which?');
    // A point is German for a date, and in English as likely a time of day.
    return at === '/' || german || find.kind !== 'day'
      ? find
      : askOf('Is that a date? If so, which?', find.date);
  }),
);

/** Everything named by figures. */
export const dateRules: Rule<Find> = once(any(namedMonthDate, isoDate, figureDate));
/** A day of the month alone, which also serves to check a weekday. */
export const ordinalRules: Rule<Find> = once(ordinalDate);
