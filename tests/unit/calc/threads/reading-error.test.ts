import { describe, expect, it } from 'vitest';
import {
  diameterReading,
  type GivenPitch,
  joinPitches,
  pitchReading,
} from '../../../../src/calc/threads/reading-error.ts';

const standard = [1.25, 1.27, 1.4111, 1.5, 1.5875];
const given = (pitch: Partial<GivenPitch>): GivenPitch => ({
  mm: 1.5,
  how: 'mm',
  plusMinusMm: undefined,
  halfDigitMm: 0.05,
  over: undefined,
  ...pitch,
});

describe('what a pitch could be out by', () => {
  it.each([
    { what: 'a standard pitch, read off a gauge', pitch: given({}), within: 0.024 },
    { what: 'what was typed beside it', pitch: given({ plusMinusMm: 0.2 }), within: 0.2 },
    {
      what: 'a span to a tenth, over its threads',
      pitch: given({ how: 'span', over: 10, halfDigitMm: 0.005 }),
      within: 0.01,
    },
    {
      what: 'a span in whole millimetres',
      pitch: given({ how: 'span', over: 10, halfDigitMm: 0.05 }),
      within: 0.025,
    },
    { what: 'a standard pitch rounded', pitch: given({ mm: 1.59, halfDigitMm: 0.005 }), within: 0.02544 },
    { what: 'one rounded more', pitch: given({ mm: 1.4, halfDigitMm: 0.05 }), within: 0.05 },
    {
      what: 'three decimals, worked out',
      pitch: given({ mm: 1.337, halfDigitMm: 0.0005 }),
      within: 0.021392,
    },
    { what: 'any other, by eye', pitch: given({ mm: 1.65, halfDigitMm: 0.005 }), within: 0.132 },
  ])('is $within for $what', ({ pitch, within }) => {
    expect(pitchReading(pitch, standard).plusMinusMm).toBeCloseTo(within, 9);
  });
});

describe('what a diameter could be out by', () => {
  const about = { withinMm: undefined, female: false, inchName: false };
  const typed = { mm: 21.9, plusMinusMm: undefined, halfDigitMm: 0.05 };
  it.each([
    { what: 'a caliper', reading: diameterReading(typed, about), within: 0.05 },
    { what: 'jaws in a bore', reading: diameterReading(typed, { ...about, female: true }), within: 0.08 },
    { what: 'what was said', reading: diameterReading(typed, { ...about, withinMm: 0.03 }), within: 0.03 },
    {
      what: 'a ± that was typed',
      reading: diameterReading({ ...typed, plusMinusMm: 0.01 }, { ...about, withinMm: 0.03 }),
      within: 0.01,
    },
    {
      what: 'a sixty-fourth of an inch',
      reading: diameterReading(typed, { ...about, inchName: true }),
      within: 25.4 / 64,
    },
    { what: 'a rule', reading: diameterReading({ ...typed, halfDigitMm: 0.5 }, about), within: 0.25 },
  ])('is $within for $what', ({ reading, within }) => {
    expect(reading.plusMinusMm).toBeCloseTo(within, 9);
  });
});

describe('several pitch readings', () => {
  it('are nothing without any', () => expect(joinPitches([])).toBeUndefined());
  it('keep the ± of a single one', () => {
    expect(joinPitches([{ mm: 1.5, plusMinusMm: 0.01 }])).toEqual({
      mm: 1.5,
      plusMinusMm: 0.01,
      agree: true,
    });
  });
  it('join into a sharper one when they agree', () => {
    const joined = joinPitches([
      { mm: 1.5, plusMinusMm: 0.01 },
      { mm: 1.51, plusMinusMm: 0.01 },
    ]);
    expect(joined?.mm).toBeCloseTo(1.505, 9);
    expect(joined?.plusMinusMm).toBeCloseTo(0.01 / Math.SQRT2, 9);
    expect(joined?.agree).toBe(true);
  });
  it('cover each other when they do not', () => {
    const joined = joinPitches([
      { mm: 1.5, plusMinusMm: 0.01 },
      { mm: 1.6, plusMinusMm: 0.01 },
    ]);
    expect(joined?.agree).toBe(false);
    expect(joined?.mm).toBeCloseTo(1.55, 9);
    expect(joined?.plusMinusMm).toBeGreaterThan(0.05);
  });
});
