import { describe, expect, it } from 'vitest';
import { UserError } from '../../../src/core/user-error.ts';
import { readScaleEnds } from '../../../src/phrases/scale-ends.ts';
import { readThermistorPoints } from '../../../src/phrases/thermistor-points.ts';

describe('points of a thermistor as typed', () => {
  it.each([
    ['2500 ohm @ 20 C; 320 ohm @ 80 C', [2500, 20, 320, 80]],
    ['2500@20;320@80', [2500, 20, 320, 80]],
    ['2,5k at 20 and 0.32 kΩ at 80°C', [2500, 20, 320, 80]],
    ['9814 Ω @ 25\n3542 @ 50', [9814, 25, 3542, 50]],
    ['26114 ohm @ −10 °C, 10k @ 77 F', [26_114, -10, 10_000, 25]],
  ])('reads %j', (typed, numbers) => {
    const read = readThermistorPoints(typed).flatMap((point) => [point.resistanceOhm, point.temperatureC]);
    expect(read).toHaveLength(numbers.length);
    for (const [index, number] of numbers.entries()) expect(read[index]).toBeCloseTo(number, 9);
  });

  it.each([
    ['2500', '“2500” is no resistance at a temperature'],
    [';', 'nothing was typed'],
    ['2,500 ohm @ 20', '“2,500” can be 2.5 or 2500'],
    ['warm @ 20', '“warm @ 20” is no resistance at a temperature'],
  ])('refuses %j and says what would do', (typed, message) => {
    expect(() => readThermistorPoints(typed)).toThrow(UserError);
    expect(() => readThermistorPoints(typed)).toThrow(message);
  });
});

describe('ends of a scale as typed', () => {
  it.each([
    [
      { low: '0 bar', high: '10 bar' },
      { low: 0, high: 10, unit: 'bar' },
    ],
    [
      { low: '−40 °C', high: '150', reading: '40,5' },
      { low: -40, high: 150, reading: 40.5, unit: '°C' },
    ],
    [
      { low: '20', high: '250 kPa' },
      { low: 20, high: 250, unit: 'kPa' },
    ],
    [
      { low: '0', high: '7' },
      { low: 0, high: 7, unit: '' },
    ],
    [
      { low: '0 Bar', high: '10bar' },
      { low: 0, high: 10, unit: 'bar' },
    ],
  ])('reads %j', (typed, read) => expect(readScaleEnds(typed)).toEqual({ reading: undefined, ...read }));

  it.each([
    [{ low: '0 bar', high: '150 psi' }, 'The readings are in bar and psi'],
    [{ low: 'empty', high: '150 psi' }, 'low: “empty” is no number with a unit'],
    [{ low: '0 bar', high: '1,234 bar' }, 'high: “1,234” can be 1.234 or 1234'],
    [{ low: '0 5', high: '10' }, 'is no number with a unit'],
  ])('refuses %j and says what would do', (typed, message) => {
    expect(() => readScaleEnds(typed)).toThrow(UserError);
    expect(() => readScaleEnds(typed)).toThrow(message);
  });
});
