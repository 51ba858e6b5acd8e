import { z } from 'zod';
import { action, defineCommand, type Suggest, subcommand } from '../src/bot/command.ts';
import { turned, turnedPage } from '../src/bot/turned.ts';
import { line } from '../src/bot/typed.ts';
import { PAGE_ARG } from '../src/core/pages.ts';
import { bottlesToBuy, fluidBudget } from '../src/records/fluids/budget.ts';
import { suggestCases } from '../src/records/fluids/find-case.ts';
import { lackingL } from '../src/records/fluids/fluid.ts';
import { litresOf } from '../src/records/fluids/say-fluid.ts';
import { plain } from '../src/records/suppliers/supplier.ts';
import { caseForm, fluidOrderForm, pourForm } from '../src/tasks/fluids/fluid-forms.ts';
import { budgetList, fluidList } from '../src/tasks/fluids/fluid-lists.ts';
import { changedFluid, drainCase, drainedFluid, pouredFluid } from '../src/tasks/fluids/fluid-moves.ts';
import { shelveOrder } from '../src/tasks/fluids/fluid-orders.ts';
import { bottleLeft, boughtFluid } from '../src/tasks/fluids/fluid-shelf.ts';
import {
  caseIsFull,
  casesHere,
  gradesHere,
  noteCase,
  removeCase,
  shelfHere,
} from '../src/tasks/fluids/fluids.ts';
import { placeHere } from '../src/tasks/orders/place-here.ts';

const name = line(80);
const grade = line(80);
const volume = line(60);
const note = line(200).optional().describe('Anything worth remembering about it');
const distance = volume.optional().describe('What the distance stands at, e.g. 812 km');
const over = z
  .enum(['ask', 'all', 'takes', 'drained'])
  .default('ask')
  .describe('When it is more than fits: overfilled, it takes that much, or it was drained first');
const mismatch = z
  .enum(['ask', 'poured', 'own'])
  .default('ask')
  .describe('When it is another grade: poured all the same, or the case’s own');
const caseId = z.coerce.number().int().positive();

const offerCases: Suggest = (typed, hand) => suggestCases(casesHere(hand), typed, litresOf(hand.record));
const offerGrades: Suggest = (typed, hand) =>
  gradesHere(hand)
    .filter((one) => plain(one).includes(plain(typed)))
    .map((one) => ({ label: one.slice(0, 100), value: one }));
/** "5.6 L into sump": each case with what it lacks. */
const offerPours: Suggest = (typed, hand) => {
  const say = litresOf(hand.record);
  return casesHere(hand).flatMap((one) => {
    const into = `${say(lackingL(one) || one.capacityL)} into ${one.name}`.slice(0, 100);
    return plain(into).includes(plain(typed)) ? [{ label: into, value: into }] : [];
  });
};

/** "1 × 5 L 10W-40": of each grade what is short, or one bottle, in the size bought last. */
const offerBottles: Suggest = (typed, hand) => {
  const say = litresOf(hand.record);
  return fluidBudget(casesHere(hand), shelfHere(hand))
    .toSorted((a, b) => b.shortL - a.shortL)
    .map((budget) => {
      const { count, sizeL } = bottlesToBuy(budget);
      return `${count} x ${say(sizeL)} ${budget.grade}`.slice(0, 100);
    })
    .filter((words) => plain(words).includes(plain(typed)))
    .map((words) => ({ label: words, value: words }));
};

export default defineCommand({
  description: 'Fluids: what takes what, bottles bought, poured and drained, and what is to be ordered',
  subcommands: {
    case: subcommand({
      description: 'Note what is filled, with what and how much, or show it',
      example: '/fluid case name:sump grade:10W-40 capacity:"5.6 L"',
      input: z.object({
        name: name.describe('What is filled: sump, cooling system, gearbox'),
        grade: grade.optional().describe('Which fluid: 10W-40, coolant 50 %, 75W-90 GL-5'),
        capacity: volume.optional().describe('How much it takes: 5.6 L, 6 US qt'),
        note,
      }),
      suggest: { name: offerCases, grade: offerGrades },
      run: (input, hand) => noteCase(hand, input),
    }),
    bought: subcommand({
      description: 'Bottles onto the shelf',
      example: '/fluid bought what:"2 x 5 L 10W-40"',
      input: z.object({
        what: line(100).describe('How many of what: 2 x 5 L 10W-40'),
        volume: volume.optional().describe('What one bottle holds, if not said before'),
        grade: grade.optional().describe('The grade, if not said before'),
      }),
      suggest: { what: offerBottles, grade: offerGrades },
      run: (input, hand) => boughtFluid(hand, input),
    }),
    poured: subcommand({
      description: 'Something poured into a case, off the shelf',
      example: '/fluid poured what:"2 L into sump"',
      input: z.object({
        what: line(100).describe('How much into what: 5.6 L into sump'),
        case: name.optional().describe('The case, if not said before'),
        volume: volume.optional().describe('How much, if not said before'),
        grade: grade.optional().describe('The grade, if it is not the case’s own'),
        over,
        mismatch,
        note,
      }),
      suggest: { what: offerPours, case: offerCases, grade: offerGrades },
      run: (input, hand) => pouredFluid(hand, input),
    }),
    drained: subcommand({
      description: 'A case drained, all of it or so much',
      example: '/fluid drained what:sump',
      input: z.object({
        what: line(100).describe('sump, or 2.3 L from cooling system'),
        volume: volume.optional().describe('How much, if not all of it'),
        distance,
        note,
      }),
      suggest: { what: offerCases },
      run: (input, hand) => drainedFluid(hand, input),
    }),
    changed: subcommand({
      description: 'Drained and filled again: an oil change, as one thing',
      example: '/fluid changed case:sump volume:"5.4 L"',
      input: z.object({
        case: name.describe('The case'),
        volume: volume.optional().describe('How much it took; all that it takes if left out'),
        grade: grade.optional().describe('The grade, if it is not the case’s own'),
        distance,
        over,
        mismatch,
        note,
      }),
      suggest: { case: offerCases, grade: offerGrades },
      run: (input, hand) => changedFluid(hand, input),
    }),
    list: subcommand({
      description: 'Every case with how full it is, and the shelf',
      example: '/fluid list',
      input: z.object({}),
      run: (_input, hand) => fluidList(hand, 1),
    }),
    budget: subcommand({
      description: 'What takes what against the shelf, and what must be ordered',
      example: '/fluid budget',
      input: z.object({}),
      run: (_input, hand) => budgetList(hand, 1),
    }),
    left: subcommand({
      description: 'What is left in a bottle, when some was spilt or lent',
      input: z.object({
        grade: grade.describe('The grade'),
        left: volume.describe('What is left in the bottle opened last: 0.8 L'),
      }),
      suggest: { grade: offerGrades },
      run: (input, hand) => bottleLeft(hand, input.grade, input.left),
    }),
    remove: subcommand({
      description: 'Take a case off the list that was never filled',
      input: z.object({ case: name.describe('The case') }),
      suggest: { case: offerCases },
      run: (input, hand) => removeCase(hand, input.case),
    }),
  },
  actions: {
    pour: action({ input: z.object({ case: caseId }), run: (input, hand) => pourForm(hand, input.case) }),
    'pour-done': action({
      input: z.object({ case: caseId, volume, grade, over, mismatch }),
      run: (input, hand) => pouredFluid(hand, { ...input, what: input.volume, case: `#${input.case}` }),
    }),
    drained: action({
      input: z.object({ case: caseId }),
      run: (input, hand) => drainCase(hand, input.case),
    }),
    full: action({ input: z.object({ case: caseId }), run: (input, hand) => caseIsFull(hand, input.case) }),
    case: action({ input: z.object({ name }), run: (input) => caseForm(input.name) }),
    'case-done': action({
      input: z.object({ name, grade, capacity: volume }),
      run: (input, hand) => noteCase(hand, input),
    }),
    order: action({
      input: z.object({ case: caseId }),
      run: (input, hand) => fluidOrderForm(hand, input.case),
    }),
    'order-done': action({
      input: z.object({
        what: line(200),
        supplier: line(80),
        due: line(100),
        quantity: z.coerce.number('how many must be a number').int().min(1).max(10_000),
      }),
      run: (input, hand) => placeHere(hand, input),
    }),
    shelve: action({
      input: z.object({ order: z.coerce.number().int().positive() }),
      run: (input, hand) => shelveOrder(hand, input.order),
    }),
    list: action({
      input: z.object({ [PAGE_ARG]: turnedPage }),
      run: (input, hand) => turned(hand, input[PAGE_ARG], (page) => fluidList(hand, page)),
    }),
    budget: action({
      input: z.object({ [PAGE_ARG]: turnedPage }),
      run: (input, hand) => turned(hand, input[PAGE_ARG], (page) => budgetList(hand, page)),
    }),
  },
});
