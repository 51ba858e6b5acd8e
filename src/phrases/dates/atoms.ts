import type { Meaning, PartOfDay, Steer, Unit } from './meanings.ts';
import { any, map, maybe, once, type Rule, seq, token } from './rules.ts';

/** The smallest rules: one token of one kind. */
type Of<Kind extends Meaning['is']> = Extract<Meaning, { is: Kind }>;

function kind<Kind extends Meaning['is']>(is: Kind): Rule<Of<Kind>> {
  // Narrowing by a generic tag is beyond the checker; the comparison beside it is the proof.
  return token((meaning) => (meaning.is === is ? (meaning as Of<Kind>) : undefined));
}

export const numberToken = kind('number');
export const ymd = kind('ymd');
export const triple = kind('triple');
export const pair = kind('pair');
export const clock = kind('clock');
export const isoWeek = kind('isoweek');
export const ordinal: Rule<number> = map(kind('ordinal'), ({ n }) => n);
export const weekday: Rule<number> = map(kind('weekday'), ({ n }) => n);
export const month: Rule<number> = map(kind('month'), ({ n }) => n);
export const dayword: Rule<number> = map(kind('dayword'), ({ offset }) => offset);
export const part: Rule<PartOfDay> = map(kind('part'), (meaning) => meaning.part);
export const meridiem: Rule<'am' | 'pm'> = map(kind('meridiem'), ({ half }) => half);

export function steer(...words: readonly Steer[]): Rule<Steer> {
  return token((meaning) =>
    meaning.is === 'steer' && words.includes(meaning.word) ? meaning.word : undefined,
  );
}

/** A token of just this text, for words that mean something in one place only. */
export function wordOf(...texts: readonly string[]): Rule<true> {
  return (phrase, at) =>
    texts.includes(phrase.tokens[at]?.text ?? '') ? [{ value: true, next: at + 1 }] : [];
}

/** Several steering words in a row. */
export function steers(...words: readonly Steer[]): Rule<true> {
  return map(seq(...words.map((word) => steer(word))), () => true);
}

export function unitOf(...units: readonly Unit[]): Rule<Unit> {
  return token((meaning) =>
    meaning.is === 'unit' && units.includes(meaning.unit) ? meaning.unit : undefined,
  );
}

export const the = maybe(steer('the'));
export const of = maybe(any(steer('of'), steer('in'), steer('from')));
export const on = maybe(steer('on', 'for', 'at'));

const dayCount: Rule<'workday' | 'weekday'> = map(
  seq(any(steer('working', 'business')), unitOf('day')),
  () => 'workday',
);

/** Any unit; "working day" is one too. */
export const unit: Rule<Unit> = once(
  any<Unit>(
    token((meaning) => (meaning.is === 'unit' ? meaning.unit : undefined)),
    dayCount,
  ),
);
export const workday: Rule<Unit> = once(any<Unit>(unitOf('workday'), dayCount));

/** A count in figures or words; "twenty one" too. */
export const count: Rule<number> = once(
  any(
    map(numberToken, ({ n }) => n),
    map(seq(numberToken, numberToken), ([tens, ones]) =>
      tens.digits === '' &&
      ones.digits === '' &&
      tens.n >= 20 &&
      tens.n % 10 === 0 &&
      ones.n > 0 &&
      ones.n < 10
        ? tens.n + ones.n
        : undefined,
    ),
  ),
);
