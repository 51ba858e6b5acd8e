import { z } from 'zod';
import type { Answer, Item } from '../core/reply.ts';
import { type Day, sayDay } from '../core/time.ts';
import { sayMoney, sayWhat } from '../records/orders/say-order.ts';

/** A list as it is kept between being shown and being written down. */
export const KeptList = z.object({
  lines: z.array(
    z.union([
      z.object({
        line: z.int(),
        note: z.string().optional(),
        order: z.object({
          what: z.string(),
          supplier: z.string(),
          quantity: z.int(),
          price: z.object({ minor: z.int(), currency: z.string() }).nullable(),
          orderedOn: z.string(),
          due: z.string(),
        }),
      }),
      z.object({ line: z.int(), text: z.string(), problem: z.string() }),
    ]),
  ),
  unused: z.array(z.string()),
});
export type KeptList = z.infer<typeof KeptList>;

/** What a kept list holds: how many orders would be made, and how many lines say nothing that can be read. */
export function countsOf({ lines }: KeptList): { readonly orders: number; readonly problems: number } {
  const orders = lines.filter((line) => 'order' in line).length;
  return { orders, problems: lines.length - orders };
}

/** The head of the preview: what a yes would do, and what it would leave out. */
export function previewHead(list: KeptList): Pick<Answer, 'result' | 'tone' | 'certainty'> {
  const { orders, problems } = countsOf(list);
  const unread = problems === 0 ? '' : `, ${problems} ${problems === 1 ? 'line' : 'lines'} not read`;
  const unused = list.unused.length === 0 ? '' : ` Not used: ${list.unused.join(', ').slice(0, 150)}.`;
  return {
    result: `${orders} ${orders === 1 ? 'order' : 'orders'} to write down${unread}`,
    tone: problems > 0 ? 'soon' : 'plain',
    certainty: `Nothing is written yet.${unused}`,
  };
}

/** A line of the preview: what it makes, or why it makes nothing. */
export function previewItem(line: KeptList['lines'][number], today: Day): Item {
  if (!('order' in line)) {
    return {
      text: `Line ${line.line}: ${line.text || 'empty'}`.slice(0, 300),
      note: line.problem,
      tone: 'late',
    };
  }
  const { what, quantity, supplier, price, due, orderedOn } = line.order;
  const ordered = orderedOn === today ? '' : `, ordered ${sayDay(orderedOn, today)}`;
  const money = price === null ? '' : `, ${sayMoney(price)}`;
  const note = `From ${supplier}${money}${ordered}, due ${sayDay(due, today)}.`;
  return {
    text: `Line ${line.line}: ${sayWhat({ what, quantity })}`,
    note: line.note === undefined ? note : `${note} ${line.note}`,
    tone: line.note === undefined ? 'plain' : 'soon',
  };
}
