import { ATMOSPHERE_KPA } from '../units/definitions.ts';

/** Kelvin at 0 °C, exact by definition of the Celsius scale. */
export const KELVIN_AT_ZERO_C = 273.15;

/** Specific gas constant of dry air in J/(kg·K) as ISO 2533 has it (key ISO2533). */
export const R_DRY_AIR = 287.05287;

/** Specific gas constant of water vapour in J/(kg·K). */
export const R_VAPOUR = 461.5;

/** Ratio of specific heats of air; a real charge at 150 °C is nearer 1.39, which is left out. */
export const GAMMA_AIR = 1.4;

/** Pressure of the standard atmosphere at sea level in kPa, exact (key ISO2533). */
export const STANDARD_PRESSURE_KPA = ATMOSPHERE_KPA;
