import { ATMOSPHERE_KPA } from './definitions.ts';

/** What a pressure is measured from: the air around it, or nothing at all. */
export type PressureReference = 'gauge' | 'absolute';

/**
 * A pressure in kPa measured from the other zero: p_abs = p_gauge + p_atmosphere.
 *
 * Source: definition (key SI for the standard atmosphere). The air around is 101.325 kPa at sea level unless it is given.
 */
export function pressureFrom(
  kPa: number,
  from: PressureReference,
  to: PressureReference,
  atmosphereKPa: number = ATMOSPHERE_KPA,
): number {
  if (from === to) return kPa;
  return to === 'absolute' ? kPa + atmosphereKPa : kPa - atmosphereKPa;
}
