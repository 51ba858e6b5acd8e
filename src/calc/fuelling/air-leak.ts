import { flowOf } from './delay.ts';
import type { Suspicion, SuspicionQuestion } from './suspicion.ts';

/** Up to this flow, as a multiple of that at 1000 rpm and 40 kPa, a leak is worth looking for. */
const LITTLE_FLOW = 3;
/** An engine at idle passes no more than this. */
const IDLE_FLOW = 1.5;
/** So lean at the least flow, against where air is plentiful. */
const LEAN_RATIO = 0.09;
/** So well must 1/flow explain it, and so much must it come to in a cell that is left alone. */
const EXPLAINED = 0.6;
const TOUCHED_RATIO = 0.03;
const MOST_DEVIATION = 0.03;

/**
 * Air that comes in uncounted is much where little air flows and next to nothing where much does: the multipliers grow with
 * 1/flow. So does air drawn in before the sensor. A fuel table that is wrong need not. Common practice, no source; a suspicion.
 */
export function airLeak(
  { axes, fit }: SuspicionQuestion,
  spoilt: ReadonlySet<number>,
): Suspicion | undefined {
  const speeds = axes.speedRpm.length;
  const known = [...fit.multiplier.entries()].flatMap(([cell, multiplier]) => {
    const deviation = fit.deviation[cell] ?? Number.NaN;
    if (!(deviation < MOST_DEVIATION) || spoilt.has(cell)) return [];
    const [loadKPa, speedRpm] = [
      axes.loadKPa[Math.floor(cell / speeds)] ?? 0,
      axes.speedRpm[cell % speeds] ?? 0,
    ];
    return [
      {
        cell,
        multiplier,
        loadKPa,
        speedRpm,
        flow: flowOf(speedRpm, loadKPa),
        weight: fit.seconds[cell] ?? 0,
      },
    ];
  });
  const little = known.filter(({ flow }) => flow <= LITTLE_FLOW);
  const plenty = known.filter(({ flow }) => flow > LITTLE_FLOW).map(({ multiplier }) => multiplier);
  const base = plenty.length >= 3 ? median(plenty) : 1;
  const least = little.reduce((a, b) => (b.flow < a.flow ? b : a), little[0] ?? { flow: 1 });
  let [across, own, before] = [0, 0, 0];
  for (const { multiplier, flow, weight } of little) {
    const share = Math.sqrt(weight);
    across += (share * (multiplier - base)) / flow;
    own += share / flow ** 2;
    before += share * (multiplier - base) ** 2;
  }
  if (own === 0 || least.flow > IDLE_FLOW) return undefined;
  const leak = across / own;
  const explained = (leak * across) / before;
  const leanRatio = leak / least.flow;
  if (leanRatio < LEAN_RATIO || explained < EXPLAINED) return undefined;
  // where only one place is known, nothing tells a leak from a lean table: it must be lean indeed
  if (little.length < 3 && leanRatio < 1.5 * LEAN_RATIO) return undefined;
  const worst = little.reduce((a, b) => (b.multiplier > a.multiplier ? b : a));
  return {
    kind: 'air-leak',
    cells: little.filter(({ flow }) => leak / flow >= TOUCHED_RATIO).map(({ cell }) => cell),
    loadKPa: worst.loadKPa,
    speedRpm: worst.speedRpm,
    leanRatio: worst.multiplier - base,
  };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 1;
}
