import { FEAST_WORDS } from './feasts.ts';
import type { Find } from './find.ts';
import { doubt, merge, optionsOf } from './find.ts';
import { settle, TIERS } from './grammar.ts';
import { judge } from './judge.ts';
import type { DateContext, DateReading } from './reading.ts';
import { type Meter, type Phrase, TooMuchWork } from './rules.ts';
import { LONGEST_TEXT, type Meaning, MOST_TOKENS, type Token, tokensOf } from './tokens.ts';
import { type WordBook, wordBook } from './words.ts';

/** Enough for any honest phrase many times over; hostile text stops here. */
export const MOST_STEPS = 60_000;

const EXAMPLES = 'Type a day such as "Fri 4 Dec", "tomorrow", "in 3 working days" or "2026-12-04".';

const books = { german: wordBook(FEAST_WORDS, true), other: wordBook(FEAST_WORDS, false) };

/**
 * Reads a day, perhaps with a time, from what a person typed: English or German words, or figures.
 *
 * One certain meaning is read; several, or one that has to be said back first, are asked; what names no day is refused.
 * The whole text must be used. Pure: the clock, the zone and the holidays come in with the context.
 */
export function readDate(text: string, context: DateContext): DateReading {
  return readDateMetered(text, context, { steps: 0, limit: MOST_STEPS });
}

/** As `readDate`, counting its work on a meter that the caller can look at. */
export function readDateMetered(text: string, context: DateContext, meter: Meter): DateReading {
  const problem = plainProblem(text);
  if (problem !== undefined) return { verdict: 'refuse', problem };
  const tokens = tokensOf(text, bookFor(context.locale));
  if (tokens === null) return refuse('That holds signs that no date has.');
  if (tokens.length === 0 || tokens.length > MOST_TOKENS) return refuse('That does not name a day.');
  if (tokens.some(isNoTime)) return refuse('There is no such time of day.');
  try {
    return read({ tokens, context, meter, known: new Map() });
  } catch (error) {
    if (error instanceof TooMuchWork) return refuse('That is too tangled to read.');
    throw error;
  }
}

function plainProblem(text: string): string | undefined {
  if (text.length > LONGEST_TEXT) return `That is too long for a date. ${EXAMPLES}`;
  return text.trim() === '' ? `Nothing was typed. ${EXAMPLES}` : undefined;
}

function refuse(what: string): DateReading {
  return { verdict: 'refuse', problem: `${what} ${EXAMPLES}` };
}

function bookFor(locale: string | null): WordBook {
  return locale?.startsWith('de') === true ? books.german : books.other;
}

function read(phrase: Phrase): DateReading {
  const whole = complete(phrase);
  if (whole.length > 0) return judge(settle(whole), phrase.context);
  return partly(phrase) ?? refuse('That does not name a day.');
}

function complete(phrase: Phrase): readonly Find[] {
  for (const tier of TIERS) {
    const whole = tier(phrase, 0).filter(({ next }) => next === phrase.tokens.length);
    if (whole.length > 0) return whole.map(({ value }) => value);
  }
  return [];
}

/** When a piece of a phrase names a day in words and the rest is not understood, the day is offered, never taken. */
function partly(phrase: Phrase): DateReading | undefined {
  const { tokens } = phrase;
  const pieces = tokens.flatMap((_token, start) =>
    TIERS.flatMap((tier) => tier(phrase, start)).map(({ value, next }) => ({ value, start, next })),
  );
  const offered = pieces
    .filter(({ start, next }) => tokens.slice(start, next).some(isDayWord))
    .map((piece) => ({ ...piece, length: piece.next - piece.start, options: optionsOf(piece.value) }))
    .filter(({ options }) => options.length > 0);
  const longest = Math.max(...offered.map(({ length }) => length));
  const best = offered.filter(({ length }) => length === longest);
  const [first] = best;
  if (first === undefined) return undefined;
  const known = tokens.slice(first.start, first.next).map(({ text }) => text);
  const question = `Only "${known.join(' ')}" was understood. Is this day meant?`;
  return judge(
    merge(
      best.map(({ value }) => doubt(value, question)),
      question,
    ),
    phrase.context,
  );
}

function isNoTime({ meanings }: Token): boolean {
  return meanings.some((meaning) => meaning.is === 'clock' && (meaning.hour > 24 || meaning.minute > 59));
}

function isLongUnit(meaning: Meaning): boolean {
  return (
    meaning.is === 'unit' &&
    meaning.unit !== 'minute' &&
    meaning.unit !== 'hour' &&
    meaning.unit !== 'quarter'
  );
}

function isDayWord(token: Token): boolean {
  if (token.text.length < 3) return false;
  return token.meanings.some(
    (m) => m.is === 'weekday' || m.is === 'dayword' || m.is === 'month' || m.is === 'name' || isLongUnit(m),
  );
}
