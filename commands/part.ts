import { z } from 'zod';
import { action, defineCommand, subcommand } from '../src/bot/command.ts';
import { openBuildHere } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { blank, line, pageNumber } from '../src/bot/typed.ts';
import type { Answer } from '../src/core/reply.ts';
import {
  addPart,
  alsoCall,
  dropName,
  type PartDetails,
  removePart,
  renamePart,
  setPart,
} from '../src/records/parts/edit-part.ts';
import { ORIGINS } from '../src/records/parts/part.ts';
import { WHEREABOUTS } from '../src/records/parts/part-list.ts';
import { CAME, countIn, fit as fitPart, sendBack, takeOff } from '../src/records/parts/part-moves.ts';
import { PLACES } from '../src/records/parts/part-store.ts';
import { suggestSuppliers } from '../src/records/suppliers/find-supplier.ts';
import { suggestDue } from '../src/tasks/orders/due-day.ts';
import { oneLine } from '../src/tasks/orders/order-tasks.ts';
import { moneyHere, placeHere } from '../src/tasks/orders/place-here.ts';
import { placeSeveral } from '../src/tasks/orders/place-several.ts';
import { partHere, suggestNewParts, suggestPartsHere } from '../src/tasks/parts/part-here.ts';
import {
  bringBack,
  listParts,
  moveInHand,
  movePart,
  orderForm,
  outFormOf,
  partCard,
  reportPart,
  takeOut,
} from '../src/tasks/parts/part-tasks.ts';

const part = line(200).describe('Its name, or any it goes by');
const quantity = z.int().min(1).max(10_000).optional();
const note = line(200).optional().describe('Anything worth remembering about it');
const came = z
  .enum(CAME)
  .optional()
  .describe('Where what the record has not in hand came from: its order just now, or other');
const details = {
  needed: z.int().min(0).max(10_000).optional().describe('How many the build needs'),
  origin: z.enum(ORIGINS).optional().describe('New, used, modified or made'),
  single_use: z.boolean().optional().describe('Used once and then renewed: gaskets, crush washers'),
  system: line(60).optional().describe('Lubrication, cooling, fuel: your own word'),
  note,
  link: line(300).optional().describe('The message that holds its photo or document'),
  guess: line(40).optional().describe('What one is likely to cost, for /cost'),
};
const places = z.enum(PLACES).default('shelf').describe('Where they lie');
const where = z.enum([...WHEREABOUTS, 'missing']).optional();
const bySupplier = (typed: string, { record }: Hand) => suggestSuppliers(record, typed);
const pressed = { part: z.string().max(220) };
const many = z.coerce.number().int().min(1).max(10_000);

export default defineCommand({
  description: 'The parts of this build: where each is, what is missing, what goes out for work',
  subcommands: {
    add: subcommand({
      description: 'Write a part down that the build needs',
      example: '/part add name:"dowel pin" needed:4 also:"bell housing dowel"',
      input: z.object({
        name: line(200).describe('What it is called'),
        also: line(400).optional().describe('What else it is called, with commas between'),
        ...details,
      }),
      suggest: { name: suggestNewParts, system: suggestSystems },
      run: add,
    }),
    list: subcommand({
      description: 'All parts, what needs a hand first; or those in one place',
      example: '/part list',
      input: z.object({
        where: where.describe('Only those that are there'),
        system: line(60).optional().describe('Only those of this system'),
      }),
      suggest: { system: suggestSystems },
      run: (input, hand) => listParts(hand, { ...input, page: 1 }),
    }),
    show: subcommand({
      description: 'One part: where all of it is, and when to expect the rest',
      example: '/part show part:"dowel pin"',
      input: z.object({ part }),
      suggest: { part: suggestPartsHere },
      run: (input, hand) => partCard(hand, partHere(hand, input.part)),
    }),
    set: subcommand({
      description: 'Change what is said of a part',
      example: '/part set part:"dowel pin" needed:2 guess:1.80',
      input: z.object({ part, ...details }),
      suggest: { part: suggestPartsHere, system: suggestSystems },
      run: ({ part: typed, ...given }, hand) => {
        const read = detailsOf(hand, given);
        return movePart(hand, typed, (record, found) => setPart(record, found, read));
      },
    }),
    shelf: subcommand({
      description: 'Say how many are here, with or without an order',
      example: '/part shelf part:"dowel pin" quantity:4',
      input: z.object({
        part,
        quantity: z
          .int()
          .min(0)
          .max(10_000)
          .optional()
          .describe('How many are here; what was missing too if you leave it out'),
        where: places,
        came,
        note,
      }),
      suggest: { part: suggestPartsHere },
      run: (input, hand) =>
        moveInHand(hand, input, (record, found, by) =>
          countIn(record, found, { ...input, place: input.where }, by),
        ),
    }),
    fitted: subcommand({
      description: 'Log that it is fitted',
      example: '/part fitted part:"dowel pin" quantity:2',
      input: z.object({
        part,
        quantity: quantity.describe('How many; all in hand that are needed if you leave it out'),
        came,
        note,
      }),
      suggest: { part: suggestPartsHere },
      run: (input, hand) => moveInHand(hand, input, (record, found, by) => fitPart(record, found, input, by)),
    }),
    off: subcommand({
      description: 'Log that it came off again: kept, or used up',
      example: '/part off part:"dowel pin" quantity:1',
      input: z.object({
        part,
        quantity: quantity.describe('How many; all that are fitted if you leave it out'),
        keep: z.boolean().optional().describe('Whether it can be used again; what is used once is not kept'),
        note,
      }),
      suggest: { part: suggestPartsHere },
      run: (input, hand) =>
        movePart(hand, input.part, (record, found, by) => takeOff(record, found, input, by), input.note),
    }),
    out: subcommand({
      description: 'Take it to somebody who works on it; it is then due back and chased',
      example:
        '/part out part:"dowel pin" to:"Brackendale Machining" work:"turn to size" due:"in 5 working days"',
      input: z.object({
        part,
        to: line(80).describe('Who does the work'),
        work: line(100).describe('What is done to it'),
        due: line(100).optional().describe('The day it is due back; else by their usual time'),
        quantity: quantity.describe('How many; all in hand if you leave it out'),
        price: line(40).optional().describe('What it costs altogether'),
        chaser: z
          .string()
          .meta({ picks: 'person' })
          .optional()
          .describe('Whose chase it is; yours unless said'),
        came,
        link: line(300).optional().describe('The message that holds its photo or document'),
      }),
      suggest: { part: suggestPartsHere, to: bySupplier, due: suggestDue },
      run: (input, hand) => takeOut(hand, input),
    }),
    back: subcommand({
      description: 'Log that it is back from work',
      example: '/part back part:"dowel pin"',
      input: z.object({
        part,
        quantity: quantity.describe('How many; all that are out if you leave it out'),
        condition: z
          .enum(['good', 'wrong', 'damaged'])
          .default('good')
          .describe('As it should be, or to sort out'),
        at: z.string().max(20).optional().describe('The order of work, #12, where it is out at several'),
        note,
      }),
      suggest: { part: suggestPartsHere },
      run: (input, hand) => bringBack(hand, input),
    }),
    'sent-back': subcommand({
      description: 'Log that it went back to where it came from',
      example: '/part sent-back part:"dowel pin" quantity:1',
      input: z.object({
        part,
        quantity: quantity.describe('How many; all in hand if you leave it out'),
        note,
      }),
      suggest: { part: suggestPartsHere },
      run: (input, hand) =>
        movePart(hand, input.part, (record, found, by) => sendBack(record, found, input, by), input.note),
    }),
    rename: subcommand({
      description: 'Give it another name; it still goes by the old one',
      input: z.object({ part, to: line(200).describe('What it is called from now on') }),
      suggest: { part: suggestPartsHere },
      run: (input, hand) =>
        movePart(hand, input.part, (record, found) => renamePart(record, found, input.to)),
    }),
    also: subcommand({
      description: 'Another name that the crew uses for it',
      example: '/part also part:"dowel pin" called:"locating dowel"',
      input: z.object({
        part,
        called: line(200).describe('What else it is called'),
        drop: z.boolean().default(false).describe('Take that name away again'),
      }),
      suggest: { part: suggestPartsHere },
      run: ({ part: typed, called, drop }, hand) =>
        movePart(hand, typed, (record, found) => (drop ? dropName : alsoCall)(record, found, called)),
    }),
    remove: subcommand({
      description: 'Take a part off the list that was never ordered',
      input: z.object({ part }),
      suggest: { part: suggestPartsHere },
      run: (input, hand) => movePart(hand, input.part, removePart),
    }),
  },
  actions: {
    list: action({
      input: z.object({ where, system: blank, page: pageNumber }),
      run: (input, hand) => listParts(hand, input),
    }),
    show: action({
      input: z.object(pressed),
      run: (input, hand) => partCard(hand, partHere(hand, input.part)),
    }),
    fitted: action({
      input: z.object({ ...pressed, came }),
      run: (input, hand) =>
        movePart(hand, input.part, (record, found, by) => fitPart(record, found, input, by)),
    }),
    here: action({
      input: z.object({ ...pressed, came }),
      run: (input, hand) =>
        movePart(hand, input.part, (record, found, by) =>
          countIn(record, found, { ...input, place: 'shelf' }, by),
        ),
    }),
    off: action({
      input: z.object(pressed),
      run: (input, hand) => movePart(hand, input.part, (record, found, by) => takeOff(record, found, {}, by)),
    }),
    order: action({ input: z.object(pressed), run: (input, hand) => orderForm(hand, input.part) }),
    'order-done': action({
      input: z.object({
        ...pressed,
        supplier: line(80),
        due: blank,
        quantity: many,
        price: blank,
        carriage: blank,
      }),
      run: orderIt,
    }),
    out: action({ input: z.object(pressed), run: (input, hand) => outFormOf(hand, input.part) }),
    'out-done': action({
      input: z.object({
        ...pressed,
        to: line(80),
        work: line(100),
        due: blank,
        quantity: many,
        price: blank,
        came,
      }),
      run: (input, hand) => takeOut(hand, input),
    }),
  },
});

interface DetailsTyped extends Omit<PartDetails, 'singleUse' | 'guess'> {
  readonly single_use?: boolean | undefined;
  readonly guess?: string | undefined;
}

function detailsOf(hand: Hand, { single_use: singleUse, guess, ...same }: DetailsTyped): PartDetails {
  return { ...same, singleUse, guess: guess === undefined ? undefined : moneyHere(hand, guess) };
}

function add(
  { name, also, ...given }: DetailsTyped & { readonly name: string; readonly also?: string | undefined },
  hand: Hand,
): Answer {
  const others = (also ?? '')
    .split(',')
    .map((other) => other.trim())
    .filter(Boolean);
  const read = detailsOf(hand, given);
  return reportPart(
    hand,
    hand.change((record) => addPart(record, openBuildHere(record, hand).id, name, others, read)),
  );
}

interface OrderGiven {
  readonly part: string;
  readonly supplier: string;
  readonly due?: string | undefined;
  readonly quantity: number;
  readonly price?: string | undefined;
  readonly carriage?: string | undefined;
}

function orderIt(
  { part: typed, supplier, due, quantity: count, price, carriage }: OrderGiven,
  hand: Hand,
): Answer {
  const { name } = partHere(hand, typed);
  if (carriage === undefined) return placeHere(hand, { what: name, supplier, due, quantity: count, price });
  const lines = oneLine(hand, { what: name, quantity: count, price });
  return placeSeveral(hand, { lines, supplier, due, carriage });
}

/** Systems that parts of this build have, the same word once. */
function suggestSystems(typed: string, hand: Hand) {
  const build = hand.record.builds.inChannel(hand.place.channelId);
  const systems = new Set(
    (build ? hand.record.parts.ofBuild(build.id) : []).flatMap(({ system }) => system ?? []),
  );
  return [...systems]
    .filter((system) => system.toLowerCase().includes(typed.toLowerCase()))
    .map((system) => ({ label: system, value: system }));
}
