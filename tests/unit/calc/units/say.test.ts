import { describe, expect, it } from 'vitest';
import { sayExactly, sayFigure, sayIn, sayNumber } from '../../../../src/calc/units/say.ts';

describe('a number', () => {
  it.each([
    [0, '0'],
    [1, '1'],
    [115.2445256, '115.2'],
    [0.09653, '0.09653'],
    [0.000123456, '0.0001235'],
    [34_473.79, '34\u202f474'],
    [1_234_567, '1\u202f234\u202f567'],
    [-12.5, '−12.5'],
    [-0.00000000000001, '0'],
    [9999.6, '10\u202f000'],
    // halves that binary keeps a hair too low
    [273.15, '273.2'],
    [22.225, '22.23'],
    [Number.NaN, 'no number'],
    [Number.POSITIVE_INFINITY, 'no number'],
    [-1e22, '−more than 10²¹'],
  ])('%d is said "%s"', (value, said) => expect(sayNumber(value)).toBe(said));
});

describe('a figure', () => {
  it.each([
    [12.5, 'deg', '12.5°'],
    [90, 'degC', '90 °C'],
    [85, 'percent', '85 %'],
    [3.727, '1', '3.727'],
    [-1, 'AWG', '2/0 AWG'],
    [10, 'AWG', '10 AWG'],
    [10.4, 'AWG', '10.4 AWG'],
  ] as const)('%d in %s is "%s"', (value, unit, said) => expect(sayFigure(value, unit)).toBe(said));

  it('has no three decimals where they would be taken for thousands', () => {
    expect(sayFigure(1.234, 'km')).toBe('1.23 km');
    expect(sayFigure(1.234, 'mm')).toBe('1.234 mm');
    expect(sayExactly(1.234, 'km')).toBe('1.2340 km');
    expect(sayExactly(-2, 'AWG')).toBe('3/0 AWG');
    expect(sayExactly(0.5, 'deg')).toBe('0.5°');
    expect(sayExactly(2, '1')).toBe('2');
    expect(sayFigure(1.5, 'km')).toBe('1.5 km');
    expect(sayFigure(2, 'km')).toBe('2 km');
  });

  it('comes from the base unit', () => expect(sayIn(115.24452560816903, 'lbf.ft')).toBe('85 lbf·ft'));
});
