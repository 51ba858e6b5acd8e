import { z } from 'zod';
import type { Result } from '../../src/bot/request.ts';
import type { Json, JsonObject } from '../../src/core/json.ts';

const Verdict = z.enum(['answer', 'ask', 'none']);
const Scalar = z.union([z.string(), z.number()]);
const Expected = z
  .object({
    kind: z.string(),
    alsoKinds: z.array(z.string()).default([]),
    candidates: z.array(z.string()).default([]),
    result: z.object({ value: z.number(), unit: z.string(), tol: z.number() }).optional(),
  })
  .catchall(z.union([Scalar, z.array(z.number())]));
const Line = z.object({
  id: z.string(),
  text: z.string(),
  now: z.string().default('2026-11-24T09:15'),
  country: z.string().default('GB/ENG'),
  expect: Expected,
  verdict: Verdict,
  also: z.array(Verdict).default([]),
  why: z.string(),
});

/** A line of free text and what a careful tradesperson takes it to be. */
export type QuickLine = z.output<typeof Line>;

/** @throws when the collection is not of the form its notes give. */
export function quickLines(raw: unknown): readonly QuickLine[] {
  return z.array(Line).parse(raw);
}

/** How an answer compares with what was meant: one given where it is not fair, or a wrong one, counts most. */
export type QuickScore = 'as meant' | 'missed' | 'silently wrong';

export function scoreQuick(
  line: QuickLine,
  result: Result,
): { readonly score: QuickScore; readonly why: string } {
  const verdict = verdictOf(result);
  const fair: readonly string[] = [line.verdict, ...line.also];
  if (verdict !== 'answer') {
    return {
      score: fair.includes(verdict) ? 'as meant' : 'missed',
      why: `${verdict} ${JSON.stringify(dataOf(result))}`,
    };
  }
  const data = dataOf(result);
  if (!fair.includes('answer')) return { score: 'silently wrong', why: `answered ${JSON.stringify(data)}` };
  const wrong = differences(line.expect, data);
  return wrong.length === 0
    ? { score: 'as meant', why: '' }
    : { score: 'silently wrong', why: wrong.join('; ') };
}

function verdictOf(result: Result): string {
  if (!result.ok) return result.error.code === 'which-one' ? 'ask' : result.error.code;
  return dataOf(result)['kind'] === 'none' ? 'none' : 'answer';
}

const dataOf = ({ reply }: Result): JsonObject => (reply.kind === 'answer' ? reply.data : {});

function differences(expect: QuickLine['expect'], data: JsonObject): readonly string[] {
  const { kind, alsoKinds, candidates: _candidates, result, ...numbers } = expect;
  const found = data['kind'];
  if (![kind, ...alsoKinds].some((each) => each === found)) return [`kind is ${String(found)}`];
  // under another fair kind the numbers have that kind's names
  const named = Object.entries(numbers).filter(([name]) => found === kind || data[name] !== undefined);
  return [
    ...named.flatMap(([name, value]) =>
      same(data[name], value) ? [] : [`${name} is ${JSON.stringify(data[name])}`],
    ),
    ...(result === undefined || agrees(data['result'], result)
      ? []
      : [`result is ${JSON.stringify(data['result'])}`]),
  ];
}

function same(found: Json | undefined, expected: string | number | readonly number[]): boolean {
  if (typeof expected === 'number') return typeof found === 'number' && close(found, expected, 1e-9);
  if (typeof expected === 'object' && Array.isArray(found)) {
    const figures: readonly (Json | undefined)[] = found;
    return figures.length === expected.length && expected.every((each, at) => same(figures[at], each));
  }
  return found === expected;
}

function agrees(
  found: Json | undefined,
  { value, unit, tol }: { value: number; unit: string; tol: number },
): boolean {
  const read = z.object({ value: z.number(), unit: z.string() }).safeParse(found).data;
  return read !== undefined && read.unit === unit && close(read.value, value, tol);
}

const close = (found: number, expected: number, tol: number): boolean =>
  Math.abs(found - expected) <= Math.max(Math.abs(expected), 1e-9) * tol;
