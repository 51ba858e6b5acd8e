import { z } from 'zod';
import type { CommandEntry } from '../src/bot/catalogue.ts';
import { defineCommand, isRunnable } from '../src/bot/command.ts';
import type { OptionSpec } from '../src/bot/options.ts';
import type { Answer, Item } from '../src/core/reply.ts';
import { UserError } from '../src/core/user-error.ts';

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
  run({ command }, { catalogue }): Answer {
    if (command === undefined) return overview(catalogue.entries);
    const entry = catalogue.find(command.replace(/^\//, ''));
    if (!entry) throw new UserError('not-found', `There is no command "${command}". /help lists them all.`);
    return inDetail(entry);
  },
});

function overview(entries: readonly CommandEntry[]): Answer {
  return {
    kind: 'answer',
    subject: 'Help',
    result: 'Type / and pick, or type the whole line.',
    items: entries.map((entry) => ({ text: `/${entry.name}`, note: about(entry) })),
    smallPrint: ['/help command:order shows the options of one. /undo takes your last change back.'],
    audience: 'asker',
    data: { commands: entries.map(({ name, description }) => ({ name, description })) },
  };
}

function about({ description, command: { does } }: CommandEntry): string {
  const examples = isRunnable(does)
    ? [does.example]
    : Object.values(does)
        .map(({ example }) => example)
        .slice(0, 1);
  const [example] = examples;
  return example === undefined ? description : `${description}. For example: ${example}`;
}

function inDetail({ name, description, command: { does }, options, subcommands }: CommandEntry): Answer {
  const items: Item[] = isRunnable(does)
    ? [{ text: `/${name}`, note: [...options.map(sayOption), does.example ?? ''].join('\n') }]
    : subcommands.map((sub) => ({
        text: `/${name} ${sub.name}`,
        note: [sub.description, ...sub.options.map(sayOption), does[sub.name]?.example ?? ''].join('\n'),
      }));
  return {
    kind: 'answer',
    subject: `/${name}`,
    result: description,
    items,
    audience: 'asker',
    data: { command: name, description, options: options.map(({ name: option }) => option) },
  };
}

function sayOption({ name, description, required, choices }: OptionSpec): string {
  const among = choices.length > 0 ? ` (${choices.join(', ')})` : '';
  return `${name}: ${description}${among}${required ? '' : ', if you like'}`;
}
