import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { pulseForFuel } from './injector-pulse.ts';

export interface IdlePulse {
  readonly effectiveS: number;
  readonly pulseS: number;
  /** Pulse needed over the smallest stable one; below 1 it cannot be held. */
  readonly marginRatio: number;
  readonly feasible: boolean;
  /** The largest injector that would still idle at that speed and load. */
  readonly largestFlowGs: number;
}

/** Below this the mixture still wanders when the battery or the temperature moves; common practice. */
export const COMFORTABLE_MARGIN = 1.2;

/**
 * Whether an injector can be held at idle: t = m_f/q + t_dead against the smallest pulse it repeats, and
 * q_max = m_f/(t_min − t_dead).
 *
 * Source: straight-line injector; the smallest stable pulse is the maker's or measured (keys HEYWOOD, COMMON). Valid: a
 * smallest pulse longer than the dead time. Not for: controllers that model the curved part of short pulses.
 * @throws UserError 'out-of-range' outside it.
 */
export function idlePulse(idle: {
  readonly fuelG: number;
  readonly staticFlowGs: number;
  readonly deadTimeS: number;
  /** As the controller commands it, dead time included. */
  readonly smallestPulseS: number;
}): Calculation<IdlePulse> {
  const { fuelG, deadTimeS, smallestPulseS } = idle;
  const { value, assumptions, sources } = pulseForFuel(idle);
  requireRange({
    what: 'The smallest stable pulse',
    value: smallestPulseS * 1000,
    min: deadTimeS * 1000 + 0.01,
    max: 20,
    unit: 'ms',
  });
  const marginRatio = value.pulseS / smallestPulseS;
  return {
    value: {
      ...value,
      marginRatio,
      feasible: marginRatio >= 1,
      largestFlowGs: fuelG / (smallestPulseS - deadTimeS),
    },
    assumptions: [
      ...assumptions,
      `smallest stable pulse ${Number((smallestPulseS * 1000).toFixed(3))} ms, dead time included`,
    ],
    sources,
    caveats:
      marginRatio >= 1 && marginRatio < COMFORTABLE_MARGIN
        ? [
            'Less than 20 % above the smallest pulse: idle will wander with battery voltage and fuel temperature.',
          ]
        : [],
  };
}

export const idlePulseSheet: SumSheet = {
  title: 'Idle with a given injector',
  formula: 't = m_f/q + t_dead ≥ t_min; q_max = m_f/(t_min − t_dead)',
  symbols: {
    m_f: 'fuel of one shot at idle, g',
    q: 'static flow, g/s',
    t_dead: 'dead time, s',
    t_min: 'smallest stable pulse, dead time included, s',
  },
  sources: ['HEYWOOD', 'COMMON'],
  range: 'one shot per cycle; the smallest stable pulse is typed, not computed',
};
