import { coming, gone } from './days.ts';
import type { Season } from './find.ts';

/** A day known by a name, found for any year. */
export interface Feast {
  readonly names: readonly string[];
  readonly on: (year: number) => Temporal.PlainDate;
  /** The name also stands for the days around it, so "by" and "at" it are questions. */
  readonly season?: Season;
  /** Kept in some countries on this day and in others on another or not at all: the holiday list must know it. */
  readonly local?: boolean;
}

const fixed =
  (month: number, day: number) =>
  (year: number): Temporal.PlainDate =>
    Temporal.PlainDate.from({ year, month, day });
const fromEaster =
  (days: number) =>
  (year: number): Temporal.PlainDate =>
    easterSunday(year).add({ days });
const nth =
  (n: number, weekday: number, month: number) =>
  (year: number): Temporal.PlainDate =>
    coming(Temporal.PlainDate.from({ year, month, day: 1 }).subtract({ days: 1 }), weekday).add({
      weeks: n - 1,
    });
const lastMonday =
  (month: number) =>
  (year: number): Temporal.PlainDate =>
    gone(Temporal.PlainDate.from({ year, month, day: 1 }).add({ months: 1 }), 1);

/** The nth of the four Sundays before Christmas Day. */
const advent =
  (n: number) =>
  (year: number): Temporal.PlainDate =>
    gone(Temporal.PlainDate.from({ year, month: 12, day: 25 }), 7).subtract({ weeks: 4 - n });

/**
 * Easter Sunday of the Gregorian calendar.
 *
 * Source: the anonymous Gregorian rule as in J. Meeus, Astronomical Algorithms, 2nd ed., chapter 9 (from memory;
 * checked in tests against the published holiday tables). Valid from 1583.
 */
export function easterSunday(year: number): Temporal.PlainDate {
  const a = year % 19;
  const b = Math.floor(year / 100);
  const c = year % 100;
  const d = Math.floor(b / 4);
  const e = b % 4;
  const f = Math.floor((b + 8) / 25);
  const g = Math.floor((b - f + 1) / 3);
  const h = (19 * a + b - d - g + 15) % 30;
  const i = Math.floor(c / 4);
  const k = c % 4;
  const l = (32 + 2 * e + 2 * i - h - k) % 7;
  const m = Math.floor((a + 11 * h + 22 * l) / 451);
  const n = h + l - 7 * m + 114;
  return Temporal.PlainDate.from({ year, month: Math.floor(n / 31), day: (n % 31) + 1 });
}

/**
 * Names as they are looked up: folded, apostrophes gone.
 *
 * Sources: 5 U.S.C. 6103(a) for the federal holidays of the United States; Banking and Financial Dealings Act 1971,
 * schedule 1, for the bank holidays of the United Kingdom; days counted from Easter and fixed days: common practice.
 */
export const FEASTS: readonly Feast[] = [
  {
    names: [
      'christmas day',
      'xmas day',
      'first christmas day',
      'weihnachtstag',
      'ersten weihnachtstag',
      'erster weihnachtstag',
      '1 weihnachtstag',
      'weihnachtsfeiertag',
      'erster weihnachtsfeiertag',
      '1 weihnachtsfeiertag',
    ],
    on: fixed(12, 25),
  },
  { names: ['christmas', 'xmas', 'chrimbo'], on: fixed(12, 25), season: 'christmas' },
  { names: ['weihnachten'], on: fixed(12, 25), season: 'several days' },
  {
    names: ['christmas eve', 'xmas eve', 'heiligabend', 'heilig abend', 'heiliger abend', 'weihnachtsabend'],
    on: fixed(12, 24),
  },
  {
    names: [
      'boxing day',
      'zweiter weihnachtstag',
      'zweiten weihnachtstag',
      '2 weihnachtstag',
      'zweiter weihnachtsfeiertag',
      '2 weihnachtsfeiertag',
    ],
    on: fixed(12, 26),
  },
  {
    names: ['new years eve', 'new year eve', 'silvester', 'sylvester', 'nye', 'hogmanay'],
    on: fixed(12, 31),
  },
  { names: ['new years day', 'new year day', 'neujahr', 'neujahrstag'], on: fixed(1, 1) },
  { names: ['new year', 'new years'], on: fixed(1, 1), season: 'several days' },
  {
    names: ['epiphany', 'twelfth night', 'dreikonig', 'dreikonigstag', 'heilige drei konige'],
    on: fixed(1, 6),
  },
  { names: ['valentines day', 'valentines', 'valentinstag'], on: fixed(2, 14) },
  { names: ['erster advent', '1 advent', 'first advent'], on: advent(1) },
  { names: ['zweiter advent', '2 advent'], on: advent(2) },
  { names: ['dritter advent', '3 advent'], on: advent(3) },
  { names: ['vierter advent', '4 advent'], on: advent(4) },
  { names: ['nikolaus', 'nikolaustag'], on: fixed(12, 6) },
  { names: ['halloween', 'reformationstag'], on: fixed(10, 31) },
  { names: ['allerheiligen', 'all saints day'], on: fixed(11, 1) },
  { names: ['bonfire night', 'guy fawkes night', 'guy fawkes'], on: fixed(11, 5) },
  { names: ['st patricks day'], on: fixed(3, 17) },
  { names: ['tag der deutschen einheit', 'deutsche einheit'], on: fixed(10, 3), local: true },
  { names: ['tag der arbeit', 'maifeiertag'], on: fixed(5, 1), local: true },
  { names: ['shrove tuesday', 'pancake day', 'faschingsdienstag'], on: fromEaster(-47) },
  { names: ['rosenmontag'], on: fromEaster(-48) },
  { names: ['ash wednesday', 'aschermittwoch'], on: fromEaster(-46) },
  { names: ['palm sunday', 'palmsonntag'], on: fromEaster(-7) },
  { names: ['maundy thursday', 'grundonnerstag'], on: fromEaster(-3) },
  { names: ['good friday', 'karfreitag'], on: fromEaster(-2) },
  { names: ['easter saturday', 'karsamstag', 'ostersamstag', 'holy saturday'], on: fromEaster(-1) },
  { names: ['easter sunday', 'easter day', 'ostersonntag'], on: fromEaster(0) },
  { names: ['easter', 'ostern'], on: fromEaster(0), season: 'several days' },
  { names: ['easter monday', 'ostermontag'], on: fromEaster(1) },
  { names: ['vatertag'], on: fromEaster(39), local: true },
  { names: ['ascension day', 'ascension', 'himmelfahrt', 'christi himmelfahrt'], on: fromEaster(39) },
  { names: ['whit sunday', 'pentecost', 'pfingstsonntag'], on: fromEaster(49) },
  { names: ['whitsun', 'whit', 'pfingsten'], on: fromEaster(49), season: 'several days' },
  { names: ['whit monday', 'pfingstmontag'], on: fromEaster(50) },
  { names: ['corpus christi', 'fronleichnam'], on: fromEaster(60) },
  { names: ['early may bank holiday', 'may day bank holiday'], on: nth(1, 1, 5), local: true },
  {
    names: ['spring bank holiday', 'late may bank holiday', 'whitsun bank holiday', 'whit bank holiday'],
    on: lastMonday(5),
    local: true,
  },
  {
    names: ['summer bank holiday', 'august bank holiday', 'late august bank holiday'],
    on: lastMonday(8),
    local: true,
  },
  { names: ['summer bank holiday', 'august bank holiday'], on: nth(1, 1, 8), local: true },
  { names: ['may bank holiday', 'may day'], on: nth(1, 1, 5), season: 'several days', local: true },
  { names: ['may bank holiday'], on: lastMonday(5), season: 'several days', local: true },
  {
    names: ['martin luther king day', 'martin luther king jr day', 'mlk day', 'mlk'],
    on: nth(3, 1, 1),
    local: true,
  },
  { names: ['presidents day', 'washingtons birthday'], on: nth(3, 1, 2), local: true },
  { names: ['memorial day'], on: lastMonday(5), local: true },
  { names: ['juneteenth'], on: fixed(6, 19), local: true },
  { names: ['independence day', 'fourth of july'], on: fixed(7, 4), local: true },
  { names: ['labor day', 'labour day'], on: nth(1, 1, 9), local: true },
  { names: ['labour day', 'may day'], on: fixed(5, 1), local: true },
  { names: ['columbus day', 'indigenous peoples day'], on: nth(2, 1, 10), local: true },
  { names: ['veterans day'], on: fixed(11, 11), local: true },
  { names: ['thanksgiving', 'thanksgiving day'], on: nth(4, 4, 11), local: true },
];

/** Every word that occurs in a name, for the word book. */
export const FEAST_WORDS: readonly string[] = [
  ...new Set(FEASTS.flatMap(({ names }) => names.flatMap((name) => name.split(' ')))),
].filter((word) => !/^\d$/.test(word));

export const LONGEST_NAME = Math.max(
  ...FEASTS.flatMap(({ names }) => names.map((name) => name.split(' ').length)),
);

/** The feasts of a name. */
export function feastsNamed(name: string): readonly Feast[] {
  return FEASTS.filter(({ names }) => names.includes(name));
}
