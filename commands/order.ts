import { z } from 'zod';
import { action, defineCommand, subcommand } from '../src/bot/command.ts';
import { crewOf, suggestDays } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { blank, line, pageNumber } from '../src/bot/typed.ts';
import { NOTICE_ARG } from '../src/records/orders/order-buttons.ts';
import { dateForm, partlyForm, settleForm } from '../src/records/orders/order-forms.ts';
import { parcelDateForm, parcelForm } from '../src/records/purchases/parcel-buttons.ts';
import { suggestSuppliers } from '../src/records/suppliers/find-supplier.ts';
import { redrawMorning } from '../src/reminders/redraw-morning.ts';
import { suggestDue } from '../src/tasks/orders/due-day.ts';
import { orderByHere } from '../src/tasks/orders/order-by-here.ts';
import { orderCard, orderHere, purchaseCard, suggestOrdersHere } from '../src/tasks/orders/order-here.ts';
import { orderTasks } from '../src/tasks/orders/order-tasks.ts';
import { purchaseHere, purchaseOf } from '../src/tasks/orders/parcel-here.ts';
import { suggestNewParts, suggestPartsHere } from '../src/tasks/parts/part-here.ts';

const tasks = orderTasks((hand, noticeId, touched) =>
  redrawMorning(hand.record, hand.notice(noticeId), noticeId, touched),
);

const order = line(200).describe('Its number, or its name');
const due = line(100);
const quantity = z.int().min(1).max(10_000);
const note = line(200).optional().describe('Anything worth remembering about it');
const condition = z.enum(['good', 'wrong', 'damaged']);
const outcome = z.enum(['kept', 'replaced', 'refunded']);

const supplier = line(80).describe('Who it comes from');
const chaser = z
  .string()
  .meta({ picks: 'person' })
  .optional()
  .describe('Whose chase it is; yours if you name nobody');
const link = line(300).optional().describe('The message that holds the invoice or a photo');
const carriage = line(40).optional().describe('Carriage, e.g. 6.50 or EUR 6.50');
const bySupplier = (typed: string, { record }: Hand) => suggestSuppliers(record, typed);

/** What a button names: the order or parcel, and the morning message to redraw if it sits on one. */
const noticed = { [NOTICE_ARG]: z.coerce.number().int().positive().optional() };
const pressed = { order: z.string().max(20), ...noticed };
const parcel = { purchase: z.coerce.number().int().positive(), ...noticed };
const exceptions = { missing: blank, wrong: blank, damaged: blank, rest: blank, note: blank };

export default defineCommand({
  description: 'Parts on order: place one, list them, log what came, chase',
  subcommands: {
    place: subcommand({
      description: 'Write down something that has been ordered',
      example: '/order place what:"head gasket" supplier:"Norvale Gaskets" due:"in 5 working days"',
      input: z.object({
        what: line(200).describe('What has been ordered; several things with a ; between them'),
        supplier,
        due: due
          .optional()
          .describe('The day promised, e.g. 12 Dec, in 5 working days; else by their usual time'),
        quantity: quantity.default(1).describe('How many'),
        price: line(40).optional().describe('What it costs altogether, e.g. 84.50 or EUR 84.50'),
        carriage,
        chaser,
        link,
      }),
      suggest: { what: suggestNewParts, supplier: bySupplier, due: suggestDue },
      run: (input, hand) => tasks.place(hand, input),
    }),
    several: subcommand({
      description: 'Write down several things ordered together, with their carriage',
      example:
        '/order several lines:"oil filter 8.20; M8 flange bolt x10 12.00" supplier:"Norvale Gaskets" due:"in 5 working days" carriage:6.50',
      input: z.object({
        lines: line(2000)
          .optional()
          .describe('What, how many, price; with a ; between: head gasket 84.50; M8 bolt x10 12.00'),
        supplier: supplier.optional(),
        due: due.optional().describe('The day promised; else by their usual time'),
        carriage,
        reference: line(80).optional().describe('Their number for it'),
        chaser,
        link,
      }),
      suggest: { supplier: bySupplier, due: suggestDue },
      run: (input, hand) => tasks.several(hand, input),
    }),
    list: subcommand({
      description: 'What is still to come, late first',
      example: '/order list',
      input: z.object({ supplier: line(80).optional().describe('Only from this supplier') }),
      suggest: { supplier: bySupplier },
      run: (input, hand) => tasks.list(hand, input.supplier, 1),
    }),
    by: subcommand({
      description: 'By when to order a part so that it is here on the day it is needed',
      example: '/order by part:"head gasket" needed:"in 4 weeks" lead:5',
      input: z.object({
        part: line(200).describe('What is needed'),
        needed: line(100)
          .optional()
          .describe('The day it is needed, e.g. 12 Dec; else when its job is likely'),
        supplier: supplier.optional(),
        lead: z
          .int()
          .min(0)
          .max(250)
          .optional()
          .describe('Working days from order to door; else as is known'),
      }),
      suggest: { part: suggestPartsHere, needed: suggestDays, supplier: bySupplier },
      run: (input, hand) => orderByHere(hand, input),
    }),
    show: subcommand({
      description: 'One order with everything that has come of it',
      input: z.object({ order }),
      suggest: { order: suggestOrdersHere },
      run: (input, hand) => orderCard(hand, orderHere(hand, input.order)),
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
      suggest: { order: suggestOrdersHere, rest: suggestDue },
      run: (input, hand) => tasks.arrived(hand, input),
    }),
    parcel: subcommand({
      description: 'Log a whole parcel: everything ordered together, but what you name',
      example: '/order parcel order:"oil filter" missing:"flange bolt x2"',
      input: z.object({
        order: order.describe('Any line of it: its number, or its name'),
        missing: line(500).optional().describe('What was not in it, e.g. bolt x2; washer'),
        wrong: line(500).optional().describe('What was not as ordered'),
        damaged: line(500).optional().describe('What was damaged'),
        rest: due.optional().describe('The day promised for what is missing'),
        note,
      }),
      suggest: { order: suggestOrdersHere, rest: suggestDue },
      run: ({ order: any, ...given }, hand) => tasks.parcelArrived(hand, purchaseOf(hand, any), given),
    }),
    date: subcommand({
      description: 'A new promised day for what is still to come',
      example: '/order date order:"head gasket" due:"in 3 working days"',
      input: z.object({
        order,
        due: due.describe('The new day, e.g. 12 Dec, in 5 working days, next Tuesday'),
      }),
      suggest: { order: suggestOrdersHere, due: suggestDue },
      run: (input, hand) => tasks.date(hand, input.order, input.due),
    }),
    chased: subcommand({
      description: 'Log that the supplier has been asked',
      example: '/order chased order:"head gasket"',
      input: z.object({ order }),
      suggest: { order: suggestOrdersHere },
      run: (input, hand) => tasks.chased(hand, input.order),
    }),
    settle: subcommand({
      description: 'Say what becomes of something that came wrong or damaged',
      input: z.object({
        order,
        outcome: outcome.describe('Kept as it is, replaced by the supplier, or given back'),
        due: due.optional().describe('The day promised for a replacement'),
      }),
      suggest: { order: suggestOrdersHere, due: suggestDue },
      run: (input, hand) => tasks.settle(hand, input.order, input.outcome, input.due),
    }),
    cancel: subcommand({
      description: 'Take an order off the list',
      input: z.object({ order }),
      suggest: { order: suggestOrdersHere },
      run: (input, hand) => tasks.cancel(hand, input.order),
    }),
  },
  actions: {
    list: action({
      input: z.object({ supplier: blank, page: pageNumber }),
      run: (input, hand) => tasks.list(hand, input.supplier, input.page),
    }),
    show: action({
      input: z.object(pressed),
      run: (input, hand) => orderCard(hand, orderHere(hand, input.order)),
    }),
    arrived: action({
      input: z.object(pressed),
      run: (input, hand) => tasks.arrived(hand, { ...input, condition: 'good' }, input[NOTICE_ARG]),
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
      run: (input, hand) => tasks.arrived(hand, input, input[NOTICE_ARG]),
    }),
    date: action({
      input: z.object(pressed),
      run: (input, hand) => dateForm(orderHere(hand, input.order), crewOf(hand).today, input[NOTICE_ARG]),
    }),
    'date-done': action({
      input: z.object({ ...pressed, due }),
      run: (input, hand) => tasks.date(hand, input.order, input.due, input[NOTICE_ARG]),
    }),
    chased: action({
      input: z.object(pressed),
      run: (input, hand) => tasks.chased(hand, input.order, input[NOTICE_ARG]),
    }),
    settle: action({
      input: z.object(pressed),
      run: (input, hand) => settleForm(orderHere(hand, input.order), input[NOTICE_ARG]),
    }),
    'settle-done': action({
      input: z.object({ ...pressed, outcome, due: blank }),
      run: (input, hand) => tasks.settle(hand, input.order, input.outcome, input.due, input[NOTICE_ARG]),
    }),
    'several-done': action({
      input: z.object({
        lines: z.string().min(1).max(4000),
        supplier,
        due: blank,
        carriage: blank,
        link: blank,
      }),
      run: (input, hand) => tasks.several(hand, input),
    }),
    parcel: action({
      input: z.object(parcel),
      run: (input, hand) => purchaseCard(hand, purchaseHere(hand, input.purchase)),
    }),
    'parcel-arrived': action({
      input: z.object(parcel),
      run: (input, hand) =>
        tasks.parcelArrived(hand, purchaseHere(hand, input.purchase), {}, input[NOTICE_ARG]),
    }),
    'parcel-some': action({
      input: z.object(parcel),
      run: (input) => parcelForm(input.purchase, input[NOTICE_ARG]),
    }),
    'parcel-some-done': action({
      input: z.object({ ...parcel, ...exceptions }),
      run: ({ purchase, [NOTICE_ARG]: noticeId, ...given }, hand) =>
        tasks.parcelArrived(hand, purchaseHere(hand, purchase), given, noticeId),
    }),
    'parcel-date': action({
      input: z.object(parcel),
      run: (input) => parcelDateForm(input.purchase, input[NOTICE_ARG]),
    }),
    'parcel-date-done': action({
      input: z.object({ ...parcel, due }),
      run: (input, hand) =>
        tasks.parcelDate(hand, purchaseHere(hand, input.purchase), input.due, input[NOTICE_ARG]),
    }),
    'parcel-chased': action({
      input: z.object(parcel),
      run: (input, hand) => tasks.parcelChased(hand, purchaseHere(hand, input.purchase), input[NOTICE_ARG]),
    }),
  },
});
