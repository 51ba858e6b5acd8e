import { crewOf } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import { isCountry } from '../../calendar/holidays.ts';
import type { Answer, Button } from '../../core/reply.ts';
import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import { isLate, type Order, standing } from '../../records/orders/order.ts';
import { type LatenessBook, latenessBook } from '../../records/suppliers/expected.ts';
import type { Supplier } from '../../records/suppliers/supplier.ts';
import { type SupplierKnown, supplierAnswer, supplierList } from '../../records/suppliers/supplier-answer.ts';
import { calendarsOf } from '../../records/suppliers/supplier-days.ts';
import type { TeamRecord } from '../../records/team-record.ts';
import { dataOf } from '../orders/order-moves.ts';

/** One supplier as a card. */
export function supplierCard(
  hand: Hand,
  supplier: Supplier,
  saying: { readonly certainty?: string; readonly extraButtons?: readonly Button[] } = {},
): Answer {
  const { today, settings } = crewOf(hand);
  const book = bookHere(hand);
  const known = knownOf(supplier, book, openHere(hand), today);
  return supplierAnswer({ ...known, team: book.team, crewCountry: settings.country, today, ...saying });
}

export function listSuppliers(hand: Hand, page: number): Answer {
  const [book, open, { today }] = [bookHere(hand), openHere(hand), crewOf(hand)];
  return supplierList(
    hand.record.suppliers.all().map((supplier) => knownOf(supplier, book, open, today)),
    page,
  );
}

/** Does one thing to a supplier, then shows it. */
export function moveSupplier(
  hand: Hand,
  work: (record: TeamRecord) => { readonly value: Supplier; readonly said: string },
  certainty?: string,
): Answer {
  const changed = hand.change(work);
  const card = supplierCard(hand, changed.value, {
    certainty: [`${changed.said}.`, certainty].filter(Boolean).join(' '),
    extraButtons: [undoButton(changed)],
  });
  return { ...card, data: { ...card.data, ...dataOf(changed) } };
}

/** A country as the holiday tables spell it. @throws UserError 'bad-input' when they do not know it. */
export function countryTyped(typed: string): string {
  const code = typed
    .trim()
    .toUpperCase()
    .replace(/[\s-]+/g, '/');
  if (isCountry(code)) return code;
  throw new UserError(
    'bad-input',
    `There is no holiday list for "${typed}". Nothing was changed. Type a country, and its part where it has one: DE, GB/ENG, US, DE/BY.`,
  );
}

function bookHere(hand: Hand): LatenessBook {
  return latenessBook(hand.record.orders.timings(), crewOf(hand).today, calendarsOf(hand.record));
}

type Open = ReadonlyMap<number, readonly Order[]>;

/** What is still to come, by supplier, in all builds of the team. */
function openHere({ record }: Hand): Open {
  const all = record.builds.all().flatMap(({ id }) => record.orders.ofBuild(id));
  return Map.groupBy(
    all.filter((order) => standing(order).state === 'open'),
    ({ supplierId }) => supplierId,
  );
}

function knownOf(supplier: Supplier, book: LatenessBook, openOrders: Open, today: Day): SupplierKnown {
  const open = openOrders.get(supplier.id) ?? [];
  return {
    supplier,
    lateness: book.of(supplier.id),
    openOrders: open.length,
    lateOrders: open.filter((order) => isLate(order, today)).length,
  };
}
