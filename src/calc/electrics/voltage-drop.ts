import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';
import { copperResistance } from './copper.ts';

const HOT_CABLE =
  'A cable that drops too much also gets hot: fuse every live cable at the battery, and follow the maker’s rating for the current it may carry.';

/**
 * Voltage lost along copper: ΔU = n·L·I/(58·A)·(1 + 0.00393·(t − 20)), n = 2 with a return wire, 1 with the body as return.
 *
 * Source: Ohm's law with IEC 60028's copper (key IEC60028). Valid: as copperResistance, up to 5000 A. Not for: joints, lugs
 * and the body itself; nor for how hot the cable gets.
 * @throws UserError 'out-of-range' outside it.
 */
export function cableDrop(cable: {
  readonly areaMm2: number;
  /** One way. */
  readonly lengthM: number;
  readonly currentA: number;
  readonly ways: 1 | 2;
  readonly temperatureC?: number;
}): Calculation<{ readonly dropV: number; readonly resistanceOhm: number; readonly heatW: number }> {
  const { areaMm2, lengthM, currentA, ways, temperatureC = 20 } = cable;
  requireRange({ what: 'The current', value: currentA, min: 0, max: 5000, unit: 'A' });
  const one = copperResistance({ areaMm2, lengthM, temperatureC });
  const resistanceOhm = one.value.resistanceOhm * ways;
  return {
    value: { dropV: currentA * resistanceOhm, resistanceOhm, heatW: currentA ** 2 * resistanceOhm },
    assumptions: [
      ...one.assumptions,
      ways === 2 ? 'out and back in the same cable' : 'one way; the body returns it',
    ],
    sources: one.sources,
    caveats: [HOT_CABLE],
  };
}

/**
 * Voltage lost along a cable of known resistance per length: ΔU = I·R·L/1000.
 *
 * Source: Ohm's law (key DEFINITION), resistance from IEC 60228 or the maker. Valid: up to 5000 A, 100 Ω/km.
 * @throws UserError 'out-of-range' outside it.
 */
export function dropOfResistance(cable: {
  readonly ohmPerKm: number;
  readonly lengthM: number;
  readonly currentA: number;
}): Calculation<{ readonly dropV: number }> {
  const { ohmPerKm, lengthM, currentA } = cable;
  requireRange(
    { what: 'The resistance', value: ohmPerKm, min: 0.01, max: 100, unit: 'Ω/km' },
    { what: 'The length', value: lengthM, min: 0, max: 400, unit: 'm' },
    { what: 'The current', value: currentA, min: 0, max: 5000, unit: 'A' },
  );
  return {
    value: { dropV: (currentA * ohmPerKm * lengthM) / 1000 },
    assumptions: ['joints not counted'],
    sources: ['DEFINITION'],
    caveats: [HOT_CABLE],
  };
}

/**
 * Copper needed to keep a drop: A = n·L·I/(58·ΔU)·(1 + 0.00393·(t − 20)), and the next standard size up.
 *
 * Source: cableDrop inverted (key IEC60028); sizes of IEC 60228 (key IEC60228). Valid: as cableDrop, drops 0.01 to 20 V.
 * @throws UserError 'out-of-range' outside it, or when it takes more than the thickest size of the table.
 */
export function areaForDrop(
  wanted: {
    readonly lengthM: number;
    readonly currentA: number;
    readonly dropV: number;
    readonly ways: 1 | 2;
    readonly temperatureC?: number;
  },
  sizes: readonly { readonly areaMm2: number }[],
): Calculation<{ readonly areaMm2: number; readonly sizeMm2: number }> {
  const { lengthM, currentA, dropV, ways, temperatureC = 20 } = wanted;
  requireRange(
    { what: 'The current', value: currentA, min: 0.01, max: 5000, unit: 'A' },
    { what: 'The length', value: lengthM, min: 0.01, max: 200, unit: 'm' },
    { what: 'The drop', value: dropV, min: 0.01, max: 20, unit: 'V' },
  );
  const perMm2 = copperResistance({ areaMm2: 1, lengthM, temperatureC });
  const areaMm2 = (perMm2.value.resistanceOhm * ways * currentA) / dropV;
  const size = sizes.find((each) => each.areaMm2 >= areaMm2);
  if (size === undefined) {
    const thickest = Math.max(0, ...sizes.map((each) => each.areaMm2));
    throw new UserError(
      'out-of-range',
      `It takes ${Math.ceil(areaMm2)} mm² of copper, more than the ${thickest} mm² of the thickest cable listed. Shorten the run, allow a larger drop, or lay several side by side.`,
    );
  }
  return {
    value: { areaMm2, sizeMm2: size.areaMm2 },
    assumptions: [
      ...perMm2.assumptions,
      ways === 2 ? 'out and back in the same cable' : 'one way; the body returns it',
    ],
    sources: ['IEC60028', 'IEC60228'],
    caveats: [HOT_CABLE],
  };
}

export const cableDropSheet: SumSheet = {
  title: 'Voltage drop of a cable, and the size for a drop',
  formula: 'ΔU = n·L·I/(58·A)·(1 + 0.00393·(t − 20))',
  symbols: {
    ΔU: 'voltage lost, V',
    n: '2 out and back, 1 with the body as return',
    L: 'length one way, m',
    I: 'current, A',
    A: 'cross-section, mm²',
    t: 'temperature of the copper, °C',
  },
  sources: ['IEC60028', 'IEC60228'],
  range: '0.05 to 500 mm², up to 5000 A; joints, body and heating not in it',
};
