import type { Cause, Guide, ReadingSign } from './guide.ts';

/** What a build's record can tell a search. */
export interface Known {
  readonly partsChanged: readonly PartChanged[];
  readonly measuresOpen: readonly MeasureOpen[];
  readonly readings: readonly ReadingKnown[];
}

export interface PartChanged {
  readonly name: string;
  readonly how: 'fitted' | 'came';
  readonly daysAgo: number;
}

export interface MeasureOpen {
  readonly id: number;
  readonly what: string;
  readonly daysAgo: number;
}

export interface ReadingKnown {
  readonly kind: string;
  readonly value: number;
  readonly unit: string;
  readonly states: readonly string[];
  readonly typed: string;
  readonly daysAgo: number;
}

/** Something known that makes a cause more or less likely. */
export interface Raise {
  readonly cause: string;
  /** On the cause's weight. */
  readonly factor: number;
  /** In words, with what it rests on. */
  readonly because: string;
}

/** How much more likely, by what is known: judgements, common practice without a source. */
const FACTORS = { measure: 20, fitted: 3, came: 2, readingOut: 8, readingFine: 0.3 } as const;

/** Older than these, a change no longer stands out and a reading says nothing about now. */
const FRESH_DAYS = { part: 30, reading: 2 } as const;

/** What the record has to say about the causes of a guide; of several of a kind the strongest. */
export function raises(guide: Guide, known: Known): readonly Raise[] {
  return guide.causes.flatMap((cause) => [
    ...strongest(measureRaises(cause, known)),
    ...strongest(partRaises(cause, known)),
    ...strongest(readingRaises(cause, known)),
  ]);
}

/** Their product for each cause. */
export function factorsOf(all: readonly Raise[]): ReadonlyMap<string, number> {
  const factors = new Map<string, number>();
  for (const { cause, factor } of all) factors.set(cause, (factors.get(cause) ?? 1) * factor);
  return factors;
}

/** Causes of a guide that something done for now may be. */
export const causesTouched = (guide: Guide, what: string): readonly Cause[] =>
  guide.causes.filter((cause) => isLeftOff(cause, what));

/** Whether every word of `words` begins a word of `text`: "injectors unplugged" speaks of "injector". */
export function speaksOf(text: string, words: string): boolean {
  const said = wordsOf(text);
  return wordsOf(words).every((word) => said.some((one) => one.startsWith(word)));
}

const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');

const measureRaises = (cause: Cause, { measuresOpen }: Known): readonly Raise[] =>
  measuresOpen
    .filter(({ what }) => isLeftOff(cause, what))
    .map(({ what }) => ({
      cause: cause.id,
      factor: FACTORS.measure,
      because: `“${what}” is still on the list of temporary measures`,
    }));

const partRaises = (cause: Cause, { partsChanged }: Known): readonly Raise[] =>
  partsChanged
    .filter(({ name, daysAgo }) => daysAgo <= FRESH_DAYS.part && touches(cause, name))
    .map(({ name, how, daysAgo }) => ({
      cause: cause.id,
      factor: FACTORS[how],
      because: `${name} ${how} ${ago(daysAgo)}`,
    }));

function readingRaises(cause: Cause, { readings }: Known): readonly Raise[] {
  return cause.readings.flatMap((sign) => {
    const latest = readings
      .filter((reading) => reading.daysAgo <= FRESH_DAYS.reading && isOf(reading, sign))
      .toSorted((a, b) => a.daysAgo - b.daysAgo)[0];
    if (latest === undefined) return [];
    const out = isBeyond(latest.value, sign);
    return {
      cause: cause.id,
      factor: out ? FACTORS.readingOut : FACTORS.readingFine,
      because: `“${latest.typed}” was read ${ago(latest.daysAgo)}${out ? '' : ', which is in order'}`,
    };
  });
}

const isLeftOff = ({ leftOff }: Cause, text: string): boolean =>
  leftOff.some((words) => speaksOf(text, words));

const touches = (cause: Cause, text: string): boolean => cause.touches.some((words) => speaksOf(text, words));

const isOf = (reading: ReadingKnown, sign: ReadingSign): boolean =>
  reading.kind === sign.kind &&
  reading.unit === sign.unit &&
  sign.states.every((state) => reading.states.includes(state));

const isBeyond = (value: number, { below, from }: ReadingSign): boolean =>
  (below !== undefined && value < below) || (from !== undefined && value >= from);

const ago = (days: number): string => (days <= 0 ? 'today' : days === 1 ? 'yesterday' : `${days} days ago`);

function strongest(some: readonly Raise[]): readonly Raise[] {
  const [first] = some.toSorted((a, b) => Math.abs(Math.log(b.factor)) - Math.abs(Math.log(a.factor)));
  return first === undefined ? [] : [first];
}
