import { crewOf, openBuildHere } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer, Form } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { type LineRead, readOrderLines } from '../../phrases/order-lines.ts';
import type { Money } from '../../records/orders/order.ts';
import { placePurchase, type WantedLine } from '../../records/purchases/place-purchase.ts';
import { readDue, supplierNamed } from './due-day.ts';
import { purchaseCard } from './order-here.ts';
import { dataOf } from './order-moves.ts';
import { chaserOf, moneyHere } from './place-here.ts';

/** Several lines at one supplier, as typed. */
export interface WantedSeveral {
  readonly lines: string;
  readonly supplier: string;
  readonly due?: string | undefined;
  readonly carriage?: string | undefined;
  readonly reference?: string | undefined;
  readonly chaser?: string | undefined;
  readonly link?: string | undefined;
}

/**
 * Writes several lines down as one purchase.
 *
 * @param field the option that holds the lines, for a question about one of them
 * @throws UserError about a line, the day, a price, a part or the supplier; nothing is then written.
 */
export function placeSeveral(hand: Hand, wanted: WantedSeveral, field = 'lines'): Answer {
  const { today } = crewOf(hand);
  const read = linesIn(wanted.lines, field);
  const supplier = supplierNamed(hand, wanted.supplier, 'supplier');
  const due = readDue(hand, wanted.due, supplier);
  const prices = [...read.map(({ price }) => price), wanted.carriage ?? null];
  const money = moneyOf(
    hand,
    prices.filter((price) => price !== null),
  );
  const lines = read.map((line) => wantedLine(line, money));
  const carriage = wanted.carriage === undefined ? null : money(wanted.carriage);
  const changed = askedAs(field, () =>
    hand.change((record) =>
      placePurchase(
        record,
        {
          buildId: openBuildHere(record, hand).id,
          supplier,
          lines,
          carriage,
          reference: wanted.reference ?? null,
          link: wanted.link ?? null,
          orderedOn: today,
          due: due.day,
          chaser: chaserOf(hand, wanted.chaser),
        },
        (index, name) =>
          read.map((line, at) => typedAgain(at === index ? { ...line, name } : line)).join('; '),
      ),
    ),
  );
  const { supplierIsNew } = changed.value;
  const card = purchaseCard(hand, changed.value, {
    said: changed.said,
    certainty: [due.readAs, supplierIsNew && `${wanted.supplier} is a new supplier here.`]
      .filter(Boolean)
      .join(' '),
    extraButtons: [undoButton(changed)],
  });
  return { ...card, data: { ...card.data, ...dataOf(changed) } };
}

/** Asks for lines and supplier; what is known already stands in it. */
export function severalForm(known: { readonly [Key in keyof WantedSeveral]?: string | undefined }): Form {
  const value = (text: string | undefined) => (text === undefined ? {} : { value: text });
  return {
    kind: 'form',
    title: 'Several things from one supplier',
    does: { command: 'order', action: 'several-done', args: {} },
    fields: [
      {
        name: 'lines',
        label: 'What, how many, price: one a line',
        hint: 'head gasket 84.50 ⏎ M8 bolt x10 12.00',
        long: true,
        ...value(known.lines),
      },
      { name: 'supplier', label: 'Who it comes from', ...value(known.supplier) },
      {
        name: 'due',
        label: 'The day promised',
        hint: '12 Dec, in 5 working days',
        required: false,
        ...value(known.due),
      },
      {
        name: 'carriage',
        label: 'Carriage',
        hint: '6.50 or EUR 6.50',
        required: false,
        ...value(known.carriage),
      },
      { name: 'link', label: 'Message that holds the invoice', required: false, ...value(known.link) },
    ],
  };
}

function linesIn(typed: string, field: string): readonly LineRead[] {
  const read = readOrderLines(typed);
  switch (read.verdict) {
    case 'read':
      return read.lines;
    case 'ask':
      throw new UserError('which-one', read.doubt.question, {
        field,
        choices: read.doubt.ways.map((way) => ({
          label: way.label.slice(0, 80),
          value: read.rest(way.typed),
        })),
      });
    case 'refuse':
      throw new UserError(
        'bad-input',
        `${read.problem} Nothing was changed. Type one thing a line: head gasket 84.50; M8 bolt x10 12.00`,
      );
  }
}

function wantedLine({ name, quantity, price, each }: LineRead, money: (typed: string) => Money): WantedLine {
  if (price === null) return { what: name, quantity, price: null };
  const { minor, currency } = money(price);
  return { what: name, quantity, price: { minor: each ? minor * quantity : minor, currency } };
}

/** An order is paid in one currency: where only one is named, it is that of the bare amounts too. */
function moneyOf(hand: Hand, prices: readonly string[]): (typed: string) => Money {
  const named = new Set(
    prices.filter((price) => /[^\d.,'’\s]/u.test(price)).map((price) => moneyHere(hand, price).currency),
  );
  const [only, ...others] = named;
  return (typed) => moneyHere(hand, typed, others.length === 0 ? only : undefined);
}

/** A line so that it is read the same way again, whatever its name looks like. */
const typedAgain = ({ name, quantity, price, each }: LineRead): string =>
  `"${name}" x${quantity}${price === null ? '' : ` @ ${price}${each ? ' each' : ''}`}`;

/** A question about the lines is one about the option they were typed into. */
function askedAs<Value>(field: string, work: () => Value): Value {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof UserError) || error.question?.field !== 'lines' || field === 'lines') throw error;
    throw new UserError(error.code, error.message, { ...error.question, field });
  }
}
