import { sayFullDay } from '../../core/time.ts';
import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Order } from '../../records/orders/order.ts';
import { sayMoney } from '../../records/orders/say-order.ts';
import type { Section } from '../paper.ts';

/** Every part with its source: where it came from, when, what was done to it elsewhere, and where it is now. */
export function parts({ record, build, standings }: WholeBuild): Section {
  const orders = Map.groupBy(record.orders.allOfBuild(build.id), ({ partId }) => partId);
  const rows = standings.map(({ part, whereabouts, fitted, inHand }) => [
    [part.name, part.alsoCalled.length > 0 ? `(${part.alsoCalled.join(', ')})` : ''].join(' ').trim(),
    part.origin,
    (orders.get(part.id) ?? [])
      .filter(({ cancelled }) => !cancelled)
      .map(sourceOf)
      .join('; ') || 'no order',
    whereOf(whereabouts, fitted, inHand, part.needed),
    [part.note, part.link].filter((text) => text !== null).join(' '),
  ]);
  return {
    heading: 'Parts and where they came from',
    blocks:
      rows.length === 0
        ? [{ kind: 'words', text: 'No part is recorded.' }]
        : [{ kind: 'table', head: ['Part', 'Origin', 'From', 'Now', 'Note'], shares: [4, 2, 5, 3, 4], rows }],
  };
}

function sourceOf({ kind, supplier, orderedOn, arrivals, price }: Order): string {
  const came = arrivals.at(-1);
  const when = came === undefined ? `ordered ${sayFullDay(orderedOn)}` : sayFullDay(came.cameOn);
  const money = price === null ? '' : `, ${sayMoney(price)}`;
  return `${kind === 'work' ? 'work by ' : ''}${supplier}, ${when}${money}`;
}

function whereOf(whereabouts: string, fitted: number, inHand: number, needed: number): string {
  if (needed === 1) return whereabouts;
  return `${fitted} fitted, ${inHand} in hand, of ${needed}`;
}
