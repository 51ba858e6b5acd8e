import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { knownFuel } from '../../../src/calc/fuel/known-fuel.ts';
import { fuelNames, fuelRows } from '../../../src/tables/fuels.ts';

const sources = readFileSync(new URL('../../../docs/sources.md', import.meta.url), 'utf8');

describe('the fuel table', () => {
  it('holds the pure fuels and their names', () => {
    expect(fuelRows.size).toBe(20);
    expect(fuelNames.get('benzin')).toEqual([{ id: 'petrol', volumeRatio: 1 }]);
    expect(fuelNames.get('lpg')).toHaveLength(2);
  });

  it.each([...fuelRows.values()])('names the sources of $name', ({ source, printed_afr_source = [] }) => {
    for (const key of [...source, ...printed_afr_source])
      expect(sources).toMatch(new RegExp(`^\\| ${key} \\|`, 'm'));
  });

  it.each([...fuelNames])('knows the parts of %s', (_name, parts) => {
    expect(parts.reduce((sum, { volumeRatio }) => sum + volumeRatio, 0)).toBeCloseTo(1, 12);
    const { stoichiometricAfr, densityKgM3 } = knownFuel(fuelRows, parts).value;
    expect(stoichiometricAfr).toBeGreaterThan(1);
    expect(densityKgM3).toBeGreaterThan(50);
  });
});
