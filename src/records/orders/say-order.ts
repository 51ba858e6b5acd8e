import { type Day, sayDay } from '../../core/time.ts';
import type { WorkingDays } from '../../core/working-days.ts';
import { type Money, type Order, standing } from './order.ts';

/** "2 × head gasket", or the name alone for one. */
export function sayWhat({ what, quantity }: Pick<Order, 'what' | 'quantity'>): string {
  return quantity === 1 ? what : `${quantity} × ${what}`;
}

/** What of an order is still to come. */
export function sayOutstanding(order: Order): string {
  return sayWhat({ what: order.what, quantity: standing(order).outstanding });
}

/** "late by 4 working days", counted as the crew's country works; a day late over a weekend is late all the same. */
export function sayLateness(promisedOn: Day, today: Day, days: WorkingDays): string {
  const late = days.between(promisedOn, today);
  if (late <= 0) return 'late, no working day yet';
  return `late by ${late} working ${late === 1 ? 'day' : 'days'}`;
}

/** "due Fri 4 Dec", or "due back" for something of ours that is out for work. */
export function sayDue({ kind, promisedOn }: Order, today: Day): string {
  return `${kind === 'work' ? 'due back' : 'due'} ${sayDay(promisedOn, today)}`;
}

/** "from Norvale", or "at Brackendale" while something of ours is there. */
export function sayWhere(order: Order): string {
  return `${order.kind === 'work' && standing(order).state === 'open' ? 'at' : 'from'} ${order.supplier}`;
}

/** Whose chase it is and what has been done about it: "Ada's chase, nobody has chased it yet". */
export function sayChase({ chaserName, chasedOn, chasedTimes }: Order, today: Day): string {
  if (chasedOn === null) return `${chaserName}’s chase, nobody has chased it yet`;
  const times = chasedTimes === 1 ? 'once' : `${chasedTimes} times`;
  return `${chaserName}’s chase, chased ${times}, last on ${sayDay(chasedOn, today)}`;
}

/** "GBP 12.50", with the currency's own number of decimals (ISO 4217). */
export function sayMoney({ minor, currency }: Money): string {
  const digits = decimalsOf(currency);
  return `${currency} ${(minor / 10 ** digits).toFixed(digits)}`;
}

/**
 * How many decimals a currency has, by list one (key ISO4217). A table of our own, since prices are kept in minor
 * units and Intl's figures (CLDR) differ from the standard and may change with the next Node.
 */
export function decimalsOf(currency: string): number {
  const other = Object.entries(NOT_TWO).find(([, currencies]) => currencies.split(' ').includes(currency));
  return other === undefined ? 2 : Number(other[0]);
}

const NOT_TWO: Readonly<Record<number, string>> = {
  0: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF',
  3: 'BHD IQD JOD KWD LYD OMR TND',
  4: 'CLF UYW',
};
