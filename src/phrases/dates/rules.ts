import type { DateContext } from './reading.ts';
import type { Meaning, Token } from './tokens.ts';

/** Counts the work done on one phrase, so that hostile text costs a bounded amount of it. */
export interface Meter {
  steps: number;
  readonly limit: number;
}

/** Thrown when a phrase costs more work than any honest one does. */
export class TooMuchWork extends Error {
  override readonly name = 'TooMuchWork';
}

export interface Phrase {
  readonly tokens: readonly Token[];
  readonly context: DateContext;
  readonly meter: Meter;
  /** What shared rules gave at each token, so that no way to a place is walked twice. */
  readonly known: Map<Rule<unknown>, Map<number, readonly Match<unknown>[]>>;
}

export interface Match<T> {
  readonly value: T;
  readonly next: number;
}

/** A rule tries itself at a token and gives every way in which it fits: none, one, or several that end elsewhere. */
export type Rule<T> = (phrase: Phrase, at: number) => readonly Match<T>[];

type Values<Rules extends readonly Rule<unknown>[]> = {
  -readonly [K in keyof Rules]: Rules[K] extends Rule<infer V> ? V : never;
};

/** One token with a meaning that `pick` accepts. */
export function token<T>(pick: (meaning: Meaning) => T | undefined): Rule<T> {
  return (phrase, at) => {
    work(phrase);
    const matches: Match<T>[] = [];
    for (const meaning of phrase.tokens[at]?.meanings ?? []) {
      const value = pick(meaning);
      if (value !== undefined) matches.push({ value, next: at + 1 });
    }
    return matches;
  };
}

function work({ meter }: Phrase): void {
  meter.steps++;
  if (meter.steps > meter.limit) throw new TooMuchWork();
}

/** One rule after the other. */
export function seq<const Rules extends readonly Rule<unknown>[]>(...rules: Rules): Rule<Values<Rules>> {
  return (phrase, at) => {
    let partial: Match<unknown[]>[] = [{ value: [], next: at }];
    for (const rule of rules) {
      partial = partial.flatMap((before) =>
        rule(phrase, before.next).map(({ value, next }) => {
          work(phrase);
          return { value: [...before.value, value], next };
        }),
      );
    }
    // The list holds one value of each rule, in their order, which is what Values spells out.
    return partial as unknown as readonly Match<Values<Rules>>[];
  };
}

/** Any of the rules. */
export function any<T>(...rules: readonly Rule<T>[]): Rule<T> {
  return (phrase, at) => rules.flatMap((rule) => rule(phrase, at));
}

/** With it, or without it. */
export function maybe<T>(rule: Rule<T>): Rule<T | undefined> {
  return (phrase, at) => [...rule(phrase, at), { value: undefined, next: at }];
}

/** Makes something of what a rule matched; undefined takes the match back. */
export function map<T, U>(rule: Rule<T>, make: (value: T, context: DateContext) => U | undefined): Rule<U> {
  return (phrase, at) =>
    rule(phrase, at).flatMap(({ value, next }) => {
      const made = make(value, phrase.context);
      return made === undefined ? [] : [{ value: made, next }];
    });
}

/** Remembers what a rule gives at each token of a phrase: rules that many others try are worked out once. */
export function once<T>(rule: Rule<T>): Rule<T> {
  return (phrase, at) => {
    const places = phrase.known.get(rule) ?? new Map<number, readonly Match<unknown>[]>();
    phrase.known.set(rule, places);
    // Only this rule's own matches are kept under its name.
    const known = places.get(at) as readonly Match<T>[] | undefined;
    if (known !== undefined) return known;
    const found = rule(phrase, at);
    places.set(at, found);
    return found;
  };
}

/** Puts off looking a rule up, for rules that refer to one another. */
export function later<T>(rule: () => Rule<T>): Rule<T> {
  return (phrase, at) => rule()(phrase, at);
}
