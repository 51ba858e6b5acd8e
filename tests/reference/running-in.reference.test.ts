import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import cases from '../../data/reference/engine/running-in.json' with { type: 'json' };
import { shareOfSpeed } from '../../src/calc/running-in/ceiling.ts';
import { distanceOfHours, scheduleAt } from '../../src/calc/running-in/schedule.ts';
import { convert } from '../../src/calc/units/convert.ts';
import { runInPractice } from '../../src/tables/running-in.ts';

const Quantity = z.object({ value: z.union([z.number(), z.array(z.number())]), unit: z.string() });
const Tolerance = z.object({ type: z.enum(['rel', 'abs', 'exact']), value: z.number().default(0) });
const Case = z.object({
  id: z.string(),
  group: z.string(),
  topic: z.string(),
  inputs: z.record(z.string(), z.union([Quantity, z.string()])),
  expected: z.record(z.string(), z.union([Quantity, z.string(), z.null()])),
  tolerance: z.union([Tolerance, z.record(z.string(), Tolerance)]),
  source: z.string().min(3),
});
type Case = z.output<typeof Case>;
type Worked = Readonly<Record<string, number | string | null>>;

const list = z.array(Case).parse(cases);

function figure({ id, inputs }: Case, name: string): number {
  const found = inputs[name];
  if (typeof found === 'object' && typeof found.value === 'number') return found.value;
  throw new Error(`${id} gives no ${name}`);
}

function figures({ id, inputs }: Case, name: string): readonly number[] {
  const found = inputs[name];
  if (typeof found === 'object' && Array.isArray(found.value)) return found.value;
  throw new Error(`${id} gives no ${name}`);
}

/** The table says it by the very words of the case; its figures are compared with their units. */
function step({ id, inputs }: Case): Worked {
  const row = runInPractice.find(({ item }) => item === inputs['item']);
  if (row === undefined) throw new Error(`${id}: no row says "${String(inputs['item'])}"`);
  return {
    ...Object.fromEntries(
      Object.entries(row.figures).map(([name, { value, unit }]) => [name, `${value} ${unit}`]),
    ),
    ...row.words,
  };
}

const scheduled = (start: number, now: number, marks: readonly number[]): Worked => {
  const { run, dueCount, nextAt, remaining } = scheduleAt({ start, now, marks });
  return { distance: run, dueCount, nextAt, remaining };
};

const WAYS: Readonly<Record<string, (given: Case) => Worked>> = {
  step,
  schedule: (given) => scheduled(figure(given, 'start'), figure(given, 'now'), figures(given, 'thresholds')),
  'schedule-hours': (given) => scheduled(0, figure(given, 'hours'), figures(given, 'thresholds')),
  'rpm-fraction': (given) => ({
    rpm: shareOfSpeed({ limitRpm: figure(given, 'limit'), ratio: figure(given, 'fraction') }),
  }),
  miles: (given) => ({ km: convert(figure(given, 'distance'), 'mi', 'km') }),
  'hours-to-km': (given) => ({
    km: distanceOfHours({ hours: figure(given, 'hours'), meanKmH: figure(given, 'speed') }),
  }),
};

function slackOf({ tolerance }: Case, name: string, wanted: number): number {
  const all = Tolerance.safeParse(tolerance);
  const own = all.success ? all.data : z.record(z.string(), Tolerance).parse(tolerance)[name];
  if (own === undefined) throw new Error(`no tolerance for ${name}`);
  return own.type === 'rel' ? Math.abs(wanted) * own.value : own.value;
}

describe('running in against the published cases', () => {
  it('has them all, and uses every way', () => {
    expect(list).toHaveLength(31);
    expect(new Set(list.map(({ group }) => group))).toEqual(new Set(Object.keys(WAYS)));
  });

  it.each(list)('$id: $topic ($source)', (given) => {
    const worked = WAYS[given.group]?.(given) ?? {};
    const outputs = Object.entries(given.expected);
    expect(outputs.length).toBeGreaterThan(0);
    for (const [name, wanted] of outputs) {
      const ours = worked[name];
      if (wanted === null || typeof wanted === 'string') {
        expect(ours, name).toBe(wanted);
      } else if (given.group === 'step') {
        expect(ours, name).toBe(`${String(wanted.value)} ${wanted.unit}`);
      } else {
        const value = z.number().parse(wanted.value);
        const off = Math.abs(z.number().parse(ours) - value);
        expect(off, `${name}: ${String(ours)} instead of ${value} ${wanted.unit}`).toBeLessThanOrEqual(
          slackOf(given, name, value) + 1e-12,
        );
      }
    }
  });
});
