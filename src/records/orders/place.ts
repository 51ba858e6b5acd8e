import type { Day } from '../../core/time.ts';
import { sayDay } from '../../core/time.ts';
import { openPart } from '../parts/open-part.ts';
import { supplierOrNew } from '../suppliers/find-supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Money, Order, OrderKind } from './order.ts';
import { sayWhat } from './say-order.ts';

export interface Wanted {
  readonly buildId: number;
  readonly what: string;
  readonly supplier: string;
  readonly quantity: number;
  readonly price: Money | null;
  readonly orderedOn: Day;
  readonly due: Day;
  readonly chaser: { readonly id: string; readonly name: string };
  /** The name of the part, where what is ordered says more: "block: line bore". */
  readonly part?: string;
  /** Goods unless said. */
  readonly kind?: OrderKind;
  readonly purchaseId?: number | null;
  readonly link?: string | null;
}

/**
 * Writes an order down: its part with it if nobody has named it before, and its supplier if nobody has ordered there.
 *
 * @throws UserError 'which-one' when the supplier's or the part's name is nearly that of a known one.
 */
export function place(
  record: TeamRecord,
  wanted: Wanted,
): { value: { order: Order; supplierIsNew: boolean }; said: string } {
  const { buildId, what, quantity, price, orderedOn, due, chaser } = wanted;
  const { name, known } = supplierOrNew(record, wanted.supplier);
  const supplier = known ?? record.suppliers.add(name);
  const { part, name: named } = openPart(record, buildId, wanted.part ?? what, quantity);
  const order = record.orders.place({
    buildId,
    what: wanted.part === undefined ? named : what,
    partId: part.id,
    kind: wanted.kind ?? 'goods',
    purchaseId: wanted.purchaseId ?? null,
    link: wanted.link ?? null,
    supplierId: supplier.id,
    quantity,
    price,
    orderedOn,
    promisedOn: due,
    chaserId: chaser.id,
    chaserName: chaser.name,
  });
  const said = `order #${order.id} placed: ${sayWhat(order)} from ${name}, due ${sayDay(due, orderedOn)}`;
  return { value: { order, supplierIsNew: known === undefined }, said };
}
