import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** As much of a plan as chance needs: how many things of each kind there are. */
interface Sized {
  readonly work: readonly unknown[];
  readonly arrivals: readonly unknown[];
}

/** Chance for one plan: the same share for the same thing in every run, whatever else is changed in the plan. */
export interface Chances {
  readonly runs: number;
  readonly ofWork: readonly Float64Array[];
  readonly ofArrivals: readonly Float64Array[];
}

const [LEAST_RUNS, MOST_RUNS, ALL_DRAWS] = [200, 2_000, 160_000];

/** How often a plan is run through: 2000 times, fewer for a large one so that it is answered at once, never under 200. */
export function runsFor({ work, arrivals }: Sized): number {
  const affordable = Math.floor(ALL_DRAWS / (work.length + arrivals.length + 1));
  return Math.min(MOST_RUNS, Math.max(LEAST_RUNS, affordable));
}

/** Draws chance once, by a generator of Blackman and Vigna (key XOROSHIRO); the same seed draws the same. */
export function drawChances(plan: Sized, seed: number, runs: number): Chances {
  const random = xoroshiro128plus(seed);
  const column = (): Float64Array => {
    const shares = new Float64Array(runs);
    for (let run = 0; run < runs; run += 1) shares[run] = (random.next() >>> 0) / 2 ** 32;
    return shares;
  };
  return { runs, ofWork: plan.work.map(column), ofArrivals: plan.arrivals.map(column) };
}
