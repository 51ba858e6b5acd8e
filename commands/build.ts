import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { buildHere, openBuildHere } from '../src/bot/crew.ts';
import type { Changed, Hand } from '../src/bot/hand.ts';
import { undoButton } from '../src/bot/undo-button.ts';
import type { Answer, Button } from '../src/core/reply.ts';
import { UserError } from '../src/core/user-error.ts';
import type { Build } from '../src/records/builds/build.ts';
import { findBuild, suggestBuilds } from '../src/records/builds/find-build.ts';
import { standing } from '../src/records/orders/order.ts';
import { plain } from '../src/records/suppliers/supplier.ts';

const name = z.string().trim().min(1).max(80);

export default defineCommand({
  description: 'The build this channel is about: its name and what it is made of',
  subcommands: {
    show: subcommand({
      description: 'What is known of the build of this channel',
      example: '/build show',
      input: z.object({}),
      run: (_input, hand) => buildAnswer(hand),
    }),
    name: subcommand({
      description: 'Give the build a name',
      example: '/build name name:"Hill-climb coupe"',
      input: z.object({ name: name.describe('What the crew calls the car') }),
      run: (input, hand) =>
        buildAnswer(
          hand,
          hand.change((record) => {
            record.builds.rename(openBuildHere(record, hand).id, input.name);
            return { value: null, said: `the build here is called ${input.name}` };
          }),
        ),
    }),
    spec: subcommand({
      description: 'Write down what the car or its engine is; the record handed over begins with it',
      example: '/build spec what:"compression ratio" value:"8.6 : 1"',
      input: z.object({
        what: z.string().trim().min(1).max(60).describe('Bore, injectors, cam, the maker’s torque …'),
        value: z.string().trim().min(1).max(200).optional().describe('Left out, the line is struck off'),
      }),
      suggest: { what: suggestFacts },
      run: (input, hand) =>
        input.value === undefined ? strikeOff(hand, input.what) : say(hand, input.what, input.value),
    }),
    list: subcommand({
      description: 'Every build of the crew',
      example: '/build list',
      input: z.object({}),
      run: (_input, hand) => buildList(hand),
    }),
    open: subcommand({
      description: 'Open a build of its own in this thread or channel',
      input: z.object({ name: name.describe('What the crew calls the car') }),
      run: (input, hand) => openHere(hand, input.name),
    }),
    take: subcommand({
      description: 'Make this channel the one of a build that another had',
      input: z.object({ build: z.string().trim().min(1).max(100).describe('The build') }),
      suggest: { build: (typed, { record }) => suggestBuilds(record, typed) },
      run: (input, hand) => takeHere(hand, input.build),
    }),
  },
});

function say(hand: Hand, what: string, value: string): Answer {
  return buildAnswer(
    hand,
    hand.change((record) => {
      const { id } = openBuildHere(record, hand);
      const known = record.builds.facts(id).find((fact) => plain(fact.name) === plain(what));
      record.builds.say(id, known?.name ?? what, value);
      const was = known === undefined || known.value === value ? '' : `, was ${known.value}`;
      return { value: null, said: `${known?.name ?? what}: ${value}${was}` };
    }),
  );
}

function strikeOff(hand: Hand, what: string): Answer {
  const build = buildHere(hand);
  const facts = build ? hand.record.builds.facts(build.id) : [];
  const known = facts.find((fact) => plain(fact.name) === plain(what));
  if (known === undefined) {
    const there =
      facts.length === 0
        ? 'Nothing is written down yet.'
        : `There is ${facts.map((fact) => fact.name).join(', ')}.`;
    throw new UserError(
      'not-found',
      `Nothing is written down under "${what}". ${there} Give value:"…" to write it down.`,
    );
  }
  return buildAnswer(
    hand,
    hand.change((record) => {
      record.builds.unsay(known.id);
      return { value: null, said: `${known.name} (${known.value}) struck off` };
    }),
  );
}

function openHere(hand: Hand, called: string): Answer {
  const { channelId } = hand.place;
  const own = hand.record.builds.inChannel(channelId);
  if (own) {
    throw new UserError(
      'already-done',
      `This channel has a build: ${own.name}. Nothing was changed. Open another one in a channel or thread of its own.`,
    );
  }
  return buildAnswer(
    hand,
    hand.change((record) => ({
      value: record.builds.open(channelId, called),
      said: `${called} opened here`,
    })),
  );
}

function takeHere(hand: Hand, typed: string): Answer {
  const build = findBuild(hand.record, typed, 'build');
  const { channelId } = hand.place;
  const own = hand.record.builds.inChannel(channelId);
  if (own) {
    const same = own.id === build.id;
    throw new UserError(
      'already-done',
      `This channel is ${same ? 'that build’s already' : `${own.name}’s`}. Nothing was changed.${same ? '' : ' Ask in a channel or thread that has none.'}`,
    );
  }
  return buildAnswer(
    hand,
    hand.change((record) => {
      record.builds.move(build.id, channelId);
      return { value: null, said: `${build.name} moved to this channel` };
    }),
  );
}

function buildAnswer(hand: Hand, changed?: Changed<unknown>): Answer {
  const build = buildHere(hand);
  const facts = build ? hand.record.builds.facts(build.id) : [];
  const openOrders = build ? openOrdersOf(hand, build) : 0;
  const buttons: readonly Button[] = changed === undefined ? [] : [undoButton(changed)];
  return {
    kind: 'answer',
    subject: 'Build',
    result: build?.name ?? 'Nothing is recorded in this channel yet',
    ...(build === undefined ? { certainty: 'The first thing written down here opens its build.' } : {}),
    facts: [...facts.map((fact) => [fact.name, fact.value] as const), ['Orders open', String(openOrders)]],
    buttons,
    audience: 'crew',
    data: {
      name: build?.name ?? null,
      openOrders,
      facts: facts.map((fact) => ({ name: fact.name, value: fact.value })),
      ...(changed === undefined ? {} : { said: changed.said, change: changed.changeId }),
    },
  };
}

function buildList(hand: Hand): Answer {
  const builds = hand.record.builds.all();
  const here = buildHere(hand);
  return {
    kind: 'answer',
    subject: 'Builds',
    result:
      builds.length === 0
        ? 'No build is recorded yet'
        : `${builds.length} ${builds.length === 1 ? 'build' : 'builds'}`,
    items: builds.map((build) => ({
      text: build.name,
      note: `${build.id === here?.id ? 'This channel’s. ' : ''}Orders open: ${openOrdersOf(hand, build)}.`,
    })),
    audience: 'crew',
    data: { builds: builds.map(({ id, name: called }) => ({ build: id, name: called })) },
  };
}

const openOrdersOf = ({ record }: Hand, { id }: Build): number =>
  record.orders.ofBuild(id).filter((order) => standing(order).state === 'open').length;

function suggestFacts(typed: string, hand: Hand) {
  const build = buildHere(hand);
  const known = build ? hand.record.builds.facts(build.id) : [];
  return known
    .filter((fact) => plain(fact.name).includes(plain(typed)))
    .map((fact) => ({ label: fact.name, value: fact.name }));
}
