import type { Answer, Button, Fact } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import type { Order } from '../orders/order.ts';
import { sayMoney, sayWhat, sayWhere } from '../orders/say-order.ts';
import type { LatenessBook } from '../suppliers/expected.ts';
import { sayExpected } from '../suppliers/say-expected.ts';
import type { Coming } from './part.ts';
import { partButtons } from './part-buttons.ts';
import { partData } from './part-data.ts';
import type { KnownPart, PartMove } from './part-store.ts';
import { isLatePart, sayStanding } from './say-part.ts';
import type { KnownStanding } from './standings.ts';

export interface PartView {
  readonly standing: KnownStanding;
  readonly orders: readonly Order[];
  readonly moves: readonly PartMove[];
  readonly book: LatenessBook;
  readonly today: Day;
  readonly said?: string;
  readonly certainty?: string;
  readonly extraFacts?: readonly Fact[];
  readonly extraButtons?: readonly Button[];
}

/** So many of what was said of it lately. */
const MOST_MOVES = 6;

/** One part as a card: where all of it is, what is coming and when to expect it, and the likely next thing. */
export function partAnswer(view: PartView): Answer {
  const { standing, orders, today, said, certainty, extraButtons = [] } = view;
  const { part, missing } = standing;
  return {
    kind: 'answer',
    subject: 'Part',
    result: `${part.name}: ${sayStanding(standing, today)}`,
    tone: isLatePart(standing, today) ? 'late' : missing > 0 || standing.toSortOut > 0 ? 'soon' : 'plain',
    ...(certainty === undefined ? {} : { certainty }),
    facts: factsOf(view),
    buttons: [...partButtons(standing, orders), ...extraButtons],
    audience: 'crew',
    data: { ...partData(standing), ...(said === undefined ? {} : { said }) },
  };
}

function factsOf(view: PartView): readonly Fact[] {
  const { standing, orders, moves, today, extraFacts = [] } = view;
  const { part, coming, out } = standing;
  const line = ({ orderId }: Coming): string => {
    const order = orders.find(({ id }) => id === orderId);
    return order === undefined ? `#${orderId}` : `#${orderId} ${sayWhat(order)} ${sayWhere(order)}`;
  };
  return [
    ...coming.map((one) => ['On order', `${line(one)}, promised ${sayDay(one.promisedOn, today)}`] as const),
    ...coming.map((one) => ['Expect it', expected(view, one)] as const),
    ...out.map((one) => ['Out', `${line(one)}, due back ${sayDay(one.promisedOn, today)}`] as const),
    ...out.map((one) => ['Expect it back', expected(view, one)] as const),
    ...extraFacts,
    ['Needed', needed(part)],
    ...(part.alsoCalled.length === 0 ? [] : [['Also called', part.alsoCalled.join(', ')] as const]),
    ...(part.system === null ? [] : [['System', part.system] as const]),
    ...(part.guess === null ? [] : [['Likely price of one', sayMoney(part.guess)] as const]),
    ...(part.note === null ? [] : [['Note', part.note] as const]),
    ...(part.link === null ? [] : [['Photo', part.link] as const]),
    ...moves.slice(-MOST_MOVES).map((move) => [`Said ${sayDay(move.saidOn, today)}`, sayMove(move)] as const),
  ];
}

function needed({ needed: count, origin, singleUse }: KnownPart): string {
  const kind = origin === 'new' ? '' : `, ${origin}`;
  return `${count}${kind}${singleUse ? ', used once and then renewed' : ''}`;
}

function expected({ orders, book, today }: PartView, { orderId, promisedOn }: Coming): string {
  const order = orders.find(({ id }) => id === orderId);
  return order === undefined ? '' : sayExpected(book.expect(order.supplierId, promisedOn), today);
}

function sayMove({ kind, quantity, place, byName, note }: PartMove): string {
  const what =
    kind === 'counted'
      ? `counted${quantity === 0 ? '' : `, ${quantity > 0 ? `${quantity} more` : `${-quantity} fewer`} than the record had`}${place === null ? '' : `, ${place === 'shelf' ? 'on the shelf' : 'in the box'}`}`
      : `${quantity} ${kind}`;
  return [what, note, `by ${byName}`].filter(Boolean).join(', ');
}
