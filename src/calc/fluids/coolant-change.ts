import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';

const share = (what: string, value: number) =>
  ({ what, value, min: 0, max: 1, unit: '', shown: 'percent' }) as const;
const system = (value: number) =>
  ({ what: 'The volume of the system', value, min: 0.2, max: 200, unit: 'L' }) as const;

const MIXED: Pick<Calculation<unknown>, 'assumptions' | 'sources' | 'caveats'> = {
  assumptions: ['well mixed before draining; shares by volume'],
  sources: ['DEFINITION'],
  caveats: [
    'Drain cold, catch all of it: glycol poisons people, pets and water, and is waste by law in most places. Do not mix coolants that their makers do not allow together.',
  ],
};

/**
 * Share after draining part and filling up: c2 = c1·(1 − d/V) + c_n·d/V.
 *
 * Source: balance of volumes (key DEFINITION). Valid: 0.2 to 200 L, well mixed.
 * @throws UserError 'out-of-range' outside it, or when more is drained than there is.
 */
export function drainAndFill(change: {
  readonly systemL: number;
  readonly fromRatio: number;
  readonly drainedL: number;
  readonly freshRatio: number;
}): Calculation<{ readonly shareRatio: number }> {
  const { systemL, fromRatio, drainedL, freshRatio } = change;
  requireRange(
    system(systemL),
    share('The share now', fromRatio),
    share('The share of what is filled in', freshRatio),
    { what: 'What is drained', value: drainedL, min: 0, max: systemL, unit: 'L' },
  );
  const part = drainedL / systemL;
  return { ...MIXED, value: { shareRatio: fromRatio * (1 - part) + freshRatio * part } };
}

/**
 * What to drain and replace to reach a share: d = V·(c_t − c1)/(c_n − c1), the inverse of drainAndFill.
 *
 * Source and limits: as there (key DEFINITION).
 * @throws UserError 'out-of-range' when what is filled in cannot bring it there.
 */
export function drainNeeded(change: {
  readonly systemL: number;
  readonly fromRatio: number;
  readonly toRatio: number;
  readonly freshRatio: number;
}): Calculation<{ readonly drainL: number }> {
  const { systemL, fromRatio, toRatio, freshRatio } = change;
  requireRange(
    system(systemL),
    share('The share now', fromRatio),
    share('The share wanted', toRatio),
    share('The share of what is filled in', freshRatio),
  );
  if (toRatio === fromRatio) return { ...MIXED, value: { drainL: 0 } };
  const part = (toRatio - fromRatio) / (freshRatio - fromRatio);
  if (!(part >= 0 && part <= 1)) {
    const [least, most] = [Math.min(fromRatio, freshRatio), Math.max(fromRatio, freshRatio)];
    throw new UserError(
      'out-of-range',
      `Filling in ${percent(freshRatio)} cannot bring ${percent(fromRatio)} to ${percent(toRatio)}: anything from ${percent(least)} to ${percent(most)} can be reached. Fill in another share.`,
    );
  }
  return { ...MIXED, value: { drainL: systemL * part } };
}

/**
 * Old fluid left after partial changes: (1 − d/V)^n.
 *
 * Source: balance of volumes (key DEFINITION). Valid: 1 to 20 changes, well mixed between them.
 * @throws UserError 'out-of-range' outside it.
 */
export function oldLeft(change: {
  readonly systemL: number;
  readonly drainedL: number;
  readonly changes: number;
}): Calculation<{ readonly oldRatio: number }> {
  const { systemL, drainedL, changes } = change;
  requireRange(
    system(systemL),
    { what: 'What is drained', value: drainedL, min: 0, max: systemL, unit: 'L' },
    { what: 'The number of changes', value: changes, min: 1, max: 20, unit: '' },
  );
  return { ...MIXED, value: { oldRatio: (1 - drainedL / systemL) ** changes } };
}

/**
 * Share of two mixtures together: c = (V1·c1 + V2·c2)/(V1 + V2).
 *
 * Source: balance of volumes (key DEFINITION). Valid: 0.01 to 200 L each.
 * @throws UserError 'out-of-range' outside it.
 */
export function mixTwo(
  one: { readonly volumeL: number; readonly shareRatio: number },
  other: { readonly volumeL: number; readonly shareRatio: number },
): Calculation<{ readonly shareRatio: number; readonly volumeL: number }> {
  for (const { volumeL, shareRatio } of [one, other]) {
    requireRange(
      { what: 'The volume', value: volumeL, min: 0.01, max: 200, unit: 'L' },
      share('The share', shareRatio),
    );
  }
  const volumeL = one.volumeL + other.volumeL;
  return {
    ...MIXED,
    value: {
      volumeL,
      shareRatio: (one.volumeL * one.shareRatio + other.volumeL * other.shareRatio) / volumeL,
    },
  };
}

/**
 * Glycol for a share by mass of a full system: V_g = V/(1 + s·(1 − w)/w), s its density over water's.
 *
 * Source: balance of masses (key DEFINITION); the contraction on mixing is left out. Valid: w 0.01 to 1, s 0.8 to 1.3.
 * @throws UserError 'out-of-range' outside it.
 */
export function glycolForMassShare(fill: {
  readonly systemL: number;
  readonly massRatio: number;
  readonly relativeDensity: number;
}): Calculation<{ readonly glycolL: number }> {
  const { systemL, massRatio, relativeDensity } = fill;
  requireRange(
    { what: 'The volume of the system', value: systemL, min: 0.2, max: 10_000, unit: 'L' },
    { what: 'The share by mass', value: massRatio, min: 0.01, max: 1, unit: '', shown: 'percent' },
    { what: 'The density over water', value: relativeDensity, min: 0.8, max: 1.3, unit: '' },
  );
  return {
    ...MIXED,
    value: { glycolL: systemL / (1 + (relativeDensity * (1 - massRatio)) / massRatio) },
  };
}

/**
 * Volume of a system from a change that was measured: V = d·(c_n − c1)/(c2 − c1), drainAndFill solved for it.
 *
 * Source: balance of volumes (key DEFINITION). Valid: shares at least 0.02 apart, run warm until well mixed.
 * @throws UserError 'out-of-range' when the shares are too near, or do not fit together.
 */
export function systemVolume(change: {
  readonly drainedL: number;
  readonly fromRatio: number;
  readonly afterRatio: number;
  readonly freshRatio: number;
}): Calculation<{ readonly systemL: number; readonly perPercentL: number }> {
  const { drainedL, fromRatio, afterRatio, freshRatio } = change;
  requireRange(
    { what: 'What is drained', value: drainedL, min: 0.1, max: 200, unit: 'L' },
    share('The share before', fromRatio),
    share('The share after', afterRatio),
    share('The share of what is filled in', freshRatio),
  );
  const moved = (afterRatio - fromRatio) / (freshRatio - fromRatio);
  if (!(Math.abs(afterRatio - fromRatio) >= 0.02 && moved > 0 && moved <= 1)) {
    throw new UserError(
      'out-of-range',
      `Filling in ${percent(freshRatio)} cannot have moved ${percent(fromRatio)} to ${percent(afterRatio)} measurably: the share after must lie between the two, at least 2 % from the first.`,
    );
  }
  const systemL = drainedL / moved;
  return {
    ...MIXED,
    value: { systemL, perPercentL: (systemL * 0.01) / Math.abs(afterRatio - fromRatio) },
  };
}

export const coolantChangeSheet: SumSheet = {
  title: 'Draining and filling to a share',
  formula:
    'c2 = c1·(1 − d/V) + c_n·d/V; d = V·(c_t − c1)/(c_n − c1); old = (1 − d/V)^n; V = d·(c_n − c1)/(c2 − c1); V_g = V/(1 + s·(1 − w)/w)',
  symbols: {
    'c1, c2, c_t, c_n': 'share now, after, wanted, and of what is filled in',
    'd, V': 'drained and system volume, L',
    w: 'share by mass',
    s: 'density of the glycol over that of water',
  },
  sources: ['DEFINITION'],
  range: 'well mixed; contraction on mixing left out',
};

const percent = (ratio: number): string => `${Number((ratio * 100).toFixed(1))} %`;
