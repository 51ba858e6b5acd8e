import type { Day } from '../../core/time.ts';
import { sayDay } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import type { Money, Order } from '../orders/order.ts';
import { place } from '../orders/place.ts';
import { sayWhat } from '../orders/say-order.ts';
import { supplierOrNew } from '../suppliers/find-supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import type { PurchaseLines } from './purchase.ts';

export interface WantedLine {
  readonly what: string;
  readonly quantity: number;
  readonly price: Money | null;
}

export interface WantedPurchase {
  readonly buildId: number;
  readonly supplier: string;
  readonly lines: readonly WantedLine[];
  readonly carriage: Money | null;
  readonly reference: string | null;
  readonly link: string | null;
  readonly orderedOn: Day;
  readonly due: Day;
  readonly chaser: { readonly id: string; readonly name: string };
}

/**
 * Writes several lines down as one purchase, all of them or none.
 *
 * @param retyped all lines as they would be typed if this one's part had another name
 * @throws UserError 'which-one' about the supplier or a part, as for one order.
 */
export function placePurchase(
  record: TeamRecord,
  wanted: WantedPurchase,
  retyped: (line: number, name: string) => string,
): { readonly value: PurchaseLines & { readonly supplierIsNew: boolean }; readonly said: string } {
  const { buildId, lines, carriage, reference, link, orderedOn, due, chaser } = wanted;
  const { name, known } = supplierOrNew(record, wanted.supplier);
  const supplier = known ?? record.suppliers.add(name);
  const shared = { buildId, supplierId: supplier.id, orderedOn, carriage, reference, link };
  const purchase = record.purchases.open(shared);
  const placed = lines.map((line, index) =>
    askingWithin(index, retyped, () => {
      const { value } = place(record, {
        buildId,
        supplier: name,
        ...line,
        orderedOn,
        due,
        chaser,
        purchaseId: purchase.id,
      });
      return value.order;
    }),
  );
  return {
    value: { purchase, lines: placed, supplierIsNew: known === undefined },
    said: `${sayNumbers(placed)} placed: ${placed.map(sayWhat).join(', ')} from ${name}, due ${sayDay(due, orderedOn)}`,
  };
}

/** A question about one line's part is answered with all the lines, that one as picked. */
function askingWithin(
  line: number,
  retyped: (line: number, name: string) => string,
  work: () => Order,
): Order {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof UserError) || error.question?.field !== 'what') throw error;
    throw new UserError(error.code, error.message, {
      field: 'lines',
      choices: error.question.choices.map(({ label, value }) => ({ label, value: retyped(line, value) })),
    });
  }
}

/** "orders #4 to #6", "orders #4 and #5". */
export function sayNumbers(orders: readonly Order[]): string {
  const [first, ...more] = orders;
  const last = more.at(-1);
  if (first === undefined) return 'no orders';
  if (last === undefined) return `order #${first.id}`;
  return `orders #${first.id} ${more.length === 1 ? 'and' : 'to'} #${last.id}`;
}
