import { crewOf } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer, Button } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { readFluidText } from '../../phrases/fluid-text.ts';
import { plainGrade } from '../../records/fluids/fluid.ts';
import { sayShelf } from '../../records/fluids/fluid-answer.ts';
import { buy } from '../../records/fluids/move-fluid.ts';
import { litresOf } from '../../records/fluids/say-fluid.ts';
import { type Order, standing } from '../../records/orders/order.ts';
import { countOf, fit as fitPart } from '../../records/parts/part-moves.ts';
import type { KnownPart } from '../../records/parts/part-store.ts';
import { casesHere, litres, shelfHere } from './fluids.ts';

/** What an order of bottles says of them. */
export interface OrderedFluid {
  /** As cases and bottles here spell it. */
  readonly grade: string;
  readonly sizeL: number;
  /** Bottles in one piece of the order: "2 x 5 L 10W-40" ordered once are two. */
  readonly each: number;
}

/** Shorter ones stand in too many names. */
const SHORTEST_GRADE = 3;

/** Bottles of a grade that is known here, out of an order's name: "10W-40, 5 L bottle"; undefined where it names none. */
export function fluidOrdered(hand: Hand, { what, kind }: Order): OrderedFluid | undefined {
  if (kind !== 'goods') return undefined;
  const words = plainGrade(what);
  const [grade] = [...casesHere(hand), ...shelfHere(hand)]
    .map((one) => one.grade)
    .filter((one) => plainGrade(one).length >= SHORTEST_GRADE && words.includes(plainGrade(one)))
    .toSorted((a, b) => b.length - a.length);
  const { volume, count } = readFluidText(what);
  if (grade === undefined || volume === undefined || !/\p{L}/u.test(volume)) return undefined;
  try {
    const sizeL = litres('volume', volume);
    return sizeL > 0 ? { grade, sizeL, each: count } : undefined;
  } catch (error) {
    // "2 gal" may be two things: then nobody is told what is on its way
    if (error instanceof UserError) return undefined;
    throw error;
  }
}

/** How much of it an order is still to bring, in litres. */
export function litresComing(hand: Hand, order: Order): number {
  const fluid = fluidOrdered(hand, order);
  return fluid === undefined ? 0 : standing(order).outstanding * fluid.each * fluid.sizeL;
}

/** Whether an order's bottles have come and are not on the shelf of fluids yet: then the button that puts them there. */
export function shelveButtons(hand: Hand, order: Order): readonly Button[] {
  const waiting = waitingOf(hand, order);
  if (waiting === undefined || waiting.count === 0) return [];
  return [
    {
      label: 'Onto the fluid shelf',
      weight: 'main',
      does: { command: 'fluid', action: 'shelve', args: { order: order.id } },
    },
  ];
}

interface Waiting extends OrderedFluid {
  readonly part: KnownPart;
  /** Pieces of the order that are in hand. */
  readonly count: number;
}

function waitingOf(hand: Hand, order: Order): Waiting | undefined {
  const fluid = fluidOrdered(hand, order);
  const part = order.partId === null ? undefined : hand.record.parts.find(order.partId);
  if (fluid === undefined || part === undefined) return undefined;
  return { ...fluid, part, count: Math.min(standing(order).received, countOf(hand.record, part).inHand) };
}

/**
 * Puts the bottles that came with an order onto the shelf of fluids; as parts they count as used from then on.
 *
 * @throws UserError 'already-done' when none of them waits for it, 'stale-message' when the order names no fluid any more.
 */
export function shelveOrder(hand: Hand, orderId: number): Answer {
  const { today } = crewOf(hand);
  const changed = hand.change((record) => {
    const order = record.orders.find(orderId);
    const waiting = order === undefined ? undefined : waitingOf(hand, order);
    if (order === undefined || waiting === undefined) {
      throw new UserError(
        'stale-message',
        'That order names no fluid that anything takes. Nothing was changed. /fluid bought notes bottles.',
      );
    }
    const { part, count, each, sizeL, grade } = waiting;
    if (count === 0) {
      throw new UserError(
        'already-done',
        `All that came with #${order.id} is on the shelf already. Nothing was changed. /fluid bought notes more.`,
      );
    }
    fitPart(record, part, { quantity: count }, { today, byName: hand.who.name });
    const { value, said } = buy(record, {
      buildId: order.buildId,
      count: count * each,
      sizeL,
      grade,
      on: today,
    });
    return { value: { bottles: value, grade }, said: `${said}, with order #${order.id}` };
  });
  const { bottles, grade } = changed.value;
  const say = litresOf(hand.record);
  const all = shelfHere(hand).filter((one) => plainGrade(one.grade) === plainGrade(grade));
  return {
    kind: 'answer',
    subject: 'Fluid',
    result: `${bottles.length} × ${say(bottles[0]?.sizeL ?? 0)} ${grade} on the shelf`,
    tone: 'done',
    certainty: `${sayShelf(all, say)} in all.`,
    buttons: [undoButton(changed)],
    audience: 'crew',
    data: {
      kind: 'bottles',
      bottles: bottles.map(({ id }) => id),
      grade,
      order: orderId,
      shelfL: all.reduce((sum, { leftL }) => sum + leftL, 0),
      said: changed.said,
      change: changed.changeId,
    },
  };
}
