import type { Answer } from '../core/reply.ts';
import { orderAnswer } from '../records/orders/order-answer.ts';
import { place } from '../records/orders/place.ts';
import { crewOf, openBuildHere, readDay } from './crew.ts';
import type { Hand } from './hand.ts';
import { undoButton } from './undo-button.ts';

/** What another command has found out is to be ordered. */
export interface Wanted {
  readonly what: string;
  readonly supplier: string;
  /** As typed. */
  readonly due: string;
  readonly quantity: number;
}

/**
 * Writes an order down by the same rules as /order place, for this channel's build and in the asker's name.
 *
 * @param checked what was made sure of before, said under the result.
 * @throws UserError about the day or the supplier, as /order place does.
 */
export function placeHere(hand: Hand, wanted: Wanted, checked?: string): Answer {
  const crew = crewOf(hand);
  const read = readDay(hand, 'due', wanted.due);
  const changed = hand.change((record) =>
    place(record, {
      buildId: openBuildHere(record, hand).id,
      what: wanted.what,
      supplier: wanted.supplier,
      quantity: wanted.quantity,
      price: null,
      orderedOn: crew.today,
      due: read.day,
      chaser: hand.who,
    }),
  );
  const { order, supplierIsNew } = changed.value;
  const card = orderAnswer({
    order,
    ...crew,
    said: changed.said,
    certainty: [checked, read.readAs, supplierIsNew && `${order.supplier} is a new supplier here.`]
      .filter(Boolean)
      .join(' '),
    extraButtons: [undoButton(changed)],
  });
  return { ...card, data: { ...card.data, change: changed.changeId } };
}
