import type { JsonObject } from '../../core/json.ts';
import type { Answer, Button, Fact, Item } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import type { WorkingDays } from '../../core/working-days.ts';
import { isLate, type Money, type Order, standing } from '../orders/order.ts';
import { orderData } from '../orders/order-answer.ts';
import { sortOutButton } from '../orders/order-buttons.ts';
import { sayDue, sayLateness, sayMoney, sayOutstanding, sayWhat } from '../orders/say-order.ts';
import type { Expected } from '../suppliers/expected.ts';
import { sayExpected } from '../suppliers/say-expected.ts';
import { parcelButtons } from './parcel-buttons.ts';
import type { PurchaseLines } from './purchase.ts';

export interface PurchaseView extends PurchaseLines {
  readonly today: Day;
  /** The supplier's working days. */
  readonly days: WorkingDays;
  readonly expected: Expected | undefined;
  readonly said?: string;
  readonly certainty?: string;
  readonly extraButtons?: readonly Button[];
}

/** Several lines as one card: what is still to come, each line, and what they share. */
export function purchaseAnswer(view: PurchaseView): Answer {
  const { purchase, lines, today, days, said, certainty, extraButtons = [] } = view;
  const open = lines.filter((line) => standing(line).state === 'open');
  const late = open.some((line) => isLate(line, today));
  return {
    kind: 'answer',
    subject: 'Parcel',
    result: `${count(lines.length)} from ${lines[0]?.supplier ?? ''}: ${whereItStands(lines, open, today)}`,
    tone: late ? 'late' : open.length === 0 ? 'done' : 'plain',
    ...(certainty === undefined ? {} : { certainty }),
    items: lines.map((line) => itemOf(line, today, days)),
    facts: factsOf(view, open),
    menu: {
      prompt: 'Open one line',
      does: { command: 'order', action: 'show', args: {} },
      arg: 'order',
      choices: lines
        .slice(0, 25)
        .map((line) => ({ label: `#${line.id} ${sayWhat(line)}`.slice(0, 100), value: String(line.id) })),
    },
    buttons: [...(open.length > 0 ? parcelButtons(purchase.id) : []), ...extraButtons],
    audience: 'crew',
    data: { ...purchaseData(view), ...(said === undefined ? {} : { said }) },
  };
}

const count = (lines: number): string => `${lines} ${lines === 1 ? 'line' : 'lines'}`;

function whereItStands(lines: readonly Order[], open: readonly Order[], today: Day): string {
  const toSortOut = lines.filter((line) => standing(line).toSortOut > 0).length;
  const sortOut = toSortOut > 0 ? `${toSortOut} to sort out` : '';
  if (open.length === 0) return sortOut || 'all here';
  const soonest = open.map(({ promisedOn }) => promisedOn).toSorted()[0] ?? today;
  const some = open.length === lines.length ? '' : `${open.length} still to come, `;
  return `${some}due ${sayDay(soonest, today)}${sortOut === '' ? '' : `, ${sortOut}`}`;
}

function itemOf(line: Order, today: Day, days: WorkingDays): Item {
  const { state, outstanding, toSortOut } = standing(line);
  const price = line.price === null ? [] : [sayMoney(line.price)];
  const late = isLate(line, today);
  const states = {
    cancelled: 'cancelled',
    arrived: 'here',
    'to sort out': `${toSortOut} to sort out`,
    open: late ? sayLateness(line.promisedOn, today, days) : sayDue(line, today),
  };
  const more = state === 'open' && toSortOut > 0 ? [`${toSortOut} to sort out`] : [];
  return {
    text: `#${line.id} ${outstanding > 0 ? sayOutstanding(line) : sayWhat(line)}`,
    note: [...price, states[state], ...more].join(', '),
    tone: late ? 'late' : state === 'arrived' ? 'done' : 'plain',
    ...(toSortOut > 0 ? { buttons: [sortOutButton(line)] } : {}),
  };
}

function factsOf(
  { purchase, lines, today, expected }: PurchaseView,
  open: readonly Order[],
): readonly Fact[] {
  const { carriage, reference, link, orderedOn } = purchase;
  return [
    ...(open.length > 0 && expected !== undefined
      ? [['Expect it', sayExpected(expected, today)] as const]
      : []),
    ...totals(lines, carriage).map((money) => ['Altogether', sayMoney(money)] as const),
    ...(carriage === null ? [] : [['Carriage', sayMoney(carriage)] as const]),
    ['Ordered', sayDay(orderedOn, today)],
    ...(reference === null ? [] : [['Their number', reference] as const]),
    ...(link === null ? [] : [['Invoice', link] as const]),
  ];
}

/** What the lines and the carriage come to, each currency by itself. */
export function totals(lines: readonly Order[], carriage: Money | null): readonly Money[] {
  const all = [...lines.map(({ price }) => price), carriage].filter((money) => money !== null);
  return [...Map.groupBy(all, ({ currency }) => currency)].map(([currency, sums]) => ({
    currency,
    minor: sums.reduce((sum, { minor }) => sum + minor, 0),
  }));
}

function purchaseData({ purchase, lines, expected }: PurchaseView): JsonObject {
  return {
    purchase: purchase.id,
    supplier: lines[0]?.supplier ?? null,
    orderedOn: purchase.orderedOn,
    carriageMinor: purchase.carriage?.minor ?? null,
    currency: purchase.carriage?.currency ?? null,
    reference: purchase.reference,
    link: purchase.link,
    expectedOn: expected?.expectedOn ?? null,
    latestOn: expected?.latestOn ?? null,
    orders: lines.map(orderData),
  };
}
