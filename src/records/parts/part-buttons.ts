import type { Button, Form } from '../../core/reply.ts';
import type { Order } from '../orders/order.ts';
import { standing as standingOf } from '../orders/order.ts';
import { sortOutButton } from '../orders/order-buttons.ts';
import type { PartStanding } from './part.ts';
import type { KnownPart } from './part-store.ts';

type Weight = NonNullable<Button['weight']>;

/** The likely next things for a part, the likeliest first. */
export function partButtons(standing: PartStanding, orders: readonly Order[]): readonly Button[] {
  const { part, coming, out, inHand, fitted, missing } = standing;
  const wrong = orders.find((order) => !order.cancelled && standingOf(order).toSortOut > 0);
  const all = [
    ...(wrong === undefined ? [] : [sortOutButton(wrong)]),
    ...out.slice(0, 1).map(({ orderId }) => orderButton('It is back', 'arrived', orderId)),
    ...coming.slice(0, 1).map(({ orderId }) => orderButton('Arrived', 'arrived', orderId)),
    ...(inHand > 0 && fitted < part.needed ? [partButton('Fitted', 'fitted', part.id)] : []),
    ...(missing > 0
      ? [partButton('Order it', 'order', part.id), partButton('It is here', 'here', part.id)]
      : []),
    ...(inHand > 0 ? [partButton('Out for work', 'out', part.id)] : []),
    ...(fitted > 0 ? [partButton('Taken off', 'off', part.id)] : []),
    ...[...coming, ...out].slice(0, 1).map(({ orderId }) => orderButton('Its order', 'show', orderId)),
  ];
  return all.map((button, index) => ({ ...button, weight: index === 0 ? 'main' : 'plain' }));
}

export const partButton = (
  label: string,
  action: string,
  partId: number,
  weight: Weight = 'plain',
): Button => ({
  label,
  weight,
  does: { command: 'part', action, args: { part: `#${partId}` } },
});

const orderButton = (label: string, action: string, orderId: number): Button => ({
  label,
  does: { command: 'order', action, args: { order: orderId } },
});

/** Asks who a part is ordered from, and for when. */
export function orderPartForm(part: KnownPart, missing: number, supplier: string | undefined): Form {
  return {
    kind: 'form',
    title: `Order ${part.name}`.slice(0, 45),
    does: { command: 'part', action: 'order-done', args: { part: `#${part.id}` } },
    fields: [
      {
        name: 'supplier',
        label: 'Who it comes from',
        ...(supplier === undefined ? {} : { value: supplier }),
      },
      {
        name: 'due',
        label: 'The day promised',
        hint: '12 Dec, in 5 working days; else their usual time',
        required: false,
      },
      { name: 'quantity', label: 'How many', value: String(Math.max(1, missing)) },
      { name: 'price', label: 'What it costs altogether', hint: '84.50 or EUR 84.50', required: false },
      { name: 'carriage', label: 'Carriage', required: false },
    ],
  };
}

/** Asks where a part is taken, and what is done to it. */
export function outForm(part: KnownPart, inHand: number): Form {
  return {
    kind: 'form',
    title: `${part.name} out for work`.slice(0, 45),
    does: { command: 'part', action: 'out-done', args: { part: `#${part.id}` } },
    fields: [
      { name: 'to', label: 'Who does the work' },
      { name: 'work', label: 'What is done to it', hint: 'line bore, plating' },
      { name: 'due', label: 'When is it due back?', hint: '12 Dec, in 5 working days', required: false },
      { name: 'quantity', label: 'How many', value: String(Math.max(1, inHand)) },
      { name: 'price', label: 'What it costs altogether', required: false },
    ],
  };
}
