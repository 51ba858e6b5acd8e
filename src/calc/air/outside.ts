import type { Calculation } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';
import { STANDARD_PRESSURE_KPA } from './constants.ts';
import { standardAtmosphere } from './standard-atmosphere.ts';

/**
 * Air pressure outside: what a barometer shows, else the standard day at a height, else sea level.
 *
 * Source and range: as standardAtmosphere (key ISO2533); a barometer 50 to 110 kPa, as it reads where the car stands.
 * @throws UserError 'bad-input' when both are given, 'out-of-range' outside their ranges.
 */
export function outsidePressure(place: {
  readonly barometerKpa?: number | undefined;
  readonly altitudeM?: number | undefined;
}): Calculation<{ readonly atmosphereKpa: number }> {
  const { barometerKpa, altitudeM } = place;
  if (barometerKpa !== undefined && altitudeM !== undefined) {
    throw new UserError(
      'bad-input',
      'Give the barometer or the altitude, not both: the barometer outranks it.',
    );
  }
  if (barometerKpa !== undefined) {
    requireRange({ what: 'The barometer', value: barometerKpa, min: 50, max: 110, unit: 'kPa' });
    return { value: { atmosphereKpa: barometerKpa }, assumptions: [], sources: [], caveats: [] };
  }
  if (altitudeM === undefined) {
    return {
      value: { atmosphereKpa: STANDARD_PRESSURE_KPA },
      assumptions: [`${STANDARD_PRESSURE_KPA} kPa outside, sea level on the standard day`],
      sources: ['ISO2533'],
      caveats: [],
    };
  }
  const { value, sources } = standardAtmosphere({ altitudeM });
  return {
    value: { atmosphereKpa: value.pressureKpa },
    assumptions: [
      `${value.pressureKpa.toFixed(1)} kPa outside, the standard day at ${Math.round(altitudeM)} m`,
    ],
    sources,
    caveats: [],
  };
}
