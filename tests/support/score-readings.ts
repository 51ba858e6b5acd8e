import { z } from 'zod';
import type { KindSpec } from '../../src/phrases/readings/kind-spec.ts';
import type { LineReading } from '../../src/phrases/readings/line-reading.ts';
import { readLine } from '../../src/phrases/readings/read-line.ts';
import { readingKinds } from '../../src/tables/reading-kinds.ts';

const Verdict = z.enum(['read', 'ask', 'refuse']);
const Expected = z.object({
  kind: z.string(),
  values: z.array(z.number()).optional(),
  speedRpm: z.number().optional(),
  temperatureC: z.number().optional(),
  boostKPa: z.number().optional(),
  fuel: z.string().optional(),
  places: z.array(z.string()).optional(),
  states: z.array(z.string()).optional(),
  statesEach: z.array(z.array(z.string())).optional(),
  note: z.string().optional(),
  own: z.boolean().optional(),
});
const Phrase = z.object({
  id: z.string(),
  text: z.string(),
  expect: Expected.nullable(),
  verdict: Verdict,
  also: z.array(Verdict).default([]),
  why: z.string(),
});

/** A line as people type it, and what it was meant to say. */
export type LinePhrase = z.output<typeof Phrase>;

export const linePhrasesOf = (raw: unknown): readonly LinePhrase[] => z.array(Phrase).parse(raw);

/** What a crew made for itself, in the collection. */
const OWN: readonly KindSpec[] = [
  { name: 'belt tension', words: [], field: 'force', unit: 'N', shown: 'N' },
  { name: 'wastegate preload', words: [], field: null, unit: 'turns', shown: 'turns' },
];

export const testContext = {
  kinds: [...readingKinds, ...OWN],
  afrOf: (fuel: string): number | undefined => ({ E85: 9.8, methanol: 6.45 })[fuel],
};

export type LineScore = 'as meant' | 'missed' | 'misread';

/** A value given where it is not fair, or a wrong one, counts most. */
export function scoreLine(phrase: LinePhrase): { readonly score: LineScore; readonly found: LineReading } {
  const found = readLine(phrase.text, testContext);
  const fair = [phrase.verdict, ...phrase.also];
  if (found.verdict !== 'read') return { score: fair.includes(found.verdict) ? 'as meant' : 'missed', found };
  if (!fair.includes('read')) return { score: 'misread', found };
  return { score: sameLine(found, phrase.expect) ? 'as meant' : 'misread', found };
}

function sameLine(found: LineReading & { verdict: 'read' }, wanted: LinePhrase['expect']): boolean {
  if (wanted === null || found.kind !== wanted.kind || (found.note ?? undefined) !== wanted.note)
    return false;
  const { values = [], places, states = [], statesEach } = wanted;
  return (
    found.values.length === values.length &&
    found.values.every(({ value, conditions }, index) => {
      const expected = values[index] ?? Number.NaN;
      return (
        Math.abs(value - expected) <= Math.max(Math.abs(expected), 1e-9) * 1e-6 &&
        near(conditions.speedRpm, wanted.speedRpm) &&
        near(conditions.temperatureC, wanted.temperatureC) &&
        near(conditions.boostKPa, wanted.boostKPa) &&
        conditions.fuel === wanted.fuel &&
        conditions.place === places?.[index] &&
        conditions.states.join() === (statesEach?.[index] ?? states).join()
      );
    })
  );
}

function near(found: number | undefined, wanted: number | undefined): boolean {
  if (found === undefined || wanted === undefined) return found === wanted;
  return Math.abs(found - wanted) <= Math.max(Math.abs(wanted), 1e-9) * 1e-6;
}
