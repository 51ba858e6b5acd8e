import { z } from 'zod';
import { action, defineCommand, type Suggest, subcommand } from '../src/bot/command.ts';
import { buildHere, suggestDays } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { line } from '../src/bot/typed.ts';
import { adaptAnswer } from '../src/calc/fittings/adapt-answer.ts';
import { adapterCatalogue, findAdapter } from '../src/calc/fittings/adapters.ts';
import { endBook } from '../src/calc/fittings/book.ts';
import { shortestChain } from '../src/calc/fittings/chain.ts';
import { type DashMeasure, nearestDash } from '../src/calc/fittings/dash.ts';
import { type DashView, dashAnswer, nearestAnswer } from '../src/calc/fittings/dash-answer.ts';
import type { End } from '../src/calc/fittings/end.ts';
import { endLabel } from '../src/calc/fittings/end-data.ts';
import { type Judgement, judge } from '../src/calc/fittings/judge.ts';
import { mateAnswer, matingData, verdictWords } from '../src/calc/fittings/mate-answer.ts';
import { needsOf, orderNeed } from '../src/calc/fittings/needs.ts';
import { orderForm } from '../src/calc/fittings/order-form.ts';
import { type AskedEnd, endsMeant, oneEnd } from '../src/calc/fittings/resolve.ts';
import { sealAnswer, sealedEnds } from '../src/calc/fittings/seal-answer.ts';
import { suggestEnds } from '../src/calc/fittings/suggest.ts';
import { threadCatalogue } from '../src/calc/threads/catalogue.ts';
import type { Answer, Form } from '../src/core/reply.ts';
import { UserError } from '../src/core/user-error.ts';
import { readDashSize } from '../src/phrases/fittings/dash-size.ts';
import { readFittingEnd } from '../src/phrases/fittings/end.ts';
import { suggestPorts } from '../src/records/ports/find-port.ts';
import { portList } from '../src/records/ports/port-answer.ts';
import { suggestSuppliers } from '../src/records/suppliers/find-supplier.ts';
import { adapterTables } from '../src/tables/adapter-shapes.ts';
import { dashSizes, dashSource, oRings, sealingRings } from '../src/tables/fitting-sizes.ts';
import { fittingKinds, fittings } from '../src/tables/fittings.ts';
import { threadTables } from '../src/tables/threads.ts';
import { placeHere } from '../src/tasks/orders/place-here.ts';
import { notePortHere, portHere, portsHere, removePortHere, showPort } from '../src/tasks/ports/ports.ts';

const book = endBook({
  threads: threadCatalogue(threadTables),
  fittings,
  kinds: fittingKinds,
  oRings,
  rings: sealingRings,
});
const adapters = adapterCatalogue(book, adapterTables);
const dashView: DashView = {
  fittingsOf: (dash) =>
    fittings
      .filter((fitting) => fitting.dash === dash)
      .map(({ id, threadId, source }) => ({ id, thread: threadId, source })),
  source: dashSource,
};

const end = line(100);
const portName = line(80);
const supplier = line(80);
const due = line(100);
const quantity = z.int().min(1).max(10_000);
const link = line(300).refine((text) => /^https?:\/\/\S+$/.test(text), 'must be an address like https://…');
const offerEnds: Suggest = (typed) => suggestEnds(book, typed);
const offerPorts: Suggest = (typed, hand) => {
  const build = buildHere(hand);
  return build ? suggestPorts(hand.record, build.id, typed) : [];
};

export default defineCommand({
  description: 'Fittings: what goes on what, what seals it, what adapts it, and the build’s ports',
  subcommands: {
    mate: subcommand({
      description: 'Does one end go on the other, and does it seal?',
      example: '/fitting mate a:"JIC -8 male" b:"SAE 45 -8 female"',
      input: z.object({
        a: end.describe('One end: JIC -6 male, 1/4 BSPP male, M14x1.5 banjo'),
        b: end.describe('The other: 9/16-18 ORB port, G 1/4 female, 1/8 NPT female'),
      }),
      suggest: { a: offerEnds, b: offerEnds },
      run: ({ a, b }) => mateReply(a, b),
    }),
    adapt: subcommand({
      description: 'The shortest chain of adapters between two ends that seals at every joint',
      example: '/fitting adapt from:"9/16-18 ORB port" to:"-8 AN female"',
      input: z.object({
        from: end.describe('The end you have: 9/16-18 ORB port'),
        to: end.describe('The end it is to meet: JIC -8 female'),
      }),
      suggest: { from: offerEnds, to: offerEnds },
      run: ({ from, to }) => adaptReply(from, to),
    }),
    dash: subcommand({
      description: 'Dash size, tube, hose bore and threads, from any one of them',
      example: '/fitting dash size:-6',
      input: z.object({
        size: line(60).describe('-6, or a diameter: 9.5 mm, 3/8 in; or a thread: 9/16-18'),
        across: z.enum(['tube', 'bore']).optional().describe('What a diameter was taken across'),
      }),
      run: dashReply,
    }),
    washer: subcommand({
      description: 'What seals an end: which washers or O-ring, how many',
      example: '/fitting washer end:"M14x1.5 banjo"',
      input: z.object({ end: end.describe('The end: M14x1.5 banjo, G 1/4, -8 ORB') }),
      suggest: { end: offerEnds },
      run: (asked) => washerReply(asked.end),
    }),
    port: subcommand({
      description: 'Note or correct a port of this build, or show it',
      example: '/fitting port name:"catch-tank return" end:"3/4-16 female O-ring boss"',
      input: z.object({
        name: portName.describe('What you call it: catch-tank return'),
        end: end.optional().describe('Its end: 3/4-16 female O-ring boss; left out, the port is shown'),
        note: line(200).optional().describe('The reading behind it, or anything worth remembering'),
        link: link.optional().describe('Address of a photograph'),
      }),
      suggest: { name: offerPorts, end: offerEnds },
      run: portReply,
    }),
    ports: subcommand({
      description: 'Every port noted for this build',
      example: '/fitting ports',
      input: z.object({}),
      run: (_input, hand) => portList(portsHere(hand)),
    }),
    remove: subcommand({
      description: 'Take a port off this build',
      input: z.object({ port: portName.describe('Its name') }),
      suggest: { port: offerPorts },
      run: (input, hand) => removePortHere(hand, input.port),
    }),
    order: subcommand({
      description: 'Order a fitting for a port, after checking that it goes on and seals',
      input: z.object({
        port: portName.describe('The port it is for'),
        fitting: end.describe('What is ordered: the end that meets the port'),
        supplier: supplier.describe('Who it comes from'),
        due: due.describe('The day promised, e.g. 12 Dec, in 5 working days, next Tuesday'),
        quantity: quantity.default(1).describe('How many'),
        mismatch: z.enum(['ask', 'order']).default('ask').describe('What to do when it does not seal'),
      }),
      suggest: {
        port: offerPorts,
        fitting: offerEnds,
        supplier: (typed, { record }) => suggestSuppliers(record, typed),
        due: suggestDays,
      },
      run: orderForPort,
    }),
  },
  actions: {
    order: action({ input: z.object({ adapter: z.string().max(100) }), run: adapterForm }),
    'order-done': action({
      input: z.object({
        what: line(200),
        supplier,
        due,
        quantity: z.coerce.number('how many must be a number').int().min(1).max(10_000),
      }),
      run: (wanted, hand) => placeHere(hand, wanted),
    }),
    remove: action({
      input: z.object({ port: z.string().max(20) }),
      run: (input, hand) => removePortHere(hand, input.port),
    }),
  },
});

/** What was typed as ends of the book: by its exact name, else as people say it. */
function readEnd(typed: string): AskedEnd {
  const named = book.find(typed);
  if (named !== undefined) return { typed, ends: [named], sizeSaid: true, unused: [] };
  return endsMeant(book, typed, readFittingEnd(typed));
}

/**
 * Whether one end goes on another, in words and as data.
 *
 * @throws UserError when an end cannot be read, or the answer hangs on what was not said.
 */
export function mateReply(a: string, b: string): Answer {
  const [first, second] = [readEnd(a), readEnd(b)];
  return mateAnswer(judge(first, second), [...first.unused, ...second.unused]);
}

/** The shortest chain of adapters between two ends, in words and as data. */
export function adaptReply(from: string, to: string): Answer {
  const [first, last] = [readEnd(from), readEnd(to)];
  const ends = [oneEnd(first, 'from'), oneEnd(last, 'to')] as const;
  return adaptAnswer(...ends, shortestChain(...ends, adapters), [...first.unused, ...last.unused]);
}

interface DashInput {
  readonly size: string;
  readonly across?: 'tube' | 'bore' | undefined;
}

const MEASURES: Readonly<Record<'tube' | 'bore' | 'unsaid', readonly DashMeasure[]>> = {
  tube: ['tube'],
  bore: ['bore', 'tube-sized bore'],
  unsaid: ['tube', 'bore', 'tube-sized bore'],
};

export function dashReply({ size, across }: DashInput): Answer {
  const read = readDashSize(size, 'size');
  if (read.kind === 'diameter') {
    return nearestAnswer(read.mm, nearestDash(read.mm, dashSizes, MEASURES[across ?? 'unsaid']), dashView);
  }
  const wanted =
    read.kind === 'dash'
      ? new Set([read.dash])
      : new Set(readEnd(read.text).ends.flatMap(({ dash, fittingId }) => (fittingId ? (dash ?? []) : [])));
  const rows = dashSizes.filter(({ dash }) => wanted.has(dash));
  if (rows.length > 0) return dashAnswer(rows, dashView);
  throw new UserError(
    'not-found',
    `No dash size is "${size}". Known: ${dashSizes.map(({ dash }) => `-${dash}`).join(', ')}.`,
  );
}

export function washerReply(typed: string): Answer {
  const asked = readEnd(typed);
  return sealAnswer(oneEnd({ ...asked, ends: sealedEnds(asked.ends) }, 'end'), asked.unused);
}

interface PortInput {
  readonly name: string;
  readonly end?: string | undefined;
  readonly note?: string | undefined;
  readonly link?: string | undefined;
}

function portReply({ name, end: typed, note, link: photo }: PortInput, hand: Hand): Answer {
  if (typed === undefined && note === undefined && photo === undefined) return showPort(hand, name);
  const known = typed === undefined ? portHere(hand, name, 'name') : undefined;
  const endId = known?.endId ?? oneEnd(readEnd(typed ?? ''), 'end').id;
  return notePortHere(
    hand,
    { name: known?.name ?? name, endId, typed: typed ?? known?.typed ?? endId, note, link: photo },
    sayEnd(endId),
  );
}

/** @throws UserError 'not-found' when the tables no longer have the end a port was noted with. */
function storedEnd(id: string): End {
  const found = book.find(id);
  if (found) return found;
  throw new UserError(
    'not-found',
    `"${id}" is in no table any more. Note the port again with /fitting port.`,
  );
}

const sayEnd = (id: string): string => endLabel(storedEnd(id));

interface ForPort {
  readonly port: string;
  readonly fitting: string;
  readonly supplier: string;
  readonly due: string;
  readonly quantity: number;
  readonly mismatch: 'ask' | 'order';
}

function orderForPort(wanted: ForPort, hand: Hand): Answer {
  const port = portHere(hand, wanted.port, 'port');
  const noted = { typed: port.typed, ends: [storedEnd(port.endId)], sizeSaid: true, unused: [] };
  const judgement = judge(noted, readEnd(wanted.fitting), { a: 'port', b: 'fitting' });
  const { a, b, mating } = judgement;
  const tight = mating.seals === 'yes';
  if (!tight && wanted.mismatch === 'ask') throw doesNotFit(port.name, judgement);
  const seals = needsOf(a, b).flatMap((need) => orderNeed(need) ?? []);
  const withSeals = seals.length === 0 ? '' : `, with ${seals.join(' and ')}`;
  const what = `${b.id} for ${port.name}${withSeals}`;
  const card = placeHere(
    hand,
    { ...wanted, what },
    `${verdictWords(mating)}: ${b.id}, ${port.name} (${a.id}).`,
  );
  const caution = tight ? {} : { caution: `${verdictWords(mating)}: ${mating.why.join('; ')}.` };
  return { ...card, ...caution, data: { ...card.data, port: port.id, mating: matingData(judgement) } };
}

function doesNotFit(name: string, { a, b, mating }: Judgement): UserError {
  return new UserError(
    'which-one',
    `${b.id} for ${name} (${a.id}). ${verdictWords(mating)}: ${mating.why.join('; ')}. Not ordered. /fitting adapt from:"${a.id}" finds what goes between.`,
    { field: 'mismatch', choices: [{ label: 'Order it all the same', value: 'order' }] },
  );
}

function adapterForm({ adapter: id }: { readonly adapter: string }): Form {
  const found = findAdapter(adapters, id);
  if (found) return orderForm(found);
  throw new UserError('stale-message', 'That adapter is in no table any more. Ask again.');
}
