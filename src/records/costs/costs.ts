import { type Arrival, type Money, type Order, standing } from '../orders/order.ts';
import type { KnownStanding } from '../parts/standings.ts';
import type { Purchase } from '../purchases/purchase.ts';

export const COST_STATES = ['spent', 'committed', 'to come', 'refunded'] as const;
export type CostState = (typeof COST_STATES)[number];

/** An amount of money and what it went, or will go, for. */
export interface Cost extends Money {
  readonly state: CostState;
  readonly what: string;
  readonly supplier: string | null;
  readonly system: string | null;
  /** `2026-11`: when it came or is promised; null for what is not ordered yet. */
  readonly month: string | null;
}

export interface CostFacts {
  /** Every order of the build, cancelled ones too. */
  readonly orders: readonly Order[];
  readonly purchases: readonly Purchase[];
  readonly standings: readonly KnownStanding[];
}

/**
 * What a build costs, amount by amount. Spent is what has come, committed what is still to come, refunded what was given
 * back; a part's price is shared out over its pieces so that the shares add up to the price. To come are parts that are
 * missing, at the price the crew guessed.
 */
export function costsOf({ orders, purchases, standings }: CostFacts): readonly Cost[] {
  const systems = new Map(standings.map(({ part }) => [part.id, part.system]));
  const lines = Map.groupBy(orders, ({ purchaseId }) => purchaseId);
  return [
    ...orders.flatMap((order) => orderCosts(order, systems.get(order.partId ?? 0) ?? null)),
    ...purchases.flatMap((purchase) => carriageCosts(purchase, lines.get(purchase.id) ?? [])),
    ...standings.flatMap(guessedCosts),
  ];
}

/** Missing parts for which nobody has guessed a price. */
export const unguessed = (standings: readonly KnownStanding[]): number =>
  standings.filter(({ missing, part }) => missing > 0 && part.guess === null).length;

function orderCosts(order: Order, system: string | null): readonly Cost[] {
  const { price, quantity, what, supplier, arrivals } = order;
  if (price === null) return [];
  const costs: Cost[] = [];
  let [pieces, shared] = [0, 0];
  /** The next so many pieces' share of the price; rounded so that all shares add up. */
  const share = (count: number, state: CostState, month: string): void => {
    if (count === 0) return;
    pieces += count;
    const upTo = Math.round((price.minor * pieces) / quantity);
    costs.push({ minor: upTo - shared, currency: price.currency, state, what, supplier, system, month });
    shared = upTo;
  };
  for (const arrival of arrivals) {
    if (arrival.settlement !== 'replaced') share(arrival.quantity, stateOf(arrival), monthOf(arrival.cameOn));
  }
  if (!order.cancelled) share(standing(order).outstanding, 'committed', monthOf(order.promisedOn));
  return costs;
}

/** What came wrong and is still to be settled has been paid for all the same. */
const stateOf = ({ settlement }: Arrival): CostState => (settlement === 'refunded' ? 'refunded' : 'spent');

/** Carriage is spent with the first line that came; it goes with an order that was cancelled whole. */
function carriageCosts({ carriage, orderedOn }: Purchase, lines: readonly Order[]): readonly Cost[] {
  if (carriage === null) return [];
  const came = lines.flatMap(({ arrivals }) => arrivals.map(({ cameOn }) => cameOn)).toSorted()[0];
  if (came === undefined && lines.every(({ cancelled }) => cancelled)) return [];
  const supplier = lines[0]?.supplier ?? null;
  const state = came === undefined ? 'committed' : 'spent';
  return [
    { ...carriage, state, what: 'carriage', supplier, system: 'carriage', month: monthOf(came ?? orderedOn) },
  ];
}

function guessedCosts({ part, missing }: KnownStanding): readonly Cost[] {
  if (missing === 0 || part.guess === null) return [];
  const { minor, currency } = part.guess;
  return [
    {
      minor: minor * missing,
      currency,
      state: 'to come',
      what: part.name,
      supplier: null,
      system: part.system,
      month: null,
    },
  ];
}

const monthOf = (day: string): string => day.slice(0, 7);

/** What was spent, is committed and will come, in one currency. Refunds are in none of them. */
export type Sums = Readonly<Record<CostState, number>> & { readonly currency: string };

/** Adds up by currency. */
export function sumsOf(costs: readonly Cost[]): readonly Sums[] {
  return [...Map.groupBy(costs, ({ currency }) => currency)]
    .map(([currency, own]) => ({
      currency,
      spent: total(own, 'spent'),
      committed: total(own, 'committed'),
      'to come': total(own, 'to come'),
      refunded: total(own, 'refunded'),
    }))
    .toSorted((a, b) => (a.currency < b.currency ? -1 : 1));
}

const total = (costs: readonly Cost[], state: CostState): number =>
  costs.reduce((sum, cost) => (cost.state === state ? sum + cost.minor : sum), 0);
