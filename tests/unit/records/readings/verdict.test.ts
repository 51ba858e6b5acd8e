import { describe, expect, it } from 'vitest';
import { alike } from '../../../../src/records/readings/alike.ts';
import { kindsWith } from '../../../../src/records/readings/kinds.ts';
import { unlikely } from '../../../../src/records/readings/plausible.ts';
import type { Conditions } from '../../../../src/records/readings/reading.ts';
import { judge } from '../../../../src/records/readings/verdict.ts';

const kind = (name: string) => {
  const found = kindsWith([]).find((each) => each.name === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};
const at = (states: readonly string[], figures: Omit<Conditions, 'states'> = {}): Conditions => ({
  states,
  ...figures,
});
const grade = (name: string, value: number, conditions: Conditions, boosted = false) =>
  judge({ value, conditions }, kind(name), { limits: [], boosted });

/** Ranges of data/readings/limits.json, all common practice, no source (key COMMON). */
describe('a verdict by common practice', () => {
  it.each([
    ['oil pressure', 68, at(['hot', 'idle']), 'bad', 'low'],
    ['oil pressure', 70, at(['hot', 'idle']), 'good', 'ok'],
    ['oil pressure', 206, at(['hot'], { speedRpm: 3000 }), 'bad', 'low'],
    ['oil pressure', 207, at(['hot'], { speedRpm: 3000 }), 'good', 'ok'],
    // 10 psi for each 1000 rpm would be 4.8 bar; relief valves open at about 4 bar
    ['oil pressure', 410, at(['hot'], { speedRpm: 7000 }), 'good', 'ok'],
    ['oil pressure', 390, at(['hot'], { speedRpm: 7000 }), 'bad', 'low'],
    ['coolant temperature', 108, at([]), 'doubtful', 'high'],
    ['coolant temperature', 111, at([]), 'bad', 'high'],
    ['coolant temperature', 40, at(['cold']), 'good', 'ok'],
    ['coolant temperature', 70, at(['hot']), 'doubtful', 'low'],
    ['oil temperature', 131, at([]), 'bad', 'high'],
    ['oil temperature', 65, at(['full load']), 'doubtful', 'low'],
    ['battery voltage', 12.4, at(['at rest']), 'doubtful', 'low'],
    ['battery voltage', 9.5, at(['cranking']), 'bad', 'low'],
    ['battery voltage', 14.9, at(['charging']), 'bad', 'high'],
    ['battery voltage', 12.5, at([]), 'unjudged', 'ok'],
    ['leak-down', 0.04, at([]), 'good', 'ok'],
    ['leak-down', 0.15, at([]), 'doubtful', 'high'],
    ['leak-down', 0.15, at(['worn']), 'good', 'ok'],
    ['leak-down', 0.22, at(['worn']), 'bad', 'high'],
    ['lambda', 0.92, at(['hot', 'idle']), 'doubtful', 'low'],
    ['lambda', 0.92, at(['hot', 'idle', 'large overlap']), 'good', 'ok'],
    ['lambda', 0.95, at(['full load']), 'bad', 'high'],
    ['charge temperature', 62, at([]), 'bad', 'high'],
    ['parasitic draw', 0.06, at(['at rest']), 'doubtful', 'high'],
    ['crankcase pressure', 4, at(['full load']), 'bad', 'high'],
    ['compression spread', 0.12, at([]), 'doubtful', 'high'],
    ['compression spread', 0.27, at([]), 'bad', 'high'],
    ['bearing clearance', 0.05, at([]), 'unjudged', 'ok'],
  ] as const)('of %s %d at %j is %s', (name, value, conditions, wanted, side) => {
    expect(grade(name, value, conditions)).toMatchObject({ grade: wanted, side });
  });

  it('goes by whether the engine is boosted', () => {
    expect(grade('lambda', 0.88, at(['full load']), false).grade).toBe('good');
    expect(grade('lambda', 0.88, at(['full load']), true)).toMatchObject({ grade: 'bad', side: 'high' });
  });

  it('takes a low oil pressure for low whatever the heat, and a high one for nothing', () => {
    expect(grade('oil pressure', 60, at(['idle'])).grade).toBe('bad');
    expect(grade('oil pressure', 600, at(['cold'], { speedRpm: 1500 })).grade).toBe('good');
  });
});

/** A pump brings no less at a higher speed, and hot oil is the thinnest. Common practice, no source. */
describe("the maker's least oil pressure", () => {
  const limit = (min: number, conditions: Conditions) => ({
    id: 1,
    buildId: 1,
    kind: 'oil pressure',
    min,
    max: null,
    conditions,
    origin: 'maker' as const,
    typed: '',
    byName: 'Ada',
    setOn: '2026-11-23',
  });
  const limits = [limit(300, at(['hot'], { speedRpm: 2000 })), limit(80, at(['hot', 'idle']))];
  it.each([
    [280, at([], { speedRpm: 2000, temperatureC: 90 }), 'bad', 'maker'],
    [280, at([], { speedRpm: 3000, temperatureC: 90 }), 'bad', 'maker'],
    [280, at([], { speedRpm: 3000 }), 'bad', 'maker'],
    [310, at([], { speedRpm: 3000, temperatureC: 90 }), 'good', 'maker'],
    // common practice still asks for more at speed than the maker does at 2000 rpm
    [330, at([], { speedRpm: 5500, temperatureC: 90 }), 'bad', 'common practice'],
    [140, at([], { speedRpm: 1500, temperatureC: 90 }), 'good', 'maker'],
    [70, at([], { speedRpm: 900, temperatureC: 90 }), 'bad', 'maker'],
  ] as const)(
    'holds at higher speeds as well: %d kPa at %j is %s by %s',
    (value, conditions, wanted, origin) => {
      const verdict = judge({ value, conditions }, kind('oil pressure'), { limits, boosted: false });
      expect(verdict).toMatchObject({ grade: wanted, limit: { origin } });
    },
  );
});

describe('like conditions', () => {
  it.each([
    [at([], { speedRpm: 2500, temperatureC: 92 }), at([], { speedRpm: 2600, temperatureC: 88 }), true],
    [at([], { speedRpm: 2500 }), at([], { speedRpm: 2800 }), false],
    [at([], { temperatureC: 92 }), at([], { temperatureC: 80 }), false],
    [at([], { speedRpm: 2500 }), at([]), false],
    [at(['hot'], { temperatureC: 92 }), at([], { temperatureC: 92 }), true],
    [at(['idle'], { speedRpm: 850 }), at([], { speedRpm: 900 }), true],
    [at(['hot']), at(['cold']), false],
    [at([], { place: 'cylinder 1' }), at([], { place: 'cylinder 2' }), false],
    [at(['wet']), at([]), false],
  ] as const)('%j and %j: %s', (one, other, wanted) => expect(alike(one, other)).toBe(wanted));
});

describe('what is unlikely', () => {
  it.each([
    ['oil pressure', 4100, 'bar', ['4.1 bar', '0.41 bar', '41 psi', '41 kPa']],
    ['coolant temperature', 195, 'degC', ['19.5 degC', '1.95 degC', '195 degF']],
    ['bearing clearance', 0.5, 'mm', ['0.05 mm', '0.5 thou']],
    ['battery voltage', 1.24, 'V', ['12.4 V']],
  ] as const)('%s %d is asked about with %j', (name, value, unit, wanted) => {
    const doubt = unlikely(value, unit, kind(name), [], 0);
    expect(doubt?.instead.map((each) => `${each.figure} ${each.unit}`)).toEqual(wanted);
  });

  const DAY_MS = 86_400_000;
  it.each([
    [84_200, 0, 'went back'],
    [90_000, 1, 'far more'],
    [84_900, 1, undefined],
    [90_000, 10, undefined],
  ])('an odometer of %d, %d days after 84 210', (value, days, why) => {
    const doubt = unlikely(value, 'km', kind('distance'), [{ value: 84_210, takenAtMs: 0 }], days * DAY_MS);
    if (why === undefined) expect(doubt).toBeUndefined();
    else expect(doubt?.why).toContain(why);
  });
});
