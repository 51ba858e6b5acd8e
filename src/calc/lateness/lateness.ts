/**
 * How late a supplier's orders come, in working days, learnt from what came and from what is still awaited.
 *
 * Model: each order comes on the promised day or d = 0, 1, 2 … working days after it, with the same chance p each day,
 * P(d) = p·(1−p)^d; p differs between suppliers as a beta distribution B(α, β). Then what is known of one supplier is again
 * a beta distribution, α = k + 1 + n, β = k·m + Σd + Σw, for n orders that came d days late and others that are w days late
 * and have not come. The lateness to expect, β/(α−1) = (k·m + Σd + Σw)/(k + n), is the supplier's own average drawn
 * towards the team's average m, which weighs as much as k orders (credibility, key BUHLMANN).
 *
 * Source: beta-geometric waiting times, key BETAGEO. Not modelled: early orders count as on time; suppliers that come
 * late by always the same get a wider range than they deserve.
 */
export interface Lateness {
  readonly alpha: number;
  readonly beta: number;
  /** Orders of this supplier that have come. */
  readonly orders: number;
  /** Orders of this supplier that are late now and have not come. */
  readonly waiting: number;
}

/** Working days late, each 0 or more. */
export interface LatenessSeen {
  readonly came: readonly number[];
  readonly waiting: readonly number[];
}

/** The team's average and how many of a supplier's own orders it weighs. */
export interface TeamLateness {
  readonly meanDays: number;
  readonly weightOrders: number;
  readonly orders: number;
}

/** Before anything has come: four tenths of a day, weighing two orders. Our own choice, no source. */
const START = { meanDays: 0.4, orders: 2 } as const;

/**
 * How many orders the team weighs while its suppliers cannot be compared yet, and the least and most; and what it takes to
 * compare them: so many suppliers, and so many orders beyond the first of each. Our own choice.
 */
const WEIGHT = { unknown: 4, least: 1, most: 20, suppliers: 3, orders: 10 } as const;

/** An order later than a working year tells no more than one that is a year late. */
const MOST_DAYS = 250;

/**
 * What all suppliers of a team have in common.
 *
 * The weight is k = s²/v: the variance within suppliers over that between them, by the moments of Bühlmann and Straub
 * (key BUHLMANN): s² = ΣΣ(d − d̄ᵢ)²/Σ(nᵢ−1), v = (Σnᵢ(d̄ᵢ−d̄)² − (I−1)·s²)/(N − Σnᵢ²/N). Suppliers that do not differ get
 * the most weight, 20; with fewer than 3 suppliers, or 10 orders beyond the first of each, it is 4.
 */
export function teamLateness(suppliers: readonly LatenessSeen[]): TeamLateness {
  const came = suppliers.flatMap((seen) => seen.came.map(capped));
  const waiting = suppliers.flatMap((seen) => seen.waiting.map(capped));
  const days = sum(came) + sum(waiting) + START.meanDays * START.orders;
  return {
    meanDays: days / (came.length + START.orders),
    weightOrders: weightOf(suppliers.map((seen) => seen.came.map(capped)).filter((own) => own.length > 0)),
    orders: came.length,
  };
}

function weightOf(groups: readonly (readonly number[])[]): number {
  const all = groups.flat();
  const spare = all.length - groups.length;
  if (groups.length < WEIGHT.suppliers || spare < WEIGHT.orders) return WEIGHT.unknown;
  const total = mean(all);
  const within = sum(groups.map((own) => sum(own.map((d) => (d - mean(own)) ** 2)))) / spare;
  const spread = sum(groups.map((own) => own.length * (mean(own) - total) ** 2));
  const divisor = all.length - sum(groups.map((own) => own.length ** 2)) / all.length;
  const between = (spread - (groups.length - 1) * within) / divisor;
  if (between <= 0) return WEIGHT.most;
  return Math.min(WEIGHT.most, Math.max(WEIGHT.least, within / between));
}

/** What is known of one supplier. */
export function supplierLateness(own: LatenessSeen, team: TeamLateness): Lateness {
  const { meanDays, weightOrders: k } = team;
  return {
    alpha: k + 1 + own.came.length,
    beta: k * meanDays + sum(own.came.map(capped)) + sum(own.waiting.map(capped)),
    orders: own.came.length,
    waiting: own.waiting.length,
  };
}

/** Working days still to be waited from the promised day, or from today for what is late already. */
export interface Wait {
  /** The mean, β/(α−1). */
  readonly meanDays: number;
  /** The fewest within which nine of ten come. */
  readonly latestDays: number;
}

/**
 * How long beyond its day an order of this supplier is likely to take: P(more than w) = Π (β+i)/(α+β+i), i = 0 … w.
 * Waiting has no memory but what it teaches about p, so the same holds for an order counted among the waiting ones.
 */
export function waitBeyond({ alpha, beta }: Pick<Lateness, 'alpha' | 'beta'>): Wait {
  let later = beta / (alpha + beta);
  let days = 0;
  while (later > 0.1 && days < MOST_DAYS) {
    days += 1;
    later *= (beta + days) / (alpha + beta + days);
  }
  return { meanDays: beta / (alpha - 1), latestDays: days };
}

const capped = (days: number): number => Math.min(MOST_DAYS, Math.max(0, days));
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]): number => sum(values) / values.length;
