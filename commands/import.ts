import { z } from 'zod';
import { action, defineCommand, subcommand } from '../src/bot/command.ts';
import { buildHere, crewOf, openBuildHere, readDay, suggestDays } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { readBytes, readText } from '../src/bot/read-file.ts';
import { undoButton } from '../src/bot/undo-button.ts';
import { PAGE_ARG, pageOf } from '../src/core/pages.ts';
import type { Answer, Form } from '../src/core/reply.ts';
import { wallTime } from '../src/core/time.ts';
import { readOrderList } from '../src/exchange/order-list.ts';
import { countsOf, KeptList, previewHead, previewItem } from '../src/exchange/order-list-answer.ts';
import { boundTo, countsIn, RecordFile, readRecordFile } from '../src/exchange/record-file.ts';
import { standing } from '../src/records/orders/order.ts';
import { suggestSuppliers } from '../src/records/suppliers/find-supplier.ts';
import { plain } from '../src/records/suppliers/supplier.ts';
import { dateLocale, homeCurrency } from '../src/records/team/team.ts';
import { leave, propose, proposed } from '../src/tasks/imports/bring-in.ts';
import { openNameCheck, placeShown, usualDay } from '../src/tasks/imports/listed-names.ts';

const file = z.string().meta({ picks: 'file' });
const supplier = z.string().trim().min(1).max(80).optional();
const due = z.string().trim().min(1).max(100).optional();
const id = z.coerce.number().int().positive();
const pressed = { id, [PAGE_ARG]: z.coerce.number().int().min(1).default(1) };

export default defineCommand({
  description: 'Bring in a list of orders, or a whole record; shown first, written when you say so',
  subcommands: {
    orders: subcommand({
      description: 'A list of orders as CSV, attached or pasted; the first line names the columns',
      example: '/import orders lines:"what;supplier;quantity;due\\nhead gasket;Norvale Gaskets;1;2030-12-04"',
      input: z.object({
        file: file.optional().describe('A .csv or .txt file; leave it out to paste the lines'),
        lines: z.string().min(1).max(6000).optional().describe('The lines themselves, pasted'),
        supplier: supplier.describe('From whom, where the list does not say'),
        due: due.describe('The day promised, where the list does not say'),
      }),
      suggest: { supplier: (typed, { record }) => suggestSuppliers(record, typed), due: suggestDays },
      async run({ file: attached, lines, ...rest }, hand) {
        if (attached !== undefined) return preview(hand, await readText(hand, attached), rest);
        return lines === undefined ? pasteForm(rest) : preview(hand, lines.replaceAll('\\n', '\n'), rest);
      },
    }),
    record: subcommand({
      description: 'A whole record as /export json wrote it, in place of this one',
      input: z.object({ file: file.describe('The .json file, as it was exported') }),
      run: async ({ file: attached }, hand) => recordPreview(hand, await readBytes(hand, attached)),
    }),
  },
  actions: {
    pasted: action({
      input: z.object({ lines: z.string().min(1), supplier, due }),
      run: ({ lines, ...rest }, hand) => preview(hand, lines, rest),
    }),
    page: action({
      input: z.object(pressed),
      run: (input, hand) => ({
        ...previewCard(hand, input.id, KeptList.parse(proposed(hand, input.id, 'orders')), input[PAGE_ARG]),
        inPlace: hand.pressedInPlace,
      }),
    }),
    write: action({ input: z.object({ id }), run: (input, hand) => writeOrders(hand, input.id) }),
    replace: action({ input: z.object({ id }), run: (input, hand) => replaceRecord(hand, input.id) }),
    leave: action({ input: z.object({ id }), run: (input, hand) => leave(hand, input.id) }),
  },
});

interface Fallback {
  readonly supplier?: string | undefined;
  readonly due?: string | undefined;
}

function pasteForm({ supplier: from, due: on }: Fallback): Form {
  return {
    kind: 'form',
    title: 'Paste the list',
    does: {
      command: 'import',
      action: 'pasted',
      args: { ...(from === undefined ? {} : { supplier: from }), ...(on === undefined ? {} : { due: on }) },
    },
    fields: [
      {
        name: 'lines',
        label: 'Orders, a line each',
        hint: 'First line: what; supplier; quantity; price; due',
        long: true,
      },
    ],
  };
}

function preview(hand: Hand, text: string, rest: Fallback): Answer {
  const { settings, today, days } = crewOf(hand);
  const read = readOrderList(text, {
    dates: {
      now: wallTime(hand.clock.nowMs(), settings.zone),
      zone: settings.zone,
      locale: dateLocale(settings.country),
      direction: 'any',
      workingDays: days,
    },
    today,
    currency: homeCurrency(settings.country),
    supplier: rest.supplier,
    due: rest.due === undefined ? undefined : readDay(hand, 'due', rest.due).day,
    usualDue: (name, orderedOn) => usualDay(hand, name, orderedOn),
  });
  const onOrder = openNames(hand);
  const nameProblem = openNameCheck(hand.record, buildHere(hand)?.id);
  const list: KeptList = {
    unused: [...read.unused],
    lines: read.lines.map((line) => {
      if (!('order' in line)) return line;
      const problem = nameProblem(line.order);
      if (problem !== undefined) return { line: line.line, text: line.order.what, problem };
      const known = onOrder.get(plain(line.order.what));
      return known === undefined ? line : { ...line, note: `On order already as #${known}.` };
    }),
  };
  return previewCard(hand, propose(hand, 'orders', list), list, 1);
}

function openNames(hand: Hand): ReadonlyMap<string, number> {
  const build = buildHere(hand);
  const open = (build ? hand.record.orders.ofBuild(build.id) : []).filter(
    (order) => standing(order).state === 'open',
  );
  return new Map(open.map((order) => [plain(order.what), order.id]));
}

function previewCard(hand: Hand, proposal: number, list: KeptList, page: number): Answer {
  const { orders, problems } = countsOf(list);
  const shown = pageOf(list.lines, page, { command: 'import', action: 'page', args: { id: proposal } });
  const { today } = crewOf(hand);
  return {
    kind: 'answer',
    subject: 'Import',
    ...previewHead(list),
    items: shown.things.map((line) => previewItem(line, today)),
    ...(shown.where === undefined ? {} : { smallPrint: [`Lines ${shown.where}.`] }),
    buttons: [
      ...(orders === 0
        ? []
        : [
            {
              label: `Write ${orders} down`,
              weight: 'main' as const,
              does: { command: 'import', action: 'write', args: { id: proposal } },
            },
          ]),
      { label: 'Leave it', does: { command: 'import', action: 'leave', args: { id: proposal } } },
      ...shown.buttons,
    ],
    audience: 'crew',
    data: { proposal, orders, problems, lines: list.lines.map((line) => ({ ...line })) },
  };
}

function writeOrders(hand: Hand, proposal: number): Answer {
  const list = KeptList.parse(proposed(hand, proposal, 'orders'));
  const changed = hand.change((record) => {
    const buildId = openBuildHere(record, hand).id;
    const placed = list.lines.flatMap((line) => {
      if (!('order' in line)) return [];
      return [placeShown(record, { ...line.order, buildId, chaser: hand.who })];
    });
    hand.proposals.forget(proposal);
    return { value: placed, said: `${placed.length} orders brought in from a list` };
  });
  const placed = changed.value;
  return {
    kind: 'answer',
    subject: 'Import',
    result: `${placed.length} ${placed.length === 1 ? 'order' : 'orders'} written down`,
    tone: 'done',
    certainty: `${placed.map((order) => `#${order.id}`).join(', ')}: yours to chase.`.slice(0, 400),
    buttons: [undoButton(changed)],
    audience: 'crew',
    inPlace: hand.pressedInPlace,
    data: { orders: placed.map((order) => order.id), change: changed.changeId },
  };
}

function recordPreview(hand: Hand, bytes: Uint8Array): Answer {
  const { file: found, bound } = boundTo(readRecordFile(bytes), hand.place.channelId);
  const proposal = propose(hand, 'record', found);
  const now = countsIn(hand.whole.read().tables);
  const then = countsIn(found.tables);
  return {
    kind: 'answer',
    subject: 'Import',
    result: 'This would put the file in the place of the whole record',
    tone: 'late',
    certainty: `The file is of ${found.team}, made on ${found.madeOn}. Nothing is written yet.`,
    facts: [
      ['Now', now],
      ['Then', then],
    ],
    working: bound.map(({ build, here }) =>
      here
        ? `${build} becomes the build of this channel.`
        : `${build} belongs to another channel; /build take gives it one.`,
    ),
    caution: 'What is here now goes. Undo brings it back, but look twice.',
    buttons: [
      {
        label: 'Put it in its place',
        weight: 'grave',
        does: { command: 'import', action: 'replace', args: { id: proposal } },
      },
      { label: 'Leave it', does: { command: 'import', action: 'leave', args: { id: proposal } } },
    ],
    audience: 'crew',
    data: { proposal, now, then },
  };
}

function replaceRecord(hand: Hand, proposal: number): Answer {
  const found = RecordFile.parse(proposed(hand, proposal, 'record'));
  const changed = hand.change(() => {
    hand.whole.replaceWith(found);
    hand.proposals.forget(proposal);
    return { value: null, said: `the whole record replaced by the copy of ${found.madeOn}` };
  });
  return {
    kind: 'answer',
    subject: 'Import',
    result: `The record is now the copy of ${found.madeOn}`,
    tone: 'done',
    facts: [['Holds', countsIn(found.tables)]],
    buttons: [undoButton(changed)],
    audience: 'crew',
    inPlace: hand.pressedInPlace,
    data: { change: changed.changeId, holds: countsIn(found.tables) },
  };
}
