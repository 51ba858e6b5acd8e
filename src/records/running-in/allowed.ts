import { ceilingAt, roundedDown, shareOfSpeed } from '../../calc/running-in/ceiling.ts';
import { fromBase } from '../../calc/units/convert.ts';
import { sayFigure } from '../../calc/units/say.ts';
import { type Progress, runOf } from './progress.ts';
import type { Ceiling, RunInPlan } from './run-in.ts';
import { sayRun } from './say-run-in.ts';

/** How the engine may be driven today. */
export interface Allowed {
  /** Rounded down to 50; null where the plan says nothing of it. */
  readonly mostRpm: number | null;
  readonly boostRatio: number | null;
  readonly mostBoostKPa: number | null;
  readonly load: string;
  /** In the plan's measure, from the first start. */
  readonly at: number;
  /** Whether `at` was read, or taken as the first start since nothing was read yet. */
  readonly known: boolean;
  /** When it next changes; null when running in is over by its ceilings. */
  readonly until: number | null;
}

/** @returns null for a plan without ceilings. */
export function allowedNow(plan: RunInPlan, progress: Progress): Allowed | null {
  const run = runOf(plan.measure, progress);
  const at = run ?? 0;
  const now = ceilingAt(plan.ceilings, at);
  if (now === null) return null;
  const { boostRatio } = now;
  return {
    mostRpm: rpmOf(plan, now),
    boostRatio,
    mostBoostKPa: boostRatio === null || plan.boostKPa === null ? null : boostRatio * plan.boostKPa,
    load: now.load,
    at,
    known: run !== null,
    until: now.until?.at ?? null,
  };
}

/** By its share where the engine's limit is known, else the plain figure; the lower of two. */
export function rpmOf(
  { limitRpm }: Pick<RunInPlan, 'limitRpm'>,
  { speedRatio, speedRpm }: Pick<Ceiling, 'speedRatio' | 'speedRpm'>,
): number | null {
  if (limitRpm !== null && speedRatio !== null)
    return roundedDown(shareOfSpeed({ limitRpm, ratio: speedRatio }));
  if (speedRpm === null) return null;
  return roundedDown(limitRpm === null ? speedRpm : Math.min(speedRpm, limitRpm));
}

/** "3750 rpm at most, half the boost (0.6 bar), up to half load; until 150 km". */
export function sayAllowed(plan: RunInPlan, allowed: Allowed): string {
  const { mostRpm, until, load } = allowed;
  const parts = [
    mostRpm === null ? undefined : `${sayFigure(mostRpm, 'rpm')} at most`,
    sayBoost(allowed),
    load,
  ].filter((part) => part !== undefined);
  const end = until === null ? '' : `; until ${sayRun(until, plan.measure)}`;
  return `${parts.join(', ')}${end}`;
}

function sayBoost({ boostRatio, mostBoostKPa }: Allowed): string | undefined {
  if (boostRatio === null) return undefined;
  if (boostRatio === 0) return 'no boost';
  if (boostRatio >= 1) return 'full boost';
  // down, like the speed: nobody is to be allowed more for rounding
  const share = `${Math.floor(boostRatio * 100 + 1e-9)} % of the boost`;
  return mostBoostKPa === null
    ? share
    : `${share} (${sayFigure(Math.floor(fromBase(mostBoostKPa, 'bar') * 100 + 1e-9) / 100, 'bar', 3)})`;
}
