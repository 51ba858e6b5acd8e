import { z } from 'zod';
import { action, defineCommand, subcommand } from '../src/bot/command.ts';
import { buildHere, crewOf, openBuildHere, readDay, suggestDays } from '../src/bot/crew.ts';
import type { Changed, Hand } from '../src/bot/hand.ts';
import { undoButton } from '../src/bot/undo-button.ts';
import type { Answer } from '../src/core/reply.ts';
import type { Day } from '../src/core/time.ts';
import { type Choice, UserError } from '../src/core/user-error.ts';
import { readMoney } from '../src/phrases/money.ts';
import type { Build } from '../src/records/builds/build.ts';
import { findOrder, suggestOrders } from '../src/records/orders/find-order.ts';
import { cancel, chase, promise, receive } from '../src/records/orders/moves.ts';
import { byUrgency, type Order, standing } from '../src/records/orders/order.ts';
import { orderAnswer, orderData } from '../src/records/orders/order-answer.ts';
import { NOTICE_ARG } from '../src/records/orders/order-buttons.ts';
import { dateForm, partlyForm, settleForm } from '../src/records/orders/order-forms.ts';
import { orderList } from '../src/records/orders/order-list.ts';
import { place } from '../src/records/orders/place.ts';
import { decimalsOf } from '../src/records/orders/say-order.ts';
import { settle } from '../src/records/orders/settle.ts';
import { knownSupplier, suggestSuppliers } from '../src/records/suppliers/find-supplier.ts';
import { homeCurrency } from '../src/records/team/team.ts';
import type { TeamRecord } from '../src/records/team-record.ts';
import { morningAnswer } from '../src/reminders/morning-answer.ts';
import { Notice } from '../src/reminders/notice.ts';

/** One line of text, however it was pasted. */
const line = (most: number) =>
  z
    .string()
    .min(1)
    .max(most)
    .transform((text) => text.replace(/\s+/g, ' ').trim())
    .refine((text) => text !== '', 'nothing was typed');

const order = line(200).describe('Its number, or its name');
const due = line(100);
const quantity = z.int().min(1).max(10_000);
const note = line(200).optional().describe('Anything worth remembering about it');
const condition = z.enum(['good', 'wrong', 'damaged']);
const outcome = z.enum(['kept', 'replaced', 'refunded']);

/** An empty field of a form is a field left out. */
const blank = z
  .string()
  .optional()
  .transform((text) => (text?.trim() ? text.trim() : undefined));

/** What a button names: the order, and the morning message to redraw if it sits on one. */
const pressed = { order: z.string().max(20), [NOTICE_ARG]: z.coerce.number().int().positive().optional() };

export default defineCommand({
  description: 'Parts on order: place one, list them, log what came, chase',
  subcommands: {
    place: subcommand({
      description: 'Write down something that has been ordered',
      example: '/order place what:"head gasket" supplier:"Norvale Gaskets" due:"in 5 working days"',
      input: z.object({
        what: line(200).describe('What has been ordered'),
        supplier: line(80).describe('Who it comes from'),
        due: due.describe('The day promised, e.g. 12 Dec, in 5 working days, next Tuesday'),
        quantity: quantity.default(1).describe('How many'),
        price: line(40).optional().describe('What it costs altogether, e.g. 84.50 or EUR 84.50'),
        chaser: z
          .string()
          .meta({ picks: 'person' })
          .optional()
          .describe('Whose chase it is; yours if you name nobody'),
      }),
      suggest: {
        what: (typed, { record }) => suggestNames(record, typed),
        supplier: (typed, { record }) => suggestSuppliers(record, typed),
        due: suggestDays,
      },
      run: placeOrder,
    }),
    list: subcommand({
      description: 'What is still to come, late first',
      example: '/order list',
      input: z.object({ supplier: line(80).optional().describe('Only from this supplier') }),
      suggest: { supplier: (typed, { record }) => suggestSuppliers(record, typed) },
      run: listOrders,
    }),
    show: subcommand({
      description: 'One order with everything that has come of it',
      input: z.object({ order }),
      suggest: { order: suggestHere },
      run: (input, hand) => show(hand, orderHere(hand, input.order)),
    }),
    arrived: subcommand({
      description: 'Log what came: all of it, some of it, or not as it should be',
      example: '/order arrived order:"head gasket"',
      input: z.object({
        order,
        quantity: quantity
          .optional()
          .describe('How many came; all that was still to come if you leave it out'),
        condition: condition.default('good').describe('As it should be, or to sort out'),
        rest: due.optional().describe('The day promised for what is still missing'),
        note,
      }),
      suggest: { order: suggestHere, rest: suggestDays },
      run: logArrival,
    }),
    date: subcommand({
      description: 'A new promised day for what is still to come',
      example: '/order date order:"head gasket" due:"in 3 working days"',
      input: z.object({
        order,
        due: due.describe('The new day, e.g. 12 Dec, in 5 working days, next Tuesday'),
      }),
      suggest: { order: suggestHere, due: suggestDays },
      run: giveNewDate,
    }),
    chased: subcommand({
      description: 'Log that the supplier has been asked',
      example: '/order chased order:"head gasket"',
      input: z.object({ order }),
      suggest: { order: suggestHere },
      run: (input, hand) => move(hand, input.order, (record, found, today) => chase(record, found, today)),
    }),
    settle: subcommand({
      description: 'Say what becomes of something that came wrong or damaged',
      input: z.object({
        order,
        outcome: outcome.describe('Kept as it is, replaced by the supplier, or given back'),
        due: due.optional().describe('The day promised for a replacement'),
      }),
      suggest: { order: suggestHere, due: suggestDays },
      run: settleIt,
    }),
    cancel: subcommand({
      description: 'Take an order off the list',
      input: z.object({ order }),
      suggest: { order: suggestHere },
      run: (input, hand) => move(hand, input.order, (record, found, today) => cancel(record, found, today)),
    }),
  },
  actions: {
    show: action({
      input: z.object(pressed),
      run: (input, hand) => show(hand, orderHere(hand, input.order)),
    }),
    arrived: action({
      input: z.object(pressed),
      run: (input, hand) => logArrival({ ...input, condition: 'good' }, hand),
    }),
    partly: action({
      input: z.object(pressed),
      run: (input, hand) => partlyForm(orderHere(hand, input.order), input[NOTICE_ARG]),
    }),
    'partly-done': action({
      input: z.object({
        ...pressed,
        quantity: z.coerce.number().int().min(1).max(10_000),
        condition,
        rest: blank,
        note: blank,
      }),
      run: logArrival,
    }),
    date: action({
      input: z.object(pressed),
      run: (input, hand) => dateForm(orderHere(hand, input.order), crewOf(hand).today, input[NOTICE_ARG]),
    }),
    'date-done': action({ input: z.object({ ...pressed, due }), run: giveNewDate }),
    chased: action({
      input: z.object(pressed),
      run: (input, hand) =>
        move(hand, input.order, (record, found, today) => chase(record, found, today), input[NOTICE_ARG]),
    }),
    settle: action({
      input: z.object(pressed),
      run: (input, hand) => settleForm(orderHere(hand, input.order), input[NOTICE_ARG]),
    }),
    'settle-done': action({ input: z.object({ ...pressed, outcome, due: blank }), run: settleIt }),
  },
});

interface Placing {
  readonly what: string;
  readonly supplier: string;
  readonly due: string;
  readonly quantity: number;
  readonly price?: string | undefined;
  readonly chaser?: string | undefined;
}

function placeOrder(given: Placing, hand: Hand): Answer {
  const { settings, today } = crewOf(hand);
  const read = readDay(hand, 'due', given.due);
  const price =
    given.price === undefined ? null : readMoney(given.price, homeCurrency(settings.country), decimalsOf);
  const chaser =
    given.chaser === undefined ? hand.who : { id: given.chaser, name: hand.nameOf(given.chaser) };
  const { what, supplier, quantity: count } = given;
  const changed = hand.change((record) => {
    const buildId = openBuildHere(record, hand).id;
    return place(record, {
      buildId,
      what,
      supplier,
      quantity: count,
      price,
      orderedOn: today,
      due: read.day,
      chaser,
    });
  });
  const { order: placed, supplierIsNew } = changed.value;
  const certainty = [read.readAs, supplierIsNew && `${placed.supplier} is a new supplier here.`]
    .filter(Boolean)
    .join(' ');
  return report(hand, { ...changed, value: placed }, certainty);
}

function listOrders({ supplier }: { supplier?: string | undefined }, hand: Hand): Answer {
  const build = buildHere(hand);
  const only = supplier === undefined ? undefined : knownSupplier(hand.record, supplier);
  const open = (build ? hand.record.orders.ofBuild(build.id) : [])
    .filter(({ supplierId }) => only === undefined || supplierId === only.id)
    .filter((one) => ['open', 'to sort out'].includes(standing(one).state))
    .toSorted(byUrgency);
  return orderList(open, { ...crewOf(hand), ...(only === undefined ? {} : { supplier: only.name }) });
}

interface Coming {
  readonly order: string;
  readonly quantity?: number | undefined;
  readonly condition: z.output<typeof condition>;
  readonly rest?: string | undefined;
  readonly note?: string | undefined;
  readonly [NOTICE_ARG]?: number | undefined;
}

function logArrival(given: Coming, hand: Hand): Answer {
  const rest = given.rest === undefined ? undefined : readDay(hand, 'rest', given.rest);
  const { quantity: count, condition: how, note: remark } = given;
  return move(
    hand,
    given.order,
    (record, found, today) =>
      receive(record, found, {
        quantity: count,
        condition: how,
        note: remark,
        rest: rest?.day,
        cameOn: today,
        byName: hand.who.name,
      }),
    given[NOTICE_ARG],
    rest?.readAs,
  );
}

interface Dating {
  readonly order: string;
  readonly due: string;
  readonly [NOTICE_ARG]?: number | undefined;
}

function giveNewDate(given: Dating, hand: Hand): Answer {
  const { day, readAs } = readDay(hand, 'due', given.due);
  return move(
    hand,
    given.order,
    (record, found, today) => promise(record, found, day, today),
    given[NOTICE_ARG],
    readAs,
  );
}

interface Settling {
  readonly order: string;
  readonly outcome: z.output<typeof outcome>;
  readonly due?: string | undefined;
  readonly [NOTICE_ARG]?: number | undefined;
}

function settleIt(given: Settling, hand: Hand): Answer {
  const read = given.due === undefined ? undefined : readDay(hand, 'due', given.due);
  return move(
    hand,
    given.order,
    (record, found, today) => settle(record, found, given.outcome, read?.day, today),
    given[NOTICE_ARG],
    read?.readAs,
  );
}

/** Does one thing to one order, then shows it: in place on the morning message it was pressed on, else as a card. */
function move(
  hand: Hand,
  typed: string,
  what: (record: TeamRecord, found: Order, today: Day) => { value: Order; said: string },
  noticeId?: number,
  certainty?: string,
): Answer {
  const found = orderHere(hand, typed);
  const changed = hand.change((record) =>
    what(record, findOrder(record, found.buildId, String(found.id)), crewOf(hand).today),
  );
  return redrawn(hand, noticeId, changed) ?? report(hand, changed, certainty);
}

function report(hand: Hand, changed: Changed<Order>, certainty?: string): Answer {
  const card = orderAnswer({
    order: changed.value,
    ...crewOf(hand),
    said: changed.said,
    ...(certainty === undefined ? {} : { certainty }),
    extraButtons: [undoButton(changed)],
  });
  return { ...card, data: { ...card.data, change: changed.changeId } };
}

const show = (hand: Hand, found: Order): Answer => orderAnswer({ order: found, ...crewOf(hand) });

/** The morning message as it now is, or nothing when the press came from elsewhere. */
function redrawn(
  hand: Hand,
  noticeId: number | undefined,
  { value, said, changeId }: Changed<Order>,
): Answer | undefined {
  if (noticeId === undefined || !hand.pressedInPlace) return undefined;
  const kept = Notice.safeParse(hand.notice(noticeId));
  if (!kept.success || !kept.data.orderIds.includes(value.id)) return undefined;
  const { record } = hand;
  const orders = kept.data.orderIds.flatMap((id) => record.orders.find(id) ?? []);
  const buildName = record.builds.find(kept.data.buildId)?.name ?? '';
  const { days } = crewOf(hand);
  const answer = morningAnswer({ buildName, notice: kept.data, noticeId, orders, days });
  return { ...answer, inPlace: true, data: { ...orderData(value), said, change: changeId } };
}

function orderHere(hand: Hand, typed: string): Order {
  return findOrder(hand.record, requireBuild(hand).id, typed);
}

function suggestHere(typed: string, hand: Hand): readonly Choice[] {
  const build = buildHere(hand);
  return build ? suggestOrders(hand.record, build.id, typed) : [];
}

function requireBuild(hand: Hand): Build {
  const build = buildHere(hand);
  if (build) return build;
  throw new UserError(
    'not-found',
    'Nothing has been ordered in this channel yet. /order place writes the first one down.',
  );
}

function suggestNames(record: TeamRecord, typed: string): readonly Choice[] {
  return record.orders
    .namesUsed()
    .filter((known) => known.toLowerCase().includes(typed.toLowerCase()) && known.length <= 100)
    .map((known) => ({ label: known, value: known }));
}
