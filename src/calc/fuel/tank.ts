import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';

/** Litres of a fuel and the share of its volume that is alcohol. */
export interface Fill {
  readonly volumeL: number;
  readonly alcoholRatio: number;
}

/**
 * Alcohol in a tank after topping up: x = (V₁·x₁ + V₂·x₂)/(V₁ + V₂).
 *
 * Source: balance of volume. Valid: 0 to 1000 L each. Not for: what is left in lines and filter, which lags a tank behind.
 * @throws UserError 'out-of-range' outside it, or for an empty tank.
 */
export function mixTank(first: Fill, second: Fill): Calculation<Fill> {
  requireFill(first);
  requireFill(second);
  const volumeL = first.volumeL + second.volumeL;
  requireRange({ what: 'The whole', value: volumeL, min: 0.01, max: 2000, unit: 'L' });
  const alcoholL = first.volumeL * first.alcoholRatio + second.volumeL * second.alcoholRatio;
  return {
    value: { volumeL, alcoholRatio: alcoholL / volumeL },
    assumptions: ['well mixed; lines and filter still hold the old fuel'],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

/**
 * Litres to add for a wanted share: V₂ = V₁·(x − x₁)/(x₂ − x), the inverse of mixTank.
 *
 * @throws UserError 'out-of-range' when the fuel added cannot bring the tank there.
 */
export function topUpFor(asked: {
  readonly inTank: Fill;
  readonly addedAlcoholRatio: number;
  readonly wantedAlcoholRatio: number;
}): Calculation<{ readonly addL: number }> {
  const { inTank, addedAlcoholRatio, wantedAlcoholRatio } = asked;
  requireFill(inTank);
  const [from, to, wanted] = [inTank.alcoholRatio, addedAlcoholRatio, wantedAlcoholRatio];
  if ((wanted - from) * (to - wanted) <= 0) {
    throw new UserError(
      'out-of-range',
      `Between ${percent(from)} in the tank and ${percent(to)} added there is no ${percent(wanted)}. Drain some, or add another fuel.`,
    );
  }
  return {
    value: { addL: (inTank.volumeL * (wanted - from)) / (to - wanted) },
    assumptions: ['well mixed; lines and filter still hold the old fuel'],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

export const tankSheet: SumSheet = {
  title: 'Alcohol share of a topped-up tank',
  formula: 'x = (V₁·x₁ + V₂·x₂)/(V₁ + V₂)',
  symbols: { 'V₁, V₂': 'litres in the tank and added', 'x₁, x₂, x': 'shares of alcohol by volume' },
  sources: ['HEYWOOD'],
  range: '0 to 1000 L each',
};

function requireFill({ volumeL, alcoholRatio }: Fill): void {
  requireRange(
    { what: 'The volume', value: volumeL, min: 0, max: 1000, unit: 'L' },
    { what: 'The share of alcohol', value: alcoholRatio, min: 0, max: 1, unit: '', shown: 'percent' },
  );
}

const percent = (ratio: number): string => `${Number((ratio * 100).toFixed(1))} %`;
