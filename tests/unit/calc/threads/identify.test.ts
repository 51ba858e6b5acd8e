import { describe, expect, it } from 'vitest';
import { threadCatalogue } from '../../../../src/calc/threads/catalogue.ts';
import { decidingMeasurements } from '../../../../src/calc/threads/decide.ts';
import { identifyThread, type Suspect } from '../../../../src/calc/threads/identify.ts';
import type { Seat, ThreadReadings } from '../../../../src/calc/threads/readings.ts';
import { threadTables } from '../../../../src/tables/threads.ts';

const seats: Readonly<Record<string, readonly Seat[]>> = {
  '7/16-20 UNF': ['cone37', 'cone45', 'boss-oring'],
  'M14x1.5': ['washer', 'boss-oring'],
};
const suspects: readonly Suspect[] = threadCatalogue(threadTables).map((thread) => ({
  thread,
  weight: 1,
  seats: new Set(seats[thread.id] ?? []),
}));
const identify = (readings: ThreadReadings) => identifyThread(suspects, readings);
const standing = (readings: ThreadReadings) =>
  identify(readings)
    .candidates.filter(({ stands }) => stands)
    .map(({ thread }) => thread.id)
    .sort();
const asks = (readings: ThreadReadings) =>
  decidingMeasurements(identify(readings).candidates.filter(({ stands }) => stands)).map(({ what }) => what);

const sharp = 0.02;
const halfInchPipe: ThreadReadings = {
  side: 'male',
  diameter: { mm: 20.8, plusMinusMm: 0.05 },
  pitch: { mm: 25.4 / 14, plusMinusMm: 0.02 },
};

describe('identification', () => {
  it('says none when nothing was measured that exists', () => {
    const found = identify({
      side: 'male',
      diameter: { mm: 50, plusMinusMm: sharp },
      pitch: { mm: 0.4, plusMinusMm: 0.001 },
    });
    expect(found.noneProbability).toBeGreaterThan(0.99);
    expect(found.ambiguous).toBe(false);
  });

  it('has nothing to say of no suspects', () => {
    expect(identifyThread([], { named: { nominal: '22' } }).noneProbability).toBe(1);
  });

  it('shares everything out when only the side is known', () => {
    const found = identify({ side: 'male' });
    expect(found.candidates.length).toBeGreaterThan(0);
    expect(found.ambiguous).toBe(true);
  });

  it('cannot separate the three half-inch pipe threads by diameter and pitch', () => {
    expect(standing(halfInchPipe)).toEqual(['1/2-14 NPT', 'G 1/2', 'R 1/2']);
    expect(asks(halfInchPipe)).toEqual(['taper', 'angle']);
  });

  it.each([
    { seen: { taper: 'parallel', angleDeg: 55 }, left: ['G 1/2'] },
    { seen: { taper: 'tapered', angleDeg: 60 }, left: ['1/2-14 NPT'] },
    { seen: { taper: 'tapered', angleDeg: 55 }, left: ['R 1/2'] },
    { seen: { taper: 'tapered' }, left: ['1/2-14 NPT', 'R 1/2'] },
    { seen: { taperRate: { perMm: 0, plusMinus: 0.01 } }, left: ['G 1/2'] },
    { seen: { taperRate: { perMm: 0.063, plusMinus: 0.01 }, angleDeg: 55 }, left: ['R 1/2'] },
    { seen: { taperRate: { perMm: 9, plusMinus: 0.0001 } }, left: ['1/2-14 NPT', 'G 1/2', 'R 1/2'] },
    { seen: { seat: 'none' }, left: ['1/2-14 NPT', 'G 1/2', 'R 1/2'] },
    { seen: { seat: 'washer' }, left: ['G 1/2'] },
  ] as const)('leaves $left once $seen is seen', ({ seen, left }) => {
    expect(standing({ ...halfInchPipe, ...seen })).toEqual([...left].sort());
  });

  it('keeps one thread under two names tied and says that nothing separates them', () => {
    const readings: ThreadReadings = {
      side: 'male',
      diameter: { mm: 6.25, plusMinusMm: sharp },
      pitch: { mm: 25.4 / 26, plusMinusMm: 0.01 },
    };
    expect(standing(readings)).toEqual(['1/4-26 BSB', '1/4-26 BSF']);
    expect(asks(readings)).toEqual(['same']);
    const [first, second] = identify(readings).candidates;
    expect(first?.probability).toBeCloseTo(second?.probability ?? 0, 9);
  });

  it('asks for the side when both fit', () => {
    const readings: ThreadReadings = {
      diameter: { mm: 9.95, plusMinusMm: sharp },
      pitch: { mm: 1, plusMinusMm: 0.005 },
    };
    expect(standing(readings)).toEqual(['M10x1', 'M11x1']);
    expect(asks(readings)).toEqual(['side']);
  });

  it('asks for the pitch over ten threads, or twenty where ten are too few', () => {
    const wide = decidingMeasurements(
      identify({
        side: 'male',
        diameter: { mm: 21.95, plusMinusMm: sharp },
        pitch: { mm: 1.65, plusMinusMm: 0.2 },
      }).candidates,
    );
    expect(wide[0]?.ask).toBe('Lay a rule along ten threads: 15.0 mm or 18.1 mm?');
    const close = decidingMeasurements(
      identify({
        side: 'male',
        diameter: { mm: 10.15, plusMinusMm: 0.5 },
        pitch: { mm: 0.92, plusMinusMm: 0.05 },
        taper: 'tapered',
      }).candidates,
    );
    expect(close[0]?.ask).toContain('twenty threads: 18.1 mm or 18.8 mm');
  });

  it('asks for the diameter again where only that differs', () => {
    const readings: ThreadReadings = {
      side: 'female',
      diameter: { mm: 12.5, plusMinusMm: 1.2 },
      pitch: { mm: 1.5, plusMinusMm: 0.005 },
    };
    expect(asks(readings)).toEqual(['diameter']);
    expect(
      decidingMeasurements(identify(readings).candidates.filter(({ stands }) => stands))[0]?.ask,
    ).toContain('across the bore');
  });

  it('asks whether a bore tapers in the words of a bore', () => {
    const [decider] = decidingMeasurements(
      identify({ ...halfInchPipe, side: 'female', diameter: { mm: 18.66, plusMinusMm: 0.05 } }).candidates,
    );
    expect(decider?.ask).toContain('Does the bore taper?');
  });

  it('has nothing to ask about a single candidate', () => {
    expect(decidingMeasurements([])).toEqual([]);
  });

  it.each(['cone37', 'cone45', 'boss-oring'] as const)(
    'leans to the thread whose fittings have the seat %s',
    (seat) => {
      // Between an M11 and a 7/16-20, with a careless pitch.
      const readings: ThreadReadings = {
        side: 'male',
        diameter: { mm: 10.92, plusMinusMm: 0.05 },
        pitch: { mm: 1.15, plusMinusMm: 0.2 },
      };
      const first = (all: ThreadReadings) => identify(all).candidates[0];
      expect(first(readings)?.probability).toBeLessThan(0.9);
      expect(first({ ...readings, seat })?.thread.id).toBe('7/16-20 UNF');
      expect(first({ ...readings, seat })?.probability).toBeGreaterThan(0.9);
    },
  );

  it('takes a name as a name', () => {
    expect(
      standing({
        named: { nominal: '10', families: ['iso-metric'] },
        pitch: { mm: 1.25, plusMinusMm: 0.02 },
      }),
    ).toEqual(['M10x1.25']);
    expect(standing({ named: { nominal: '1/8', families: ['bsp-parallel', 'bsp-taper'] } })).toEqual([
      'G 1/8',
      'R 1/8',
    ]);
    expect(standing({ named: { nominal: '3/8', families: ['unified'], series: ['UNF'] } })).toEqual([
      '3/8-24 UNF',
    ]);
  });

  it('lets a family name narrow a measured size', () => {
    expect(standing({ ...halfInchPipe, named: { families: ['npt'] } })).toEqual(['1/2-14 NPT']);
  });
});
