import { UserError } from '../../core/user-error.ts';
import { readTimeAtHand } from './read-minutes.ts';

const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
const NAMES = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

/** Everything people call several days at once. */
const GROUPS: readonly (readonly [RegExp, readonly number[]])[] = [
  [/^(?:every ?day|daily|all days|every evening|evenings)$/, [0, 1, 2, 3, 4, 5, 6]],
  [/^(?:weekdays|working days|mon ?(?:-|–|to) ?fri(?:day)?s?)$/, [0, 1, 2, 3, 4]],
  [/^(?:weekends?|sat(?:urday)? ?(?:and|\+|&|-|–) ?sun(?:day)?)$/, [5, 6]],
];

/**
 * Reads when a crew works: "Tue Thu 2.5 h, Sat 6 h", "weekdays 19:00-21:30; Sat 10-16", as minutes by weekday, Monday first.
 * Days that are not named are free.
 *
 * @throws UserError 'bad-input' naming the piece that is none, and how to type it.
 */
export function readEvenings(typed: string, field: string): readonly number[] {
  const minutes = DAYS.map(() => 0);
  for (const piece of piecesOf(typed)) {
    const read = /^(.*?[a-z])\s*[:=]?\s*((?:\d|none|off|free|half|an? hour).*)$/.exec(piece);
    const days = daysIn(read?.[1] ?? '');
    if (read === null || days.length === 0) throw unreadable(piece, field);
    const time = timeIn(read[2] ?? '', field, piece);
    for (const day of days) minutes[day] = time;
  }
  if (minutes.every((each) => each === 0)) {
    throw new UserError(
      'bad-input',
      `${field}: somebody has to work at some time. Nothing was changed. Type Tue Thu 2.5 h, Sat 6 h.`,
    );
  }
  return minutes;
}

/** Commas part pieces, but "Tue, Thu 2 h" is one: a piece ends with its time. */
function piecesOf(typed: string): readonly string[] {
  const pieces: string[] = [];
  let open = '';
  for (const part of typed.toLowerCase().split(/[,;\n]/)) {
    open = `${open} ${part}`.trim();
    if (/\d|none|off|free|half|an? hour/.test(part)) {
      pieces.push(open);
      open = '';
    }
  }
  return open === '' ? pieces : [...pieces, open];
}

function daysIn(words: string): readonly number[] {
  const trimmed = words.trim().replace(/\s+(?:from|for|each|at)$/, '');
  const group = GROUPS.find(([pattern]) => pattern.test(trimmed));
  if (group !== undefined) return group[1];
  const span = /^([a-z]{3})[a-z]*\s*(?:-|–|to)\s*([a-z]{3})[a-z]*$/.exec(trimmed);
  if (span !== null) {
    const [from, to] = [dayOf(span[1] ?? ''), dayOf(span[2] ?? '')];
    if (from < 0 || to < 0) return [];
    return Array.from({ length: ((to - from + 7) % 7) + 1 }, (_, index) => (from + index) % 7);
  }
  const days = trimmed
    .split(/\s+|\+|&|\/|\band\b/)
    .filter((word) => word !== '' && word !== 'and')
    .map(dayOf);
  return days.includes(-1) ? [] : days;
}

const dayOf = (word: string): number =>
  /^(?:mon|tue|wed|thu|fri|sat|sun)(?:s|rs|rsday|day|sday|nesday|urday)?s?$/.test(word)
    ? DAYS.findIndex((day) => word.startsWith(day))
    : -1;

/** A span of the clock, a time, or none. */
function timeIn(words: string, field: string, piece: string): number {
  const text = words.trim();
  if (/^(?:none|off|free|0(?:\s*h|\s*min)?)$/.test(text)) return 0;
  const clock =
    /^(\d{1,2})(?:[:.](\d{2}))?\s*(?:h|uhr)?\s*(?:-|–|to)\s*(\d{1,2})(?:[:.](\d{2}))?\s*(?:h|uhr)?$/.exec(
      text,
    );
  const minutes =
    clock === null
      ? readTimeAtHand(text, field)
      : (Number(clock[3]) - Number(clock[1])) * 60 + Number(clock[4] ?? 0) - Number(clock[2] ?? 0);
  if (minutes > 0 && minutes <= 24 * 60) return minutes;
  throw unreadable(piece, field);
}

const unreadable = (piece: string, field: string): UserError =>
  new UserError(
    'bad-input',
    `${field}: “${piece}” is no day with a time. Nothing was changed. Type Tue Thu 2.5 h, Sat 6 h, or weekdays 19:00-21:30.`,
  );

/** "Tue 2.5 h, Thu 2.5 h, Sat 6 h". */
export function sayEvenings(minutes: readonly number[]): string {
  return minutes
    .map((each, day) =>
      each === 0 ? '' : `${NAMES[day]} ${each % 30 === 0 ? `${each / 60} h` : `${each} min`}`,
    )
    .filter(Boolean)
    .join(', ');
}
