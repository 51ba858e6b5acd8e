import { type Bottle, type FluidCase, lackingL, plainGrade } from './fluid.ts';

/** What one case still takes, and how much of it the shelf holds for it. */
export interface Share {
  readonly fluidCase: FluidCase;
  readonly lackingL: number;
  /** Out of the bottles of its grade, which serve the cases in turn: no litre is counted for two. */
  readonly fromShelfL: number;
}

/** A grade with all its cases and bottles together. Litres throughout. */
export interface GradeBudget {
  readonly grade: string;
  readonly shares: readonly Share[];
  readonly bottles: readonly Bottle[];
  readonly neededL: number;
  readonly shelfL: number;
  /** What must be bought: needed and not on the shelf. */
  readonly shortL: number;
}

/** A drop, in litres: what sums of decimal litres are off by is no shortage. */
const DROP_L = 1e-6;

/**
 * What is needed of each grade against what is on the shelf, bottles of one grade serving every case of it. Grades that are
 * only on the shelf come last.
 *
 * Holds: Σ fromShelf = min(needed, shelf); short = needed − Σ fromShelf.
 */
export function fluidBudget(cases: readonly FluidCase[], bottles: readonly Bottle[]): readonly GradeBudget[] {
  const byGrade = Map.groupBy(cases, ({ grade }) => plainGrade(grade));
  const shelf = Map.groupBy(bottles, ({ grade }) => plainGrade(grade));
  const keys = new Set([...byGrade.keys(), ...shelf.keys()]);
  return [...keys].map((key) => budgetOf(byGrade.get(key) ?? [], shelf.get(key) ?? []));
}

function budgetOf(cases: readonly FluidCase[], bottles: readonly Bottle[]): GradeBudget {
  const shelfL = bottles.reduce((sum, { leftL }) => sum + leftL, 0);
  let free = shelfL;
  const shares = cases.map((fluidCase): Share => {
    const lacking = lackingL(fluidCase);
    const fromShelfL = Math.min(lacking, free);
    free -= fromShelfL;
    return { fluidCase, lackingL: lacking, fromShelfL };
  });
  const neededL = shares.reduce((sum, share) => sum + share.lackingL, 0);
  const short = neededL - shelfL;
  return {
    grade: cases[0]?.grade ?? bottles[0]?.grade ?? '',
    shares,
    bottles,
    neededL,
    shelfL,
    shortL: short > DROP_L ? short : 0,
  };
}

/** How many bottles of what size make up what is short: of the size bought last, else of one litre. */
export function bottlesToBuy({ shortL, bottles }: GradeBudget): {
  readonly count: number;
  readonly sizeL: number;
} {
  const sizeL = bottles.toSorted((a, b) => a.id - b.id).at(-1)?.sizeL ?? 1;
  return { count: Math.max(1, Math.ceil(shortL / sizeL - DROP_L)), sizeL };
}
