import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

/** Resistivity of annealed copper at 20 °C, exactly 1/58 Ω·mm²/m (key IEC60028). */
const CONDUCTIVITY = 58;
const COPPER_PER_K = 0.00393;

interface Wire {
  readonly areaMm2: number;
  readonly lengthM: number;
  /** Of the copper; 20 °C when left out. */
  readonly temperatureC?: number;
}

/**
 * Resistance of copper: R = L/(58·A)·(1 + 0.00393·(t − 20)).
 *
 * Source: IEC 60028, annealed copper of 100 % IACS (key IEC60028). Valid: 0.05 to 500 mm², −40 to 200 °C. Not for: a real
 * cable, which may have up to 8 % more (classResistance), crimps, or copper-clad aluminium, which has half as much again.
 * @throws UserError 'out-of-range' outside it.
 */
export function copperResistance(wire: Wire): Calculation<{ readonly resistanceOhm: number }> {
  const { areaMm2, lengthM, temperatureC = 20 } = wire;
  requireRange(
    { what: 'The cross-section', value: areaMm2, min: 0.05, max: 500, unit: 'mm²' },
    { what: 'The length', value: lengthM, min: 0, max: 200, unit: 'm' },
    { what: 'The temperature of the copper', value: temperatureC, min: -40, max: 200, unit: '°C' },
  );
  return {
    value: {
      resistanceOhm: (lengthM / (CONDUCTIVITY * areaMm2)) * (1 + COPPER_PER_K * (temperatureC - 20)),
    },
    assumptions: [`copper at ${sayNumber(temperatureC)} °C, joints not counted`],
    sources: ['IEC60028'],
    caveats: [],
  };
}

export const copperResistanceSheet: SumSheet = {
  title: 'Resistance of copper',
  formula: 'R = L/(58·A)·(1 + 0.00393·(t − 20))',
  symbols: {
    R: 'resistance, Ω',
    L: 'length, m',
    A: 'cross-section, mm²',
    t: 'temperature of the copper, °C',
  },
  sources: ['IEC60028'],
  range: 'annealed copper, 0.05 to 500 mm², −40 to 200 °C',
};

/** A row of IEC 60228 class 5: flexible copper conductors. */
export interface ConductorRow {
  readonly areaMm2: number;
  readonly plainOhmPerKm: number;
  readonly tinnedOhmPerKm: number;
}

/**
 * Factor that carries a conductor's resistance at t to that at 20 °C: k = 1/(1 + 0.004·(t − 20)).
 *
 * Source: IEC 60228, the rounded 0.004 of its table (key IEC60228). Valid: 0 to 120 °C.
 * @throws UserError 'out-of-range' outside it.
 */
export function conductorTemperatureFactor(conductor: {
  readonly temperatureC: number;
}): Calculation<{ readonly factorRatio: number }> {
  const { temperatureC } = conductor;
  requireRange({ what: 'The temperature of the copper', value: temperatureC, min: 0, max: 120, unit: '°C' });
  return {
    value: { factorRatio: 1 / (1 + 0.004 * (temperatureC - 20)) },
    assumptions: [],
    sources: ['IEC60228'],
    caveats: [],
  };
}

/**
 * Most resistance a flexible cable of a standard size may have: R = R₂₀·L/1000/k.
 *
 * Source: IEC 60228 table 3, class 5 (key IEC60228). Valid: the sizes of the table, 0 to 120 °C. Not for: joints and lugs.
 * @throws UserError 'out-of-range' for a size the table has not, naming those it has.
 */
export function classResistance(
  cable: Wire & { readonly tinned?: boolean },
  table: readonly ConductorRow[],
): Calculation<{ readonly resistanceOhm: number; readonly ohmPerKm: number }> {
  const { areaMm2, lengthM, temperatureC = 20, tinned = false } = cable;
  const row = table.find((each) => Math.abs(each.areaMm2 - areaMm2) < 1e-9);
  if (row === undefined) {
    const sizes = table.map((each) => each.areaMm2).join(', ');
    throw new UserError(
      'out-of-range',
      `${sayNumber(areaMm2)} mm² is no standard size. There are ${sizes} mm².`,
    );
  }
  requireRange({ what: 'The length', value: lengthM, min: 0, max: 200, unit: 'm' });
  const ohmPerKm = tinned ? row.tinnedOhmPerKm : row.plainOhmPerKm;
  const { factorRatio } = conductorTemperatureFactor({ temperatureC }).value;
  return {
    value: { resistanceOhm: (ohmPerKm * lengthM) / 1000 / factorRatio, ohmPerKm },
    assumptions: [
      `the most that ${tinned ? 'tinned' : 'plain'} class 5 copper may have, at ${sayNumber(temperatureC)} °C`,
    ],
    sources: ['IEC60228'],
    caveats: [],
  };
}

export const classResistanceSheet: SumSheet = {
  title: 'Greatest resistance of a flexible cable',
  formula: 'R = R₂₀·L/(1000·k); k = 1/(1 + 0.004·(t − 20))',
  symbols: {
    'R₂₀': 'table value at 20 °C, Ω/km',
    L: 'length, m',
    k: 'temperature factor',
    t: 'temperature of the copper, °C',
  },
  sources: ['IEC60228'],
  range: 'standard sizes of class 5, 0 to 120 °C',
};
