import { z } from 'zod';
import { type FieldName, fields } from '../../src/phrases/quantity/fields.ts';
import { readQuantity } from '../../src/phrases/quantity/read-quantity.ts';
import type { QuantityReading } from '../../src/phrases/quantity/reading.ts';

const Verdict = z.enum(['read', 'ask', 'refuse']);
const Expected = z.object({
  value: z.number().optional(),
  min: z.number().optional(),
  max: z.number().optional(),
  unit: z.string().optional(),
  tol: z.number().optional(),
  approx: z.boolean().optional(),
  reference: z.string().optional(),
  options: z.array(z.number()).optional(),
  units: z.array(z.string()).optional(),
});
const Phrase = z.object({
  id: z.string(),
  text: z.string(),
  context: z.string(),
  expect: Expected.nullable(),
  verdict: Verdict,
  also: z.array(Verdict).default([]),
  why: z.string(),
});

/** What a text typed in a field was meant to say. */
export type Phrase = z.output<typeof Phrase>;

/** @throws when the collection is not of the form its notes give. */
export function phrasesOf(raw: unknown): readonly Phrase[] {
  return z.array(Phrase).parse(raw);
}

/** How a reading compares with what was meant: a value given where it is not fair counts most. */
export type Score = 'as meant' | 'missed' | 'misread';

export function scorePhrase(phrase: Phrase): { readonly score: Score; readonly found: QuantityReading } {
  const found = readQuantity(phrase.text, fieldOf(phrase.context));
  const verdict = found.verdict === 'range' ? 'read' : found.verdict;
  const fair = [phrase.verdict, ...phrase.also];
  if (verdict !== 'read') return { score: fair.includes(verdict) ? 'as meant' : 'missed', found };
  if (!fair.includes('read')) return { score: 'misread', found };
  return { score: sameValue(found, phrase.expect) ? 'as meant' : 'misread', found };
}

export function fieldOf(context: string): FieldName {
  const name = Object.keys(fields).find((each): each is FieldName => each === context);
  if (name === undefined) throw new Error(`there is no field "${context}"`);
  return name;
}

function sameValue(found: QuantityReading, expected: z.output<typeof Expected> | null): boolean {
  if (expected === null) return false;
  if (found.verdict === 'range') {
    const { min, max, unit, approx, reference } = expected;
    return (
      near(found.min, min) &&
      near(found.max, max) &&
      found.unit === unit &&
      (found.approx ?? false) === (approx ?? false) &&
      found.reference === reference
    );
  }
  if (found.verdict !== 'read') return false;
  const unit = expected.unit ?? expected.units?.[0];
  return (
    near(found.value, expected.value ?? expected.options?.[0]) &&
    found.unit === unit &&
    (expected.tol === undefined ? found.tol === undefined : near(found.tol ?? Number.NaN, expected.tol)) &&
    (found.approx ?? false) === (expected.approx ?? false) &&
    found.reference === expected.reference
  );
}

/** To a billionth of the value, as the collections have it. */
function near(found: number, expected: number | undefined): boolean {
  return expected !== undefined && Math.abs(found - expected) <= Math.max(Math.abs(expected), 1e-9) * 1e-9;
}
