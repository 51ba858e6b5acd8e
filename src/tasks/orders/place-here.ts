import { crewOf, openBuildHere } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import type { Answer } from '../../core/reply.ts';
import { readMoney } from '../../phrases/money.ts';
import type { Money, OrderKind } from '../../records/orders/order.ts';
import { place } from '../../records/orders/place.ts';
import { decimalsOf } from '../../records/orders/say-order.ts';
import { homeCurrency } from '../../records/team/team.ts';
import { readDue, supplierNamed } from './due-day.ts';
import { reportOrder } from './order-moves.ts';

/** What is to be ordered: by /order place, or found out by another command. */
export interface Wanted {
  readonly what: string;
  readonly supplier: string;
  /** As typed; by the supplier's usual time when left out. */
  readonly due?: string | undefined;
  readonly quantity: number;
  /** As typed, altogether. */
  readonly price?: string | undefined;
  /** Whose chase it is, by platform id; the asker's when left out. */
  readonly chaser?: string | undefined;
  readonly link?: string | undefined;
  readonly kind?: OrderKind;
  /** The name of the part, where what is ordered says more. */
  readonly part?: string;
}

/**
 * Writes an order down for this channel's build.
 *
 * @param checked what was made sure of before, said under the result.
 * @throws UserError about the day, the price, the part or the supplier.
 */
export function placeHere(hand: Hand, wanted: Wanted, checked?: string): Answer {
  const { today } = crewOf(hand);
  const { what, quantity, kind, part } = wanted;
  const supplier = supplierNamed(hand, wanted.supplier, 'supplier');
  const read = readDue(hand, wanted.due, supplier);
  const price = wanted.price === undefined ? null : moneyHere(hand, wanted.price);
  const changed = hand.change((record) =>
    place(record, {
      buildId: openBuildHere(record, hand).id,
      what,
      supplier,
      quantity,
      price,
      orderedOn: today,
      due: read.day,
      chaser: chaserOf(hand, wanted.chaser),
      link: wanted.link ?? null,
      ...(kind === undefined ? {} : { kind }),
      ...(part === undefined ? {} : { part }),
    }),
  );
  const { order, supplierIsNew } = changed.value;
  const certainty = [checked, read.readAs, supplierIsNew && `${order.supplier} is a new supplier here.`];
  return reportOrder(hand, { ...changed, value: order }, certainty.filter(Boolean).join(' '));
}

/** A price as typed; where no currency stands, in this one, or else in the crew's own. */
export function moneyHere(hand: Hand, typed: string, currency?: string): Money {
  return readMoney(typed, currency ?? homeCurrency(crewOf(hand).settings.country), decimalsOf);
}

/** Whose chase it is: the person picked, or the asker. */
export const chaserOf = (hand: Hand, picked: string | undefined): { id: string; name: string } =>
  picked === undefined ? { ...hand.who } : { id: picked, name: hand.nameOf(picked) };
