import type { WholeBuild } from '../../records/builds/whole-build.ts';
import { standing } from '../../records/orders/order.ts';
import { decimalsOf } from '../../records/orders/say-order.ts';
import type { Sheet } from '../csv.ts';

/** Every order, cancelled ones too; `/import orders` reads it back. */
export function orderSheet({ record, build }: WholeBuild): Sheet {
  return {
    name: 'orders',
    head: [
      'number',
      'what',
      'supplier',
      'kind',
      'quantity',
      'received',
      'to sort out',
      'still to come',
      'price',
      'currency',
      'ordered',
      'first promised',
      'due',
      'state',
      'chased by',
      'last chased',
    ],
    rows: record.orders.allOfBuild(build.id).map((order) => {
      const { state, received, toSortOut, outstanding } = standing(order);
      const { price } = order;
      return [
        order.id,
        order.what,
        order.supplier,
        order.kind,
        order.quantity,
        received,
        toSortOut,
        outstanding,
        price === null ? null : price.minor / 10 ** decimalsOf(price.currency),
        price?.currency ?? null,
        order.orderedOn,
        order.firstPromisedOn,
        order.promisedOn,
        state,
        order.chaserName,
        order.chasedOn,
      ];
    }),
  };
}
