import type { Form } from '../../core/reply.ts';
import { orderLine } from './adapt-answer.ts';
import type { Adapter } from './adapters.ts';

/** Asks what an order of this adapter still lacks. */
export function orderForm(adapter: Adapter): Form {
  return {
    kind: 'form',
    title: 'Order this adapter',
    does: { command: 'fitting', action: 'order-done', args: {} },
    fields: [
      { name: 'what', label: 'What is ordered', value: orderLine(adapter), long: true },
      { name: 'supplier', label: 'Who does it come from?' },
      { name: 'due', label: 'When will it come?', hint: 'Type it as you say it: 12 Dec, next Tuesday' },
      { name: 'quantity', label: 'How many', value: '1' },
    ],
  };
}
