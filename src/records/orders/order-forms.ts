import type { Form, FormField } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import { type Order, standing } from './order.ts';
import { argsOf } from './order-buttons.ts';
import { sayOutstanding, sayWhat } from './say-order.ts';

/** Asks what came when it was not simply all of it and in order. */
export function partlyForm(order: Order, noticeId?: number): Form {
  return form(`What came of #${order.id}?`, 'partly-done', order, noticeId, [
    {
      name: 'quantity',
      label: `How many came, of ${sayOutstanding(order)}`,
      value: String(standing(order).outstanding),
    },
    {
      name: 'condition',
      label: 'As it should be?',
      value: 'good',
      choices: [
        { label: 'Yes', value: 'good' },
        { label: 'Wrong part', value: 'wrong' },
        { label: 'Damaged', value: 'damaged' },
      ],
    },
    { name: 'rest', label: 'When is the rest due?', hint: 'Left empty, the old day stands', required: false },
    { name: 'note', label: 'Anything to remember', required: false },
  ]);
}

/** Asks for the day now promised. */
export function dateForm(order: Order, today: Day, noticeId?: number): Form {
  return form(`New date for #${order.id}`, 'date-done', order, noticeId, [
    {
      name: 'due',
      label: 'When will it come?',
      hint: `Was ${sayDay(order.promisedOn, today)}. Type it as you say it: 12 Dec, next Tuesday`,
    },
  ]);
}

/** Asks what becomes of what came wrong or damaged. */
export function settleForm(order: Order, noticeId?: number): Form {
  return form(`Sort out #${order.id}`, 'settle-done', order, noticeId, [
    {
      name: 'outcome',
      label: `What becomes of ${sayWhat({ what: order.what, quantity: standing(order).toSortOut })}?`,
      choices: [
        { label: 'The supplier replaces it', value: 'replaced' },
        { label: 'We keep it as it is', value: 'kept' },
        { label: 'It goes back for a refund', value: 'refunded' },
      ],
    },
    { name: 'due', label: 'When is the replacement due?', hint: 'Only for a replacement', required: false },
  ]);
}

function form(
  title: string,
  action: string,
  order: Order,
  noticeId: number | undefined,
  fields: readonly FormField[],
): Form {
  return { kind: 'form', title, does: { command: 'order', action, args: argsOf(order, noticeId) }, fields };
}
