import { describe, expect, it } from 'vitest';
import { z } from 'zod';

const Tolerance = z.object({ type: z.enum(['rel', 'abs', 'exact']), value: z.number().default(0) });
/** A grade such as SAE 30 is written as text. */
const Figure = z.union([z.number(), z.string().regex(/^\d+$/).transform(Number)]);
const Quantity = z.object({ value: Figure, unit: z.string() });
const Row = z.object({ value: z.array(z.number()), unit: z.string() });
const Case = z.object({
  id: z.string(),
  group: z.string(),
  topic: z.string(),
  calc: z.string().optional(),
  inputs: z.record(z.string(), z.union([Quantity, Row, z.string(), z.number(), z.null()])),
  expected: z.record(z.string(), z.union([Quantity, z.string(), z.boolean()])),
  tolerance: z.union([Tolerance, z.record(z.string(), Tolerance)]),
  source: z.string().min(3),
  evidence: z.enum(['seen', 'computed', 'memory']),
});

export type EngineCase = z.output<typeof Case>;
/** The inputs by name, in the case's own units. */
export type Given = Readonly<Record<string, number>>;
/** The inputs that are words, by name. */
export type Said = Readonly<Record<string, string>>;
/** The inputs that are rows of numbers, by name. */
export type Listed = Readonly<Record<string, readonly number[]>>;
/** Works a case with the public functions, and hands the outputs back by name in the case's own units. */
export type Runner = (
  given: Given,
  said: Said,
  listed: Listed,
) => Readonly<Record<string, number | string | boolean | undefined>>;

/**
 * Puts every published case of a topic through its runner; a case without one, or an output nobody worked out, fails.
 * Runners are found by the case's computation, or by its group where it is a table value.
 */
export function checkEngineCases(
  topic: string,
  raw: unknown,
  count: number,
  runners: Readonly<Record<string, Runner>>,
): void {
  const cases = z.array(Case).parse(raw);
  describe(`${topic} against the published cases`, () => {
    it(`has the ${count} cases`, () => expect(cases).toHaveLength(count));

    it('uses every way of working one out', () => {
      expect(new Set(cases.map(runnerName))).toEqual(new Set(Object.keys(runners)));
    });

    it.each(cases)('$id: $topic ($source)', (each) => {
      const worked = runners[runnerName(each)]?.(givenIn(each), saidIn(each), listedIn(each)) ?? {};
      const outputs = Object.entries(each.expected);
      expect(outputs.length).toBeGreaterThan(0);
      for (const [name, wanted] of outputs) {
        const ours = worked[name];
        if (typeof wanted !== 'object' || typeof ours === 'string' || typeof ours === 'boolean') {
          expect(ours, name).toBe(wanted);
          continue;
        }
        const { value, unit } = wanted;
        const within = toleranceOf(each, name);
        const slack = within.type === 'rel' ? Math.abs(value) * within.value : within.value;
        const off = Math.abs((ours ?? Number.NaN) - value);
        expect(off, `${name}: ${ours} instead of ${value} ${unit}`).toBeLessThanOrEqual(slack + 1e-12);
      }
    });
  });
}

const runnerName = ({ calc, group }: EngineCase): string => calc ?? group;

const givenIn = (each: EngineCase): Given =>
  picked(each, (input) => {
    if (typeof input === 'number') return input;
    const { success, data } = Quantity.safeParse(input);
    return success ? data.value : undefined;
  });

const saidIn = (each: EngineCase): Said =>
  picked(each, (input) => (typeof input === 'string' ? input : undefined));

const listedIn = (each: EngineCase): Listed => picked(each, (input) => Row.safeParse(input).data?.value);

/** The inputs of one sort by name; asking for another throws. An input that is null is there, and open. */
function picked<Value>(
  { id, inputs }: EngineCase,
  pick: (input: EngineCase['inputs'][string]) => Value | undefined,
): Readonly<Record<string, Value>> {
  const found = Object.entries(inputs).flatMap(([name, input]): [string, Value][] => {
    const value = pick(input);
    return value === undefined ? [] : [[name, value]];
  });
  return new Proxy(Object.fromEntries(found), {
    get: (known, name) => {
      const value = known[String(name)];
      if (value === undefined && inputs[String(name)] !== null)
        throw new Error(`${id} gives no ${String(name)}`);
      return value;
    },
  });
}

function toleranceOf({ id, tolerance }: EngineCase, output: string): z.output<typeof Tolerance> {
  const all = Tolerance.safeParse(tolerance);
  if (all.success) return all.data;
  const own = z.record(z.string(), Tolerance).parse(tolerance)[output];
  if (own === undefined) throw new Error(`${id} gives no tolerance for ${output}`);
  return own;
}
