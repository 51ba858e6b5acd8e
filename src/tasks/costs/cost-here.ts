import { buildHere, crewOf } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer } from '../../core/reply.ts';
import { sayDay } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import { readDecimal } from '../../phrases/quantity/decimal.ts';
import { type CostGroup, costAnswer } from '../../records/costs/cost-answer.ts';
import { type Cost, costsOf, unguessed } from '../../records/costs/costs.ts';
import { exchanged } from '../../records/costs/exchange.ts';
import type { Rate } from '../../records/costs/rate-store.ts';
import { standings } from '../../records/parts/standings.ts';
import { currencyOfCountry } from '../../records/team/currencies.ts';
import { dataOf } from '../orders/order-moves.ts';

export interface CostsAsked {
  readonly by: CostGroup;
  readonly in?: string | undefined;
  readonly page: number;
}

/** What this channel's build costs. */
export function listCosts(hand: Hand, { by, in: typed, page }: CostsAsked): Answer {
  const { record } = hand;
  const { today } = crewOf(hand);
  const build = buildHere(hand);
  const parts = build ? standings(record, build.id, today) : [];
  const costs = build
    ? costsOf({
        orders: record.orders.allOfBuild(build.id),
        purchases: record.purchases.ofBuild(build.id),
        standings: parts,
      })
    : [];
  const rates = record.rates.all();
  const wanted = typed === undefined ? undefined : currencyTyped(typed);
  const together = allTogether(hand, costs, rates, wanted);
  return costAnswer({ costs, by, together, rates, unguessed: unguessed(parts), today, page });
}

/**
 * All of it in one currency: the one asked for, or the crew's own where there is more than one and a rate.
 *
 * @throws UserError 'not-found' when a currency was asked for that no rate reaches.
 */
function allTogether(hand: Hand, costs: readonly Cost[], rates: readonly Rate[], wanted: string | undefined) {
  const currencies = new Set(costs.map(({ currency }) => currency));
  if (wanted === undefined && (currencies.size < 2 || rates.length === 0)) return undefined;
  const [land = ''] = crewOf(hand).settings.country.split('/');
  const currency = wanted ?? currencyOfCountry(land);
  if (currency === undefined) return undefined;
  const { costs: reached, left } = exchanged(costs, currency, rates);
  const missing = left[0]?.currency;
  if (wanted !== undefined && missing !== undefined) {
    throw new UserError(
      'not-found',
      `No rate from ${missing} to ${currency} has been given. Nothing was changed. /cost rate from:${missing} to:${currency} rate:… gives one.`,
    );
  }
  return { costs: reached, left, currency };
}

export interface RateTyped {
  readonly from: string;
  readonly to: string;
  readonly rate: string;
}

/** Gives a rate, or takes it away with 0. */
export function rateGiven(hand: Hand, typed: RateTyped): Answer {
  const { today } = crewOf(hand);
  const [from, to] = [currencyTyped(typed.from), currencyTyped(typed.to)];
  const rate = readDecimal(typed.rate)?.value;
  if (rate === undefined || rate > 1e9 || (rate !== 0 && rate < 1e-9)) {
    throw new UserError(
      'bad-input',
      `"${typed.rate}" is no rate. Nothing was changed. Type so many ${to} as one ${from} is worth, like 0.86.`,
    );
  }
  if (from === to) {
    throw new UserError('bad-input', `One ${from} is one ${to}. Nothing was changed. Name two currencies.`);
  }
  const changed = hand.change((record) => {
    if (rate === 0) record.rates.forget(from, to);
    else record.rates.give({ from, to, rate, saidOn: today, byName: hand.who.name });
    return {
      value: null,
      said: rate === 0 ? `rate from ${from} to ${to} taken away` : `${from} 1 = ${to} ${rate}`,
    };
  });
  return {
    kind: 'answer',
    subject: 'Rate',
    result: rate === 0 ? `${from} and ${to} are kept apart` : `${from} 1 = ${to} ${rate}`,
    certainty: rate === 0 ? 'No rate joins them any more.' : '/cost show now also adds them up together.',
    buttons: [
      { label: 'Show the cost', does: { command: 'cost', action: 'show', args: { by: 'supplier' } } },
      undoButton(changed),
    ],
    audience: 'crew',
    data: { from, to, rateRatio: rate, ...dataOf(changed) },
  };
}

export function rateList(hand: Hand): Answer {
  const { today } = crewOf(hand);
  const rates = hand.record.rates.all();
  return {
    kind: 'answer',
    subject: 'Rates',
    result:
      rates.length === 0 ? 'No rate has been given: currencies are kept apart' : `${rates.length} given`,
    items: rates.map(({ from, to, rate, saidOn, byName }) => ({
      text: `${from} 1 = ${to} ${rate}`,
      note: `said by ${byName} on ${sayDay(saidOn, today)}`,
    })),
    audience: 'crew',
    data: { rates: rates.map(({ from, to, rate, saidOn }) => ({ from, to, rateRatio: rate, saidOn })) },
  };
}

/** An ISO 4217 code. @throws UserError 'bad-input' when there is no such currency. */
function currencyTyped(typed: string): string {
  const code = typed.trim().toUpperCase();
  if (Intl.supportedValuesOf('currency').includes(code)) return code;
  throw new UserError(
    'bad-input',
    `"${typed}" is no currency. Nothing was changed. Type its three letters, like EUR or GBP.`,
  );
}
