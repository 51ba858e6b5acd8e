import { decimalsOf } from '../orders/say-order.ts';
import type { Cost } from './costs.ts';
import type { Rate } from './rate-store.ts';

/**
 * An amount in another currency at the crew's rates, one way or the other; undefined where no rate joins the two.
 *
 * @returns minor units of `to`, rounded half away from nothing
 */
export function inCurrency(
  { minor, currency }: Pick<Cost, 'minor' | 'currency'>,
  to: string,
  rates: readonly Rate[],
): number | undefined {
  if (currency === to) return minor;
  const scale = 10 ** (decimalsOf(to) - decimalsOf(currency));
  const there = rates.find((rate) => rate.from === currency && rate.to === to);
  const back = rates.find((rate) => rate.from === to && rate.to === currency);
  const rate = there?.rate ?? (back === undefined ? undefined : 1 / back.rate);
  return rate === undefined ? undefined : Math.round(minor * rate * scale);
}

/** All costs in one currency, and those that no rate carries there. */
export function exchanged(
  costs: readonly Cost[],
  to: string,
  rates: readonly Rate[],
): { readonly costs: readonly Cost[]; readonly left: readonly Cost[] } {
  const all = costs.map((cost) => ({ cost, minor: inCurrency(cost, to, rates) }));
  return {
    costs: all.flatMap(({ cost, minor }) => (minor === undefined ? [] : [{ ...cost, minor, currency: to }])),
    left: all.flatMap(({ cost, minor }) => (minor === undefined ? [cost] : [])),
  };
}
