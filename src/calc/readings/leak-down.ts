import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/**
 * Leak-down from two gauges before and after a fixed orifice: L = (p_s − p_c)/p_s.
 *
 * Source: definition (key DEFINITION); the orifice decides what a share means, so testers differ. Valid: supply 50 to 1500 kPa, the
 * cylinder 0 to the supply. Not for: comparing readings of testers with other orifices.
 * @throws UserError 'out-of-range' outside it.
 */
export function leakDown(test: {
  readonly supplyKpa: number;
  readonly cylinderKpa: number;
}): Calculation<{ readonly leakRatio: number }> {
  const { supplyKpa, cylinderKpa } = test;
  requireRange(
    { what: 'The supply', value: supplyKpa, min: 50, max: 1500, unit: 'kPa' },
    { what: 'The pressure held', value: cylinderKpa, min: 0, max: supplyKpa, unit: 'kPa' },
  );
  return {
    value: { leakRatio: (supplyKpa - cylinderKpa) / supplyKpa },
    assumptions: [
      'at top dead centre of the firing stroke; the orifice of the tester decides what a share means',
    ],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

export const leakDownSheet: SumSheet = {
  title: 'Leak-down from two gauges',
  formula: 'L = (p_s − p_c)/p_s',
  symbols: { L: 'leak', p_s: 'supply, by gauge', p_c: 'held by the cylinder, by gauge' },
  sources: ['DEFINITION'],
  range: 'one tester, cylinder at top dead centre; usual limits are common practice',
};

/** Where air is heard, and what lets it through. Common practice, no source. */
export const HISSES = {
  'air intake': 'an intake valve or its seat',
  exhaust: 'an exhaust valve or its seat',
  'oil filler': 'piston rings, piston or bore',
  coolant: 'the head gasket, or a crack in head or block: bubbles in the coolant',
  'next cylinder': 'the head gasket between the two',
} as const;

export type Hiss = keyof typeof HISSES;
