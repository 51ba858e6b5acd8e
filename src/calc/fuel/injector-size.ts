import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { ccMinFromGs, gsFromCcMin } from './fuel-units.ts';

/** The engine and the set, as both directions of the sum need them. */
export interface InjectorSet {
  readonly injectors: number;
  /** Largest share of the time that they may be open. */
  readonly dutyRatio: number;
  readonly bsfcGPerKwh: number;
  readonly densityKgM3: number;
  /** Share of the engine's power lost before the wheels; 0 when power at the crankshaft is meant. */
  readonly drivelineLossRatio?: number;
}

/**
 * Injector flow for a power: ṁ = P·b, q = ṁ/(n·D·ρ), with P at the crankshaft = P_wheel/(1 − loss).
 *
 * Source: definition of BSFC, Heywood section 2.9 (key HEYWOOD); duty and BSFC are the asker's choice (key COMMON). Valid:
 * 1 to 2000 kW, duty 0.3 to 1, BSFC 150 to 900 g/kWh. Not for: two-stage injection, unequal cylinders.
 * @throws UserError 'out-of-range' outside it.
 */
export function injectorForPower(wanted: InjectorSet & { readonly powerKw: number }): Calculation<{
  readonly crankPowerKw: number;
  readonly fuelFlowGs: number;
  readonly flowGs: number;
  readonly flowCcMin: number;
}> {
  const { powerKw, injectors, dutyRatio, bsfcGPerKwh, densityKgM3, drivelineLossRatio = 0 } = wanted;
  requireSet(wanted);
  requireRange({ what: 'The power', value: powerKw, min: 1, max: 2000, unit: 'kW' });
  const crankPowerKw = powerKw / (1 - drivelineLossRatio);
  const fuelFlowGs = (crankPowerKw * bsfcGPerKwh) / 3600;
  const flowGs = fuelFlowGs / (injectors * dutyRatio);
  return {
    value: { crankPowerKw, fuelFlowGs, flowGs, flowCcMin: ccMinFromGs(flowGs, densityKgM3) },
    assumptions: assumedOf(wanted),
    sources: ['HEYWOOD', 'COMMON'],
    caveats: dutyCaveats(dutyRatio),
  };
}

/**
 * Power that a set of injectors supports: P = n·D·q·ρ/b, the inverse of injectorForPower.
 *
 * Source, range and limits: as injectorForPower (keys HEYWOOD, COMMON); each injector 10 to 10 000 cc/min.
 * @throws UserError 'out-of-range' outside it.
 */
export function powerFromInjectors(set: InjectorSet & { readonly flowCcMin: number }): Calculation<{
  readonly crankPowerKw: number;
  readonly wheelPowerKw: number;
  readonly fuelFlowGs: number;
  readonly flowGs: number;
}> {
  const { flowCcMin, injectors, dutyRatio, bsfcGPerKwh, densityKgM3, drivelineLossRatio = 0 } = set;
  requireSet(set);
  requireRange({ what: 'The injector', value: flowCcMin, min: 10, max: 10_000, unit: 'cc/min' });
  const flowGs = gsFromCcMin(flowCcMin, densityKgM3);
  const fuelFlowGs = flowGs * injectors * dutyRatio;
  const crankPowerKw = (fuelFlowGs * 3600) / bsfcGPerKwh;
  return {
    value: { crankPowerKw, wheelPowerKw: crankPowerKw * (1 - drivelineLossRatio), fuelFlowGs, flowGs },
    assumptions: assumedOf(set),
    sources: ['HEYWOOD', 'COMMON'],
    caveats: dutyCaveats(dutyRatio),
  };
}

export const injectorSizeSheet: SumSheet = {
  title: 'Injector flow for a power, and power of a set',
  formula: 'q = P·b/(n·D·ρ)',
  symbols: {
    P: 'power at the crankshaft; at the wheels divided by (1 − loss), kW',
    b: 'BSFC, g/kWh',
    n: 'number of injectors',
    D: 'largest duty',
    ρ: 'density of the fuel, kg/m³',
    q: 'static flow of one injector, cc/min',
  },
  sources: ['HEYWOOD', 'COMMON'],
  range: '1 to 2000 kW, duty 0.3 to 1, BSFC 150 to 2000 g/kWh',
};

function requireSet(set: InjectorSet): void {
  const { injectors, dutyRatio, bsfcGPerKwh, densityKgM3, drivelineLossRatio = 0 } = set;
  requireRange(
    { what: 'The number of injectors', value: injectors, min: 1, max: 32, unit: '' },
    { what: 'The duty', value: dutyRatio * 100, min: 30, max: 100, unit: '%' },
    { what: 'The fuel per work', value: bsfcGPerKwh, min: 150, max: 2000, unit: 'g/kWh' },
    { what: 'The density', value: densityKgM3, min: 400, max: 1300, unit: 'kg/m³' },
    { what: 'The drive-line loss', value: drivelineLossRatio * 100, min: 0, max: 50, unit: '%' },
  );
}

function assumedOf({ dutyRatio, densityKgM3, drivelineLossRatio = 0 }: InjectorSet): readonly string[] {
  return [
    `duty at most ${Number((dutyRatio * 100).toFixed(1))} %`,
    `density ${Number((densityKgM3 / 1000).toFixed(3))} g/cc`,
    ...(drivelineLossRatio > 0
      ? [`${Number((drivelineLossRatio * 100).toFixed(1))} % lost in the drive line`]
      : []),
  ];
}

const dutyCaveats = (dutyRatio: number): readonly string[] =>
  dutyRatio > 0.9
    ? ['Above 90 % an injector may not close between shots: the mixture goes lean where it hurts most.']
    : [];
