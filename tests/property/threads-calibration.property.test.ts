import { describe, expect, it } from 'vitest';
import { threadCatalogue } from '../../src/calc/threads/catalogue.ts';
import { identifyThread, type Suspect } from '../../src/calc/threads/identify.ts';
import type { Seat } from '../../src/calc/threads/readings.ts';
import type { Thread } from '../../src/calc/threads/thread.ts';
import { fittingKinds, fittings } from '../../src/tables/fittings.ts';
import { commonWeight } from '../../src/tables/thread-practice.ts';
import { threadTables } from '../../src/tables/threads.ts';

/**
 * Parts drawn the way they turn up, measured the way people do: crests somewhere in the published band but thinner at
 * its ends than in the middle, one bolt in thirty rubbed, the caliper out by an even error, the pitch off a gauge or
 * over a span. The method assumes other shapes (an even band, normal errors), so this is not its own echo.
 */
const RUNS = 6000;

const suspects: readonly Suspect[] = threadCatalogue(threadTables).map((thread) => ({
  thread,
  weight: commonWeight(thread),
  seats: new Set<Seat>(
    fittings
      .filter(({ threadId }) => threadId === thread.id)
      .map(({ kind }) => fittingKinds.get(kind)?.seat ?? 'none'),
  ),
}));

/** Numerical Recipes' quick generator: the same parts on every run. */
function drawing(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

interface Outcome {
  readonly truth: string;
  readonly top: string | undefined;
  readonly probability: number;
  readonly ambiguous: boolean;
  readonly listed: boolean;
}

function simulate(seed: number, withinMm: number): readonly Outcome[] {
  const draw = drawing(seed);
  const total = suspects.reduce((sum, { weight }) => sum + weight, 0);
  const pick = (): Thread => {
    let left = draw() * total;
    for (const { thread, weight } of suspects) {
      left -= weight;
      if (left <= 0) return thread;
    }
    throw new Error('nothing drawn');
  };
  return Array.from({ length: RUNS }, () => {
    const thread = pick();
    const side = draw() < 0.7 ? ('male' as const) : ('female' as const);
    const range = side === 'male' ? thread.limits.major : thread.limits.minor;
    const share = (draw() + draw()) / 2;
    const worn = draw() < 1 / 30 ? draw() * 0.08 : 0;
    const trueMm = range.minMm + share * (range.maxMm - range.minMm) + (side === 'male' ? -worn : worn);
    const diameterMm = trueMm + (draw() * 2 - 1) * withinMm;
    const gauge = draw() < 0.5;
    const pitchError = gauge ? 0.016 * thread.pitchMm : 0.1 / 8;
    const pitchMm = thread.pitchMm + (draw() + draw() - 1) * pitchError;
    const found = identifyThread(suspects, {
      side,
      diameter: { mm: diameterMm, plusMinusMm: withinMm },
      pitch: { mm: pitchMm, plusMinusMm: pitchError },
    });
    const [best] = found.candidates;
    return {
      truth: thread.id,
      top: best?.thread.id,
      probability: best?.probability ?? 0,
      ambiguous: found.ambiguous,
      listed: found.candidates.some((each) => each.thread.id === thread.id),
    };
  });
}

const hitRate = (outcomes: readonly Outcome[]) =>
  outcomes.filter(({ truth, top }) => truth === top).length / outcomes.length;

describe('thousands of measured parts, without taper, angle or seat', () => {
  const outcomes = simulate(20261125, 0.04);

  it('names the thread whenever it says there is no doubt', () => {
    const plain = outcomes.filter(({ ambiguous }) => !ambiguous);
    expect(plain.length).toBeGreaterThan(RUNS * 0.7);
    expect(hitRate(plain)).toBeGreaterThan(0.99);
  });

  it('lists the true thread in all but one in two hundred', () => {
    expect(outcomes.filter(({ listed }) => listed).length / RUNS).toBeGreaterThan(0.995);
  });

  it('is right as often as it says, within a few per cent', () => {
    const bins = [
      [0, 0.7],
      [0.7, 0.9],
      [0.9, 0.98],
      [0.98, 1.01],
    ] as const;
    for (const [from, to] of bins) {
      const held = outcomes.filter(({ probability }) => probability >= from && probability < to);
      expect(held.length, `${from} to ${to}`).toBeGreaterThan(40);
      const said = held.reduce((sum, { probability }) => sum + probability, 0) / held.length;
      // Three standard errors of a rate over that many parts, and two per cent for the shapes that differ.
      const slack = 0.02 + 3 * Math.sqrt((said * (1 - said)) / held.length);
      expect(
        Math.abs(hitRate(held) - said),
        `${from} to ${to}: said ${said}, hit ${hitRate(held)} of ${held.length}`,
      ).toBeLessThan(slack);
    }
  });

  it('does not get better when the caliper gets worse', () => {
    const worse = simulate(20261125, 0.3);
    expect(hitRate(worse)).toBeLessThanOrEqual(hitRate(outcomes));
    expect(worse.filter(({ ambiguous }) => ambiguous).length).toBeGreaterThan(
      outcomes.filter(({ ambiguous }) => ambiguous).length,
    );
  });
});
