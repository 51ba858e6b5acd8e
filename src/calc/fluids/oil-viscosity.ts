import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

const KELVIN = 273.15;

/** Kinematic viscosity at 40 and 100 °C, as a data sheet has it. */
export interface OilSheet {
  readonly at40Mm2S: number;
  readonly at100Mm2S: number;
}

const NEWTONIAN =
  'Oils with thickener are thinner than this under shear, and near their pour point far thicker: below 0 °C take the cold test of the data sheet.';

/** ν + 0.7 and the term that matters below 2 mm²/s. */
const shifted = (v: number): number => v + 0.7 + Math.exp(-1.47 - 1.84 * v - 0.51 * v ** 2);
const unshifted = (z: number): number => {
  const low = z - 0.7;
  return low - Math.exp(-0.7487 - 3.295 * low + 0.6119 * low ** 2 - 0.3193 * low ** 3);
};

/** A and B of lg lg(ν + 0.7) = A − B·lg T. @throws UserError 'out-of-range' when the sheet is of no oil. */
export function waltherLine({ at40Mm2S, at100Mm2S }: OilSheet): { readonly a: number; readonly b: number } {
  requireRange(
    { what: 'The viscosity at 40 °C', value: at40Mm2S, min: 2, max: 5000, unit: 'mm²/s' },
    { what: 'The viscosity at 100 °C', value: at100Mm2S, min: 1, max: at40Mm2S * 0.95, unit: 'mm²/s' },
  );
  const [cold, hot] = [Math.log10(Math.log10(shifted(at40Mm2S))), Math.log10(Math.log10(shifted(at100Mm2S)))];
  const [lgCold, lgHot] = [Math.log10(40 + KELVIN), Math.log10(100 + KELVIN)];
  const b = (cold - hot) / (lgHot - lgCold);
  return { a: cold + b * lgCold, b };
}

/**
 * Kinematic viscosity of an oil at a temperature: lg lg(ν + 0.7) = A − B·lg T, A and B from 40 and 100 °C.
 *
 * Source: ASTM D341-20, Walther (key D341). Valid: −40 to 200 °C, where the oil is clear and flows as thin as it is.
 * @throws UserError 'out-of-range' outside it.
 */
export function viscosityAt(
  oil: OilSheet & { readonly temperatureC: number },
): Calculation<{ readonly viscosityMm2S: number; readonly a: number; readonly b: number }> {
  requireRange({ what: 'The temperature', value: oil.temperatureC, min: -40, max: 200, unit: '°C' });
  const { a, b } = waltherLine(oil);
  const z = 10 ** (10 ** (a - b * Math.log10(oil.temperatureC + KELVIN)));
  return {
    value: { viscosityMm2S: unshifted(z), a, b },
    assumptions: [`oil of ${oil.at40Mm2S} mm²/s at 40 °C and ${oil.at100Mm2S} mm²/s at 100 °C`],
    sources: ['D341'],
    caveats: oil.temperatureC < 0 ? [NEWTONIAN] : [],
  };
}

/**
 * Temperature at which an oil has a viscosity: lg T = (A − lg lg(ν + 0.7))/B, the inverse of viscosityAt.
 *
 * Source: as there (key D341). Valid: where the answer is −40 to 200 °C.
 * @throws UserError 'out-of-range' outside it.
 */
export function temperatureAt(
  oil: OilSheet & { readonly viscosityMm2S: number },
): Calculation<{ readonly temperatureC: number }> {
  requireRange({ what: 'The viscosity', value: oil.viscosityMm2S, min: 0.5, max: 1e6, unit: 'mm²/s' });
  const { a, b } = waltherLine(oil);
  const temperatureC = 10 ** ((a - Math.log10(Math.log10(shifted(oil.viscosityMm2S)))) / b) - KELVIN;
  requireRange({
    what: 'The temperature it has that at',
    value: temperatureC,
    min: -40,
    max: 200,
    unit: '°C',
  });
  return {
    value: { temperatureC },
    assumptions: [`oil of ${oil.at40Mm2S} mm²/s at 40 °C and ${oil.at100Mm2S} mm²/s at 100 °C`],
    sources: ['D341'],
    caveats: temperatureC < 0 ? [NEWTONIAN] : [],
  };
}

/** Dynamic viscosity η = ν·ρ/1000, mPa·s (key DEFINITION). @throws UserError 'out-of-range' outside 500 to 1500 kg/m³. */
export function dynamicViscosity(fluid: {
  readonly viscosityMm2S: number;
  readonly densityKgM3: number;
}): Calculation<{ readonly viscosityMpaS: number }> {
  const { viscosityMm2S, densityKgM3 } = fluid;
  requireRange({ what: 'The density', value: densityKgM3, min: 500, max: 1500, unit: 'kg/m³' });
  return {
    value: { viscosityMpaS: (viscosityMm2S * densityKgM3) / 1000 },
    assumptions: [`${densityKgM3} kg/m³`],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

export const oilViscositySheet: SumSheet = {
  title: 'Oil viscosity at a temperature',
  formula: 'lg lg(ν + 0.7 + e^(−1.47 − 1.84·ν − 0.51·ν²)) = A − B·lg T; η = ν·ρ',
  symbols: {
    ν: 'kinematic viscosity, mm²/s',
    T: 'temperature, K',
    'A, B': 'from the values at 40 and 100 °C',
  },
  sources: ['D341', 'DEFINITION'],
  range: '−40 to 200 °C; not near the pour point, nor under shear',
};
