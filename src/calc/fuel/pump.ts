import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { ccMinFromGs } from './fuel-units.ts';
import { type CurvePoint, onCurve } from './typed-curve.ts';

/**
 * Flow that a pump must bring at rail pressure: Q = P·b/ρ·(1 + margin).
 *
 * Source: definition of BSFC (key HEYWOOD); the margin is common practice (key COMMON). Valid: 1 to 2000 kW, margin 0 to 1.
 * Not for: fuel that a jet pump or a leaking regulator takes besides.
 * @throws UserError 'out-of-range' outside it.
 */
export function pumpNeed(engine: {
  readonly crankPowerKw: number;
  readonly bsfcGPerKwh: number;
  readonly densityKgM3: number;
  readonly marginRatio: number;
}): Calculation<{
  readonly fuelFlowGs: number;
  readonly flowCcMin: number;
  readonly withMarginCcMin: number;
}> {
  const { crankPowerKw, bsfcGPerKwh, densityKgM3, marginRatio } = engine;
  requireRange(
    { what: 'The power', value: crankPowerKw, min: 1, max: 2000, unit: 'kW' },
    { what: 'The fuel per work', value: bsfcGPerKwh, min: 150, max: 2000, unit: 'g/kWh' },
    { what: 'The density', value: densityKgM3, min: 400, max: 1300, unit: 'kg/m³' },
    { what: 'The margin', value: marginRatio * 100, min: 0, max: 100, unit: '%' },
  );
  const fuelFlowGs = (crankPowerKw * bsfcGPerKwh) / 3600;
  const flowCcMin = ccMinFromGs(fuelFlowGs, densityKgM3);
  return {
    value: { fuelFlowGs, flowCcMin, withMarginCcMin: flowCcMin * (1 + marginRatio) },
    assumptions: [`${Number((marginRatio * 100).toFixed(1))} % in hand over what the engine burns`],
    sources: ['HEYWOOD', 'COMMON'],
    caveats: [],
  };
}

export const pumpNeedSheet: SumSheet = {
  title: 'Pump flow for a power',
  formula: 'Q = P·b/ρ·(1 + margin)',
  symbols: {
    P: 'power at the crankshaft, kW',
    b: 'BSFC, g/kWh',
    ρ: 'density, kg/L',
    Q: 'flow at rail pressure, L/h',
  },
  sources: ['HEYWOOD', 'COMMON'],
  range: '1 to 2000 kW',
};

/**
 * What a pump brings at a pressure and voltage, from typed curves: Q = Q(p)·Q_V(V)/Q_V(V_test).
 *
 * Straight between the points typed and nothing beyond them; the effect of voltage at one pressure is taken to hold at the
 * other. Source: the maker's curves, as typed (key TYPED). Valid: within both curves. Not for: hot fuel, a blocked strainer.
 * @throws UserError 'out-of-range' or 'bad-input' where a curve does not reach or holds one point.
 */
export function pumpSupply(pump: {
  /** `at` in kPa, `value` in cc/min. */
  readonly pressureCurve: readonly CurvePoint[];
  readonly pressureKpa: number;
  readonly voltage?: {
    /** `at` in V, `value` in cc/min or any share of it. */
    readonly curve: readonly CurvePoint[];
    /** That of the pressure curve. */
    readonly testV: number;
    readonly atPumpV: number;
  };
}): Calculation<{ readonly flowCcMin: number; readonly voltageRatio: number }> {
  const { pressureCurve, pressureKpa, voltage } = pump;
  const atPressure = onCurve(pressureCurve, pressureKpa, { what: "The pump's flows", unit: 'kPa' });
  const words = { what: "The pump's flows", unit: 'V' };
  const voltageRatio =
    voltage === undefined
      ? 1
      : onCurve(voltage.curve, voltage.atPumpV, words) / onCurve(voltage.curve, voltage.testV, words);
  return {
    value: { flowCcMin: atPressure * voltageRatio, voltageRatio },
    assumptions: [
      'straight between the points typed',
      voltage === undefined
        ? 'at the voltage of the curve: a volt less at the pump costs flow'
        : `${voltage.atPumpV} V at the pump, the curve at ${voltage.testV} V`,
    ],
    sources: ['TYPED'],
    caveats: [],
  };
}

export const pumpSupplySheet: SumSheet = {
  title: "Pump flow from the maker's curves",
  formula: 'Q = Q(p)·Q_V(V)/Q_V(V_test)',
  symbols: {
    'Q(p)': 'typed flow against pressure',
    Q_V: 'typed flow against voltage',
    V_test: 'voltage of the pressure curve',
  },
  sources: ['TYPED'],
  range: 'within both typed curves',
};
