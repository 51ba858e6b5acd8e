import type { Button, Form } from '../../core/reply.ts';
import { NOTICE_ARG } from '../orders/order-buttons.ts';

/** What names a parcel, and the message to redraw if it was pressed on one. */
export const parcelArgs = (
  purchaseId: number,
  noticeId: number | undefined,
): Readonly<Record<string, number>> =>
  noticeId === undefined ? { purchase: purchaseId } : { purchase: purchaseId, [NOTICE_ARG]: noticeId };

/** The buttons of a parcel that is awaited; with a notice they redraw the message they sit on. */
export function parcelButtons(purchaseId: number, noticeId?: number): readonly Button[] {
  const args = parcelArgs(purchaseId, noticeId);
  const button = (
    label: string,
    action: string,
    weight: NonNullable<Button['weight']> = 'plain',
  ): Button => ({
    label,
    weight,
    does: { command: 'order', action, args },
  });
  return [
    button('All of it arrived', 'parcel-arrived', 'main'),
    button('All but some of it', 'parcel-some'),
    button('New date for all', 'parcel-date'),
    button('All chased', 'parcel-chased'),
  ];
}

/** Asks what of a parcel did not come as it should. */
export function parcelForm(purchaseId: number, noticeId?: number): Form {
  const hint = 'Names or numbers: bolt x2; #13. Empty for none';
  return {
    kind: 'form',
    title: 'What of it did not come right?',
    does: { command: 'order', action: 'parcel-some-done', args: parcelArgs(purchaseId, noticeId) },
    fields: [
      { name: 'missing', label: 'Not in the parcel', hint, required: false },
      { name: 'wrong', label: 'Not what was ordered', hint, required: false },
      { name: 'damaged', label: 'Damaged', hint, required: false },
      {
        name: 'rest',
        label: 'When is the rest due?',
        hint: 'Left empty, the old day stands',
        required: false,
      },
      { name: 'note', label: 'Anything to remember', required: false },
    ],
  };
}

/** Asks for the day now promised for all of it. */
export function parcelDateForm(purchaseId: number, noticeId?: number): Form {
  return {
    kind: 'form',
    title: 'New date for the parcel',
    does: { command: 'order', action: 'parcel-date-done', args: parcelArgs(purchaseId, noticeId) },
    fields: [{ name: 'due', label: 'When will it come?', hint: 'As you say it: 12 Dec, next Tuesday' }],
  };
}
