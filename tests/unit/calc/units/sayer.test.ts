import { describe, expect, it } from 'vitest';
import {
  BUILT_IN,
  CHOICES,
  type OwnUnits,
  type Saying,
  sayings,
} from '../../../../src/calc/units/own-units.ts';
import { sayerFor } from '../../../../src/calc/units/sayer.ts';
import { units } from '../../../../src/calc/units/table.ts';

const US: OwnUnits = {
  pressure: 'psi',
  torque: 'lbf.ft',
  temperature: 'degF',
  length: 'in',
  volume: 'usQt',
  flow: 'lb/h',
  power: 'hp',
  distance: 'mi',
};

/** What is said, how by whoever chose nothing, and how by an American crew. */
const ROWS: readonly (readonly [Saying, number, string, string])[] = [
  ['pressure', 400, '4 bar (58 psi)', '58 psi (4 bar)'],
  ['pressure', 1, '10 mbar (0.145 psi)', '0.145 psi (10 mbar)'],
  ['torque', 100, '100 N·m (73.8 lbf·ft)', '73.8 lbf·ft (100 N·m)'],
  ['torque', 9, '9 N·m (79.7 lbf·in)', '79.7 lbf·in (9 N·m)'],
  ['temperature', -0.2, '0 °C (32 °F)', '32 °F (0 °C)'],
  ['length', 86, '86 mm (3.39 in)', '3.39 in (86 mm)'],
  ['length', 4500, '4.5 m (14.8 ft)', '14.8 ft (4.5 m)'],
  ['clearance', 0.0654, '0.065 mm (0.0026 in)', '0.0026 in (0.065 mm)'],
  ['area', 50, '50 mm² (0.0775 in²)', '0.0775 in² (50 mm²)'],
  ['capacity', 1998, '1998 cc (122 in³)', '122 in³ (1998 cc)'],
  ['velocity', 5, '5 m/s (16.4 ft/s)', '16.4 ft/s (5 m/s)'],
  ['pistonSpeed', 20, '20 m/s (3937 ft/min)', '3937 ft/min (20 m/s)'],
  ['volume', 2, '2 L (2.11 US qt)', '2.11 US qt (2 L)'],
  ['liquidFlow', 2300, '2.3 L/min (0.608 US gal/min)', '0.608 US gal/min (2.3 L/min)'],
  ['pumpFlow', 3000, '180 L/h (47.6 US gal/h)', '47.6 US gal/h (180 L/h)'],
  ['airFlow', 150, '150 g/s (19.8 lb/min)', '19.8 lb/min (150 g/s)'],
  ['burn', 12, '43.2 kg/h (95.2 lb/h)', '95.2 lb/h (43.2 kg/h)'],
  ['power', 150, '201 hp (150 kW)', '201 hp (150 kW)'],
  ['force', 36_000, '36 kN (8093 lbf)', '8093 lbf (36 kN)'],
  ['distance', 100, '100 km (62.1 mi)', '62.1 mi (100 km)'],
  ['speed', 100, '100 km/h (62.1 mph)', '62.1 mph (100 km/h)'],
  ['height', 1600, '1600 m (5249 ft)', '5249 ft (1600 m)'],
];

describe('what is said', () => {
  it.each(ROWS)('%s of %d', (what, figure, builtIn, american) => {
    expect(sayerFor().both(what, figure)).toBe(builtIn);
    expect(sayerFor(US).both(what, figure)).toBe(american);
    expect(builtIn).toContain(sayerFor().one(what, figure));
  });

  it('is asked of every quantity there is', () => {
    expect(new Set(ROWS.map(([what]) => what))).toEqual(new Set(Object.keys(sayings)));
  });

  it('counts an injector by volume or by mass, as the crew does', () => {
    expect(sayerFor().injector(440, 745)).toBe('440 cc/min (43.4 lb/h)');
    expect(sayerFor(US).injector(440, 745)).toBe('43.4 lb/h (440 cc/min)');
    expect(sayerFor(US, ['cc/min']).injector(440, 745)).toBe('440 cc/min (43.4 lb/h)');
  });

  it('says both ends of a range in one unit', () => {
    expect(sayerFor(US).range('pressure', 100, 200)).toBe('14.5 to 29 psi');
    expect(sayerFor().bothRange('temperature', 20, 90)).toBe('20 to 90 °C (68 to 194 °F)');
  });

  it('goes by what the request types before the crew’s choice, each for itself', () => {
    const say = sayerFor(BUILT_IN, ['psi', 'in', 'bar']);
    expect(say.both('pressure', 400)).toBe('58 psi (4 bar)');
    expect(say.one('capacity', 1998)).toBe('122 in³');
    expect(say.one('torque', 100)).toBe('100 N·m');
    expect(sayerFor().answering('degF').one('temperature', 100)).toBe('212 °F');
  });

  it('can be said in each choice there is, and beside another', () => {
    for (const { by, ways, given } of Object.values(sayings)) {
      expect(new Set(ways.keys())).toEqual(new Set(CHOICES[by]));
      for (const [name, { steps, beside }] of ways) {
        expect(ways.has(beside) && beside !== name, `${name} beside ${beside}`).toBe(true);
        for (const [, unit] of steps) expect(units[unit].dimension).toBe(units[given].dimension);
      }
    }
  });
});
