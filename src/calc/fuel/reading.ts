import type { Calculation } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { GAUGE_AFR, type Mixture, mixtureOf, readGauge } from './lambda.ts';

/** What a gauge or a log says. */
export interface Reading {
  readonly as: 'lambda' | 'afr';
  readonly value: number;
}

/** What an AFR is counted in: the gauge's own letters, or the fuel in the tank. */
export type FuelScale = 'petrol' | 'fuel';

/** Nearer than this it is a pump petrol, whose gauge counts in petrol. */
const ALIKE_RATIO = 0.03;
/** A mixture that an engine runs on. */
const PLAUSIBLE = { min: 0.62, max: 1.45 } as const;

/**
 * λ of a reading. An AFR with another fuel than petrol can be λ on petrol's scale, as most gauges show it, or the fuel's own
 * ratio: where both are mixtures that an engine runs on, it is asked about and never guessed.
 *
 * @throws UserError 'which-one' about the option `scale`, and as mixtureOf.
 */
export function lambdaOfReading(
  { as, value }: Reading,
  fuel: {
    readonly stoichiometricAfr: number;
    readonly gaugeAfr?: number;
    readonly scale?: FuelScale | undefined;
  },
): Calculation<Mixture & { readonly countedIn: FuelScale }> {
  const { stoichiometricAfr, gaugeAfr = GAUGE_AFR } = fuel;
  if (as === 'lambda') {
    const sum = mixtureOf({ lambdaRatio: value, stoichiometricAfr });
    return { ...sum, value: { ...sum.value, countedIn: 'fuel' } };
  }
  const countedIn = fuel.scale ?? scaleOf(value, stoichiometricAfr, gaugeAfr);
  const sum =
    countedIn === 'petrol'
      ? readGauge({ displayedAfr: value, gaugeAfr, stoichiometricAfr })
      : mixtureOf({ afr: value, stoichiometricAfr });
  return { ...sum, value: { ...sum.value, countedIn } };
}

function scaleOf(value: number, stoichiometricAfr: number, gaugeAfr: number): FuelScale {
  if (Math.abs(stoichiometricAfr / gaugeAfr - 1) < ALIKE_RATIO) return 'petrol';
  const [onGauge, onFuel] = [value / gaugeAfr, value / stoichiometricAfr];
  if (!plausible(onGauge)) return 'fuel';
  throw new UserError(
    'which-one',
    `${value} : 1 with that fuel: on a gauge lettered for petrol it is λ ${onGauge.toFixed(3)}, as the fuel's own ratio λ ${onFuel.toFixed(3)}. Most gauges count in petrol.`,
    {
      field: 'scale',
      choices: [
        { label: `Petrol gauge: λ ${onGauge.toFixed(3)}`, value: 'petrol' },
        { label: `The fuel's own: λ ${onFuel.toFixed(3)}`, value: 'fuel' },
      ],
    },
  );
}

const plausible = (lambdaRatio: number): boolean =>
  lambdaRatio >= PLAUSIBLE.min && lambdaRatio <= PLAUSIBLE.max;
