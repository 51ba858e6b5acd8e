import { z } from 'zod';
import type { Catalogue, CommandEntry } from '../src/bot/catalogue.ts';
import { action, defineCommand, isRunnable } from '../src/bot/command.ts';
import type { OptionSpec } from '../src/bot/options.ts';
import { TOPICS, type Topic } from '../src/bot/topics.ts';
import { PAGE_ARG, pageOf } from '../src/core/pages.ts';
import type { Answer, Button, Item } from '../src/core/reply.ts';
import { UserError } from '../src/core/user-error.ts';

const page = z.coerce.number().int().min(1).default(1);

export default defineCommand({
  description: 'What there is to type, with an example of each',
  example: '/help',
  input: z.object({
    command: z.string().trim().max(40).optional().describe('One command, to see its options'),
  }),
  suggest: {
    command: (typed, { catalogue }) =>
      catalogue.entries
        .filter(({ name }) => name.includes(typed.replace('/', '')))
        .map(({ name, description }) => ({ label: `/${name}: ${description}`, value: name })),
  },
  run: ({ command }, { catalogue }) =>
    command === undefined ? overview(catalogue.entries) : inDetail(entryOf(command, catalogue), 1),
  actions: {
    topic: action({
      input: z.object({ topic: z.string().max(20) }),
      run: ({ topic }, hand) => ({ ...oneTopic(topic, hand.catalogue), inPlace: hand.pressedInPlace }),
    }),
    command: action({
      input: z.object({ command: z.string().max(40), [PAGE_ARG]: page }),
      run: (input, hand) => ({
        ...inDetail(entryOf(input.command, hand.catalogue), input[PAGE_ARG]),
        inPlace: hand.pressedInPlace,
      }),
    }),
  },
});

function entryOf(command: string, catalogue: Catalogue): CommandEntry {
  const entry = catalogue.find(command.replace(/^\//, ''));
  if (entry) return entry;
  throw new UserError('not-found', `There is no command "${command}". /help lists them all.`);
}

const listed = (topic: Topic, entries: readonly CommandEntry[]): readonly CommandEntry[] =>
  topic.commands.flatMap((name) => entries.find((entry) => entry.name === name) ?? []);

function overview(entries: readonly CommandEntry[]): Answer {
  return {
    kind: 'answer',
    subject: 'Help',
    result: 'Type / and pick, or type the whole line.',
    items: TOPICS.map((topic) => ({
      text: topic.name,
      note: listed(topic, entries)
        .map(({ name }) => `/${name}`)
        .join(' '),
    })),
    smallPrint: ['/help command:order shows the options of one. /undo takes your last change back.'],
    buttons: TOPICS.map(topicButton),
    audience: 'asker',
    data: { commands: entries.map(({ name, description }) => ({ name, description })) },
  };
}

const topicButton = ({ key, name }: Topic): Button => ({
  label: name,
  does: { command: 'help', action: 'topic', args: { topic: key } },
});

function oneTopic(key: string, { entries }: Catalogue): Answer {
  const topic = TOPICS.find((one) => one.key === key);
  if (!topic) throw new UserError('stale-message', 'That part of the help has moved. Type /help again.');
  const commands = listed(topic, entries);
  return {
    kind: 'answer',
    subject: 'Help',
    result: topic.name,
    items: commands.map((entry) => ({ text: `/${entry.name}`, note: about(entry) })),
    menu: {
      prompt: 'Options of one',
      does: { command: 'help', action: 'command', args: {} },
      arg: 'command',
      choices: commands.map(({ name, description }) => ({
        label: `/${name}`,
        note: description,
        value: name,
      })),
    },
    buttons: TOPICS.filter((one) => one !== topic).map(topicButton),
    audience: 'asker',
    data: { topic: topic.key, commands: commands.map(({ name }) => name) },
  };
}

function about({ description, command: { does } }: CommandEntry): string {
  const examples = isRunnable(does)
    ? [does.example]
    : Object.values(does).flatMap(({ example }) => example ?? []);
  const [example] = examples;
  return example === undefined ? description : `${description}. For example: ${example}`;
}

function inDetail(entry: CommandEntry, at: number): Answer {
  const { name, description, options } = entry;
  const shown = pageOf(
    itemsOf(entry),
    at,
    { command: 'help', action: 'command', args: { command: name } },
    4,
  );
  return {
    kind: 'answer',
    subject: `/${name}`,
    result: description,
    items: shown.things,
    ...(shown.where === undefined ? {} : { smallPrint: [shown.where] }),
    buttons: shown.buttons,
    audience: 'asker',
    data: { command: name, description, options: options.map(({ name: option }) => option) },
  };
}

function itemsOf({ name, command: { does }, options, subcommands }: CommandEntry): readonly Item[] {
  if (isRunnable(does)) {
    return [{ text: `/${name}`, note: [...options.map(sayOption), does.example ?? ''].join('\n') }];
  }
  return subcommands.map((sub) => ({
    text: `/${name} ${sub.name}`,
    note: [sub.description, ...sub.options.map(sayOption), does[sub.name]?.example ?? ''].join('\n'),
  }));
}

function sayOption({ name, description, required, choices }: OptionSpec): string {
  const among = choices.length > 0 ? ` (${choices.join(', ')})` : '';
  return `${name}${required ? '' : ' (if you like)'}: ${description}${among}`;
}
