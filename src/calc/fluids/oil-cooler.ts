import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { type LineFlow, lineFlow } from '../fuel/fuel-line.ts';
import { requireRange } from '../require-range.ts';
import { laminarFlow } from './oil-line.ts';

export interface Cooler {
  /** Side by side. */
  readonly tubes: number;
  readonly boreMm: number;
  readonly lengthMm: number;
  readonly densityKgM3: number;
  readonly viscosityMm2S: number;
}

/**
 * Pressure a cooler costs: the drop of one tube at its part of the flow, as lineFlow has it, laminar or turbulent.
 *
 * Source: as lineFlow (key ORIFICE). Valid: 1 to 200 tubes alike, one pass. Not for: tanks, ends and bends, which come on top.
 * @throws UserError 'out-of-range' outside it, and as lineFlow.
 */
export function coolerDrop(cooler: Cooler & { readonly flowCcMin: number }): Calculation<LineFlow> {
  const { tubes, flowCcMin, ...tube } = cooler;
  requireRange({ what: 'The number of tubes', value: tubes, min: 1, max: 200, unit: '' });
  const sum = lineFlow({ ...tube, flowCcMin: flowCcMin / tubes });
  return { ...sum, assumptions: [...sum.assumptions, 'the tubes share the flow evenly, one pass'] };
}

/** Reynolds number (key ORIFICE). */
const LAMINAR_BELOW = 2300;
/** Beyond any flow of oil in a car, cc/min. */
const MOST_CC_MIN = 1e6;
/** Halvings that bring a flow to its twelfth digit. */
const HALVINGS = 60;

/**
 * Flow that a pressure drives through a cooler: by laminarFlow, or where that would be turbulent coolerDrop solved by halving.
 *
 * Source and limits: as there (key ORIFICE). Where laminar flow turns turbulent two flows are near one drop: the smaller is given.
 * @throws UserError 'out-of-range' for a drop below 0.01 or above what 1000 L/min would cost.
 */
export function coolerFlow(
  cooler: Cooler & { readonly dropKpa: number },
): Calculation<LineFlow & { readonly flowCcMin: number }> {
  const { dropKpa, ...rest } = cooler;
  requireRange({ what: 'The pressure drop', value: dropKpa, min: 0.01, max: 2000, unit: 'kPa' });
  const smooth = laminarFlow({
    ...rest,
    dropKpa,
    viscosityMpaS: (rest.viscosityMm2S * rest.densityKgM3) / 1000,
  });
  if (smooth.value.reynolds < LAMINAR_BELOW) return at(smooth.value.flowLMin * 1000 * rest.tubes);
  const dropAt = (flowCcMin: number): number => coolerDrop({ ...rest, flowCcMin }).value.dropKpa;
  let [low, high] = [rest.tubes, MOST_CC_MIN];
  if (dropAt(high) < dropKpa) {
    throw new UserError(
      'out-of-range',
      'So wide a cooler passes more than 1000 L/min at that drop: take a smaller drop, or check the bore.',
    );
  }
  for (let pass = 0; pass < HALVINGS; pass += 1) {
    const middle = (low + high) / 2;
    if (dropAt(middle) < dropKpa) low = middle;
    else high = middle;
  }
  return at(low);

  function at(flowCcMin: number): Calculation<LineFlow & { readonly flowCcMin: number }> {
    const sum = coolerDrop({ ...rest, flowCcMin });
    return { ...sum, value: { ...sum.value, flowCcMin } };
  }
}

export const coolerSheet: SumSheet = {
  title: 'Oil cooler: pressure drop and flow',
  formula: 'Δp = f·(L/d)·ρ·v²/2 with v = 4·Q/(n·π·d²)',
  symbols: {
    n: 'tubes side by side',
    Q: 'flow of oil, cc/min',
    'd, L': 'bore and length of one tube, mm',
    f: "Darcy's friction factor: 64/Re, or after Colebrook",
  },
  sources: ['ORIFICE', 'MEM'],
  range: 'one pass of equal tubes; ends, tanks and bends are not in it',
};
