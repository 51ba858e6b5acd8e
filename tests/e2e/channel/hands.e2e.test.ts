import { type ChatInputCommandInteraction, SlashCommandBuilder } from 'discord.js';
import { expect, it } from 'vitest';
import type { LocalChannel } from '../../../src/channel/contract.ts';
import { connectedClient, onInteraction, testChannel } from '../../support/channel.ts';

const COMMANDS = [
  new SlashCommandBuilder()
    .setName('thread')
    .setDescription('Which thread is it')
    .addStringOption((option) => option.setName('size').setDescription('As measured').setRequired(true))
    .addStringOption((option) =>
      option
        .setName('side')
        .setDescription('Which side')
        .addChoices({ name: 'male', value: 'm' }, { name: 'female', value: 'f' }),
    )
    .addIntegerOption((option) =>
      option.setName('starts').setDescription('How many').setMinValue(1).setMaxValue(4),
    )
    .addBooleanOption((option) => option.setName('tapered').setDescription('Is it tapered')),
  new SlashCommandBuilder()
    .setName('order')
    .setDescription('Parts on order')
    .addSubcommand((sub) =>
      sub
        .setName('chase')
        .setDescription('Hand it to somebody')
        .addUserOption((option) => option.setName('who').setDescription('Whose it is').setRequired(true)),
    )
    .addSubcommand((sub) => sub.setName('list').setDescription('All of them'))
    .addSubcommand((sub) =>
      sub
        .setName('receipt')
        .setDescription('Keep a receipt')
        .addAttachmentOption((option) =>
          option.setName('file').setDescription('The receipt').setRequired(true),
        ),
    ),
  new SlashCommandBuilder().setName('lock').setDescription('For the owner').setDefaultMemberPermissions(0),
];

/** Answers with what arrived. */
function told({ options, commandName }: ChatInputCommandInteraction): string {
  if (commandName !== 'thread') {
    const file = options.getAttachment('file');
    return [options.getSubcommand(), options.getUser('who')?.displayName, file?.name, file?.size].join(' ');
  }
  const numbers = [options.getInteger('starts'), options.getBoolean('tapered')];
  return [options.getString('size'), options.getString('side'), ...numbers].join('|');
}

async function bot(channel: LocalChannel) {
  const client = await connectedClient(channel);
  await client.application.commands.set(COMMANDS);
  onInteraction(client, async (interaction) => {
    if (interaction.isChatInputCommand()) await interaction.reply(told(interaction));
  });
  return client;
}

it.each([
  { line: '/thread 21.9 x 1.5 side:MALE', content: '21.9 x 1.5|m||' },
  { line: '/thread 21.9 x 1.5 side:"Fe-male"', content: '21.9 x 1.5|f||' },
  { line: '/thread size:"11/16\\" 16tpi" starts:2 tapered:no', content: '11/16" 16tpi||2|false' },
  { line: '/order chase who:@ben', content: 'chase Ben  ' },
  { line: '/order chase Ben', content: 'chase Ben  ' },
])('gives the bot $line as it was meant', async ({ line, content }) => {
  await using channel = await testChannel();
  await using _bot = await bot(channel);
  expect(await channel.hands('Ada').type(line)).toMatchObject({ kind: 'answered', message: { content } });
});

it('fills a file option with the file that came along', async () => {
  await using channel = await testChannel();
  await using _bot = await bot(channel);
  const files = [{ name: 'receipt.txt', type: 'text/plain', bytes: new Uint8Array(3) }];
  const outcome = await channel.hands('Ada').type('/order receipt', { files });
  expect(outcome).toMatchObject({ message: { content: 'receipt  receipt.txt 3' } });
});

it.each([
  { line: '/thread', problem: '"size" is missing: As measured. Type size: and what it is.' },
  { line: '/thread x side:middle', problem: '"side" is one of male, female; "middle" is not.' },
  { line: '/thread x starts:9', problem: '"starts" is from 1 to 4; 9 is outside.' },
  { line: '/thread x starts:two', problem: '"starts" is a whole number without a unit; "two" is not.' },
  { line: '/thread x tapered:maybe', problem: '"tapered" is yes or no; "maybe" is neither.' },
  {
    line: '/order chase who:Zoe',
    problem: '"who": nobody here is called "Zoe". There are Chargehand, Ada, Ben.',
  },
  { line: '/order receipt', problem: '"file" is missing: attach a file (The receipt).' },
  { line: '', problem: 'There is nothing to send yet.' },
  { line: 'x'.repeat(2001), problem: 'A message has at most 2000 characters; this has 2001.' },
])('does not send $line', async ({ line, problem }) => {
  await using channel = await testChannel();
  await using _bot = await bot(channel);
  expect(await channel.hands('Ada').type(line)).toEqual({ kind: 'refused', problem });
});

it('keeps a command reserved to the owner from everybody else', async () => {
  await using channel = await testChannel();
  await using _bot = await bot(channel);
  expect((await channel.hands('Ben').type('/lock')).kind).toBe('refused');
  expect((await channel.hands('Ben').suggest('/l', 2)).map(({ label }) => label)).toEqual([]);
  expect((await channel.hands('Ada').suggest('/l', 2)).map(({ label }) => label)).toEqual(['/lock']);
});

it.each([
  { line: '/', next: ['/lock ', '/order ', '/thread '] },
  { line: '/th', next: ['/thread '] },
  { line: '/rea', next: ['/thread '] },
  { line: '/order ', next: ['/order chase ', '/order list ', '/order receipt '] },
  { line: '/order l', next: ['/order list '] },
  { line: '/order list ', next: [] },
  { line: '/thread ', next: ['/thread size:', '/thread side:', '/thread starts:', '/thread tapered:'] },
  { line: '/thread size:21.9 s', next: ['/thread size:21.9 side:', '/thread size:21.9 starts:'] },
  {
    line: '/thread size:21.9 side:',
    next: ['/thread size:21.9 side:male ', '/thread size:21.9 side:female '],
  },
  { line: '/thread size:21.9 side:fe', next: ['/thread size:21.9 side:female '] },
  {
    line: '/thread size:21.9 side:male ',
    next: ['/thread size:21.9 side:male starts:', '/thread size:21.9 side:male tapered:'],
  },
  { line: '/thread size:x tapered:', next: ['/thread size:x tapered:yes ', '/thread size:x tapered:no '] },
  { line: '/order chase who:b', next: ['/order chase who:@Ben '] },
  { line: 'ask @be', next: ['ask @Ben '] },
  { line: 'hello', next: [] },
])('suggests what can follow "$line"', async ({ line, next }) => {
  await using channel = await testChannel();
  await using _bot = await bot(channel);
  const suggestions = await channel.hands('Ada').suggest(line, line.length);
  const lines = suggestions.map((suggestion) => suggestion.line);
  expect(line.startsWith('/order chase') ? lines.slice(0, 1) : lines).toEqual(next);
  for (const suggestion of suggestions) expect(suggestion.caret).toBe(suggestion.line.length);
});

it('keeps what stands behind the caret', async () => {
  await using channel = await testChannel();
  await using _bot = await bot(channel);
  const [first] = await channel.hands('Ada').suggest('/thread size:21.9 side:fe starts:2', 25);
  expect(first).toMatchObject({ line: '/thread size:21.9 side:female starts:2', caret: 30 });
});

it('talks to the bot alone in a direct channel, where the others do not look in', async () => {
  await using channel = await testChannel();
  await using _bot = await bot(channel);
  const ada = channel.hands('Ada');
  const channelId = ada.directChannelId();
  expect(await ada.type('/thread 21.9', { channelId })).toMatchObject({ kind: 'answered' });
  expect(ada.sees(channelId)).toHaveLength(1);
  expect(await channel.hands('Ben').type('x', { channelId })).toMatchObject({ kind: 'refused' });
});
