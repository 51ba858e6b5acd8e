import type { Meaning } from './meanings.ts';
import { meaningsOf } from './spelling.ts';
import { fold, type WordBook } from './words.ts';

export type { Meaning } from './meanings.ts';

/** One piece of a phrase with all it can mean; unknown words have no meanings. */
export interface Token {
  readonly text: string;
  readonly meanings: readonly Meaning[];
}

/** Longest text that is looked at at all; nobody names a day in more. */
export const LONGEST_TEXT = 100;
export const MOST_TOKENS = 16;

/** Politeness and punctuation that change nothing. */
const FILLERS = new Set(['please', 'pls', 'plz', 'bitte', 'thanks', 'thx', 'danke']);

type Maker = (groups: readonly (string | undefined)[], book: WordBook) => readonly Token[];

/** Splits a phrase into tokens; null when it holds a character that no date has. */
export function tokensOf(text: string, book: WordBook): readonly Token[] | null {
  const source = tidy(text);
  const tokens: Token[] = [];
  let at = 0;
  while (at < source.length) {
    const found = firstMatch(source, at);
    if (found === undefined) return null;
    tokens.push(...found.make(found.groups, book));
    at = found.end;
  }
  return tokens;
}

function tidy(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[‐‑‒–—−]/g, '-')
    .replaceAll(/[‘’´`]/g, "'")
    .replaceAll(/(\d),\s*(\d{4})(?!\d)/g, '$1 $2')
    .replaceAll(/(?<!\p{L})'(?=\d)/gu, '')
    .replaceAll(/\s+/g, ' ')
    .replaceAll(/(\d\.) (?=\d{1,2}\.)/g, '$1')
    .replaceAll(/(\d\.\d{1,2}\.) (?=\d{4}(?!\d))/g, '$1')
    .trim()
    .replace(/[!.]+$/, (end) => (end.startsWith('.') ? '.' : ''));
}

interface Found {
  readonly groups: readonly (string | undefined)[];
  readonly end: number;
  readonly make: Maker;
}

function firstMatch(source: string, at: number): Found | undefined {
  for (const [pattern, make] of PATTERNS) {
    pattern.lastIndex = at;
    const match = pattern.exec(source);
    if (match !== null) return { groups: match, end: at + match[0].length, make };
  }
  return undefined;
}

const one = (text: string | undefined, ...meanings: readonly Meaning[]): readonly Token[] => [
  { text: text ?? '', meanings },
];

/** Tried in this order; the first that fits wins, so longer shapes of figures stand before their parts. */
const PATTERNS: readonly (readonly [RegExp, Maker])[] = [
  [/\d+(?:,\d+)+/y, ([text]) => one(text)],
  [/[ ,()]+/y, () => []],
  [
    /(\d{4})-(\d{1,2})-(\d{1,2})(?:t(\d{2}):(\d{2})(?::00)?)?(?![\d:])/y,
    ([text, y, m, d, hour, minute]) => [
      ...one(text, { is: 'ymd', year: Number(y), month: Number(m), day: Number(d) }),
      ...(hour === undefined ? [] : one(text, clock(hour, minute, true))),
    ],
  ],
  [
    /(\d{4})([./])(\d{1,2})\2(\d{1,2})(?!\d)/y,
    ([text, y, , m, d]) => one(text, { is: 'ymd', year: Number(y), month: Number(m), day: Number(d) }),
  ],
  [
    /(\d{4})(\d{2})(\d{2})(?!\d)/y,
    ([text, y, m, d]) => one(text, { is: 'ymd', year: Number(y), month: Number(m), day: Number(d) }),
  ],
  [
    /(\d{4})-?w(\d{1,2})(?:-?([1-7]))?(?![\p{L}\d])/uy,
    ([text, y, w, d]) =>
      one(text, {
        is: 'isoweek',
        year: Number(y),
        week: Number(w),
        weekday: d === undefined ? undefined : Number(d),
      }),
  ],
  [
    /w(\d{1,2})(?![\p{L}\d])/uy,
    ([text, w]) => one(text, { is: 'isoweek', year: undefined, week: Number(w), weekday: undefined }),
  ],
  [
    /(\d{1,2})([./-])(\d{1,2})\2(\d{4}|\d{2})(?![\d])/y,
    ([text, a, mark, b, y]) =>
      one(text, {
        is: 'triple',
        a: Number(a),
        b: Number(b),
        year: y?.length === 2 ? 2000 + Number(y) : Number(y),
        mark: mark ?? '',
      }),
  ],
  [/(\d{1,2}):(\d{2})(?::00)?(?![\d:])/y, ([text, hour, minute]) => one(text, clock(hour, minute))],
  [/(\d{1,2})h(\d{2})(?!\d)/y, ([text, hour, minute]) => one(text, clock(hour, minute, true))],
  [
    /(\d{1,2})\.(\d{1,2})(\.?)(?![\d])/y,
    ([text, a, b, final]) =>
      one(text, {
        is: 'pair',
        a: Number(a),
        b: Number(b),
        mark: final === '.' ? '..' : '.',
        text: text ?? '',
      }),
  ],
  [
    /(\d{1,2})\/(\d{1,2})(?![\d/])/y,
    ([text, a, b]) => one(text, { is: 'pair', a: Number(a), b: Number(b), mark: '/', text: text ?? '' }),
  ],
  [/(\d{1,2}) ?(?:st|nd|rd|th)(?![\p{L}\d])/uy, ([text, n]) => one(text, { is: 'ordinal', n: Number(n) })],
  [/(\d{1,2})\.(?!\d)/y, ([text, n]) => one(text, { is: 'ordinal', n: Number(n) })],
  [/2(?:day|moro|morrow|mrw)(?!\p{L})/uy, ([text], book) => words(text, book)],
  [/\d+/y, ([text]) => one(text, { is: 'number', n: Number(text), digits: text ?? '' })],
  [/([ap])\.? ?m\.?(?!\p{L})/uy, ([text, half], book) => meridiem(text, half, book)],
  [/w\/[ecb](?!\p{L})/uy, ([text], book) => words(text, book)],
  [/['\p{L}]*\p{L}['\p{L}]*(?:-['\p{L}]*\p{L}['\p{L}]*)*\.?/uy, ([text], book) => words(text, book)],
  [/[-/+]/y, ([text], book) => words(text, book)],
  [/&/y, () => one('&', { is: 'steer', word: 'and' })],
  [/@/y, () => one('@', { is: 'steer', word: 'at' })],
  [/~/y, () => one('~', { is: 'steer', word: 'about' })],
  [/:(?= )/y, () => []],
];

function clock(hour: string | undefined, minute: string | undefined, full = false): Meaning {
  return {
    is: 'clock',
    hour: Number(hour),
    minute: Number(minute),
    padded: full || hour?.startsWith('0') === true,
  };
}

/** "am" is half of a day after a figure, and German for "on the" elsewhere. */
function meridiem(text: string | undefined, half: string | undefined, book: WordBook): readonly Token[] {
  const known = book.meanings.get(`${half}m`) ?? [];
  return one(text, ...known);
}

/** A word, or words joined by hyphens: kept as one when known as one, else parted; between two days the dash stays. */
function words(text: string | undefined, book: WordBook): readonly Token[] {
  const plain = (text ?? '').replace(/\.$/, '');
  const joined = plain.length > 1 ? plain.replaceAll('-', '') : plain;
  if (FILLERS.has(joined)) return [];
  if (book.meanings.has(fold(joined)) || !plain.includes('-') || plain === '-') {
    return germanCompound(joined, book) ?? one(joined, ...meaningsOf(joined, book));
  }
  const parts = plain.split('-').map((part): Token => ({ text: part, meanings: meaningsOf(part, book) }));
  return parts.flatMap((part, index) => {
    const before = parts[index - 1];
    return before !== undefined && isDay(before) && isDay(part)
      ? [...one('-', { is: 'steer', word: 'dash' }), part]
      : [part];
  });
}

/** "Freitagabend" is Freitag and Abend. */
function germanCompound(word: string, book: WordBook): readonly Token[] | undefined {
  const [, day, part] =
    /^((?:mon|diens|donners|frei|sams|sonn)tag|mittwoch|sonnabend)(\p{L}{4,})$/u.exec(word) ?? [];
  const meanings = part === undefined ? [] : (book.meanings.get(fold(part)) ?? []);
  if (day === undefined || part === undefined || !meanings.some(({ is }) => is === 'part')) return undefined;
  return [
    { text: day, meanings: book.meanings.get(day) ?? [] },
    { text: part, meanings },
  ];
}

function isDay(token: Token): boolean {
  return token.meanings.some(({ is }) => is === 'weekday' || is === 'dayword' || is === 'month');
}
