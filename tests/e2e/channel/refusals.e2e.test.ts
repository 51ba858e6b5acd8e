/**
 * What the platform refuses and its published description does not say: each row is a request that must come back
 * with this code at this place. Source of the limits: developer documentation (message object, component reference,
 * application commands), as named in the channel's rules.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testChannel } from '../../support/channel.ts';

const text = (length: number) => 'x'.repeat(length);
const many = <T>(count: number, make: (index: number) => T): T[] =>
  Array.from({ length: count }, (_, i) => make(i));

const V2 = 1 << 15;
const display = (content = 'x') => ({ type: 10, content });
const button = (more: object = {}) => ({ type: 2, style: 1, label: 'Go', custom_id: 'go', ...more });
const select = (more: object = {}) => ({
  type: 3,
  custom_id: 's',
  options: [{ label: 'A', value: 'a' }],
  ...more,
});
const row = (...components: object[]) => ({ type: 1, components });
const container = (...components: object[]) => ({ type: 17, components });
const v2 = (...components: object[]) => ({ flags: V2, components });

const MESSAGES = [
  { what: 'nothing to show', body: {}, code: 50006 },
  { what: 'only spaces', body: { content: '  ' }, code: 50006 },
  { what: '2001 characters', body: { content: text(2001) }, at: 'content' },
  { what: 'a nonce of 26', body: { content: 'x', nonce: text(26) }, at: 'nonce' },
  { what: 'eleven embeds', body: { embeds: many(11, () => ({ title: 'x' })) }, at: 'embeds' },
  {
    what: 'embeds of 6001 in all',
    body: { embeds: [{ description: text(4000) }, { description: text(2001) }] },
    at: 'embeds',
  },
  {
    what: 'an empty embed field',
    body: { embeds: [{ fields: [{ name: 'a', value: '' }] }] },
    at: 'embeds.0.fields.0.value',
  },
  { what: 'an embed title of 257', body: { embeds: [{ title: text(257) }] }, at: 'embeds.0.title' },
  {
    what: 'parse and list of users',
    body: { content: 'x', allowed_mentions: { parse: ['users'], users: ['1500000000000000001'] } },
    at: 'allowed_mentions',
  },
  {
    what: 'six rows',
    body: { components: many(6, (i) => row(button({ custom_id: `b${i}` }))) },
    at: 'components',
  },
  {
    what: 'six buttons in a row',
    body: { components: [row(...many(6, (i) => button({ custom_id: `b${i}` })))] },
    at: 'components.0.components',
  },
  {
    what: 'a button beside a select',
    body: { components: [row(button(), select())] },
    at: 'components.0.components',
  },
  {
    what: 'the same custom_id twice',
    body: { components: [row(button(), button())] },
    at: 'components.0.components.1.custom_id',
  },
  {
    what: 'a button without custom_id',
    body: { components: [row({ type: 2, style: 1, label: 'Go' })] },
    at: 'components.0.components.0.custom_id',
  },
  {
    what: 'a custom_id of 101',
    body: { components: [row(button({ custom_id: text(101) }))] },
    at: 'components.0.components.0.custom_id',
  },
  {
    what: 'a link button with custom_id',
    body: { components: [row(button({ style: 5, url: 'https://example.org' }))] },
    at: 'components.0.components.0',
  },
  {
    what: 'a button label of 81',
    body: { components: [row(button({ label: text(81) }))] },
    at: 'components.0.components.0.label',
  },
  {
    what: 'a button without a word',
    body: { components: [row(button({ label: '' }))] },
    at: 'components.0.components.0',
  },
  {
    what: '26 options',
    body: { components: [row(select({ options: many(26, (i) => ({ label: `${i}`, value: `${i}` })) }))] },
    at: 'components.0.components.0.options',
  },
  {
    what: 'more choices than options',
    body: { components: [row(select({ max_values: 2 }))] },
    at: 'components.0.components.0.max_values',
  },
  {
    what: 'the same option twice',
    body: { components: [row(select({ options: many(2, () => ({ label: 'A', value: 'a' })) }))] },
    at: 'components.0.components.0.options.1.value',
  },
  { what: 'V2 components without the flag', body: { components: [display()] }, at: 'components.0.type' },
  { what: 'the V2 flag with content', body: { ...v2(display()), content: 'x' }, at: 'content' },
  { what: 'the V2 flag with embeds', body: { ...v2(display()), embeds: [{ title: 'x' }] }, at: 'embeds' },
  {
    what: '41 components, nested ones counted',
    body: v2(container(...many(40, () => display()))),
    at: 'components',
  },
  { what: 'texts of 4001 in all', body: v2(display(text(2001)), display(text(2000))), at: 'components' },
  { what: 'an empty Text Display', body: v2(display('')), at: 'components.0.content' },
  {
    what: 'a Section without accessory',
    body: v2({ type: 9, components: [display()] }),
    at: 'components.0.accessory',
  },
  {
    what: 'four texts in a Section',
    body: v2({ type: 9, components: many(4, () => display()), accessory: button() }),
    at: 'components.0.components',
  },
  {
    what: 'a Container in a Container',
    body: v2(container(container(display()))),
    at: 'components.0.components.0.type',
  },
  { what: 'an empty Container', body: v2(container()), at: 'components.0.components' },
  {
    what: 'an accent colour too large',
    body: v2({ ...container(display()), accent_color: 0x1000000 }),
    at: 'components.0.accent_color',
  },
  {
    what: 'eleven pictures in a gallery',
    body: v2({ type: 12, items: many(11, () => ({ media: { url: 'https://example.org/a.png' } })) }),
    at: 'components.0.items',
  },
  {
    what: 'a picture that was not sent along',
    body: v2({ type: 12, items: [{ media: { url: 'attachment://a.png' } }] }),
    at: 'components.0.items.0.media.url',
  },
  {
    what: 'a File by address',
    body: v2({ type: 13, file: { url: 'https://example.org/a.pdf' } }),
    at: 'components.0.file.url',
  },
  { what: 'a spacing of 3', body: v2({ type: 14, spacing: 3 }), at: 'components.0.spacing' },
  {
    what: 'a Label in a message',
    body: v2({ type: 18, label: 'L', component: { type: 4, custom_id: 'x', style: 1 } }),
    at: 'components.0.type',
  },
  { what: 'the private flag on an ordinary message', body: { content: 'x', flags: 64 }, at: 'flags' },
  {
    what: 'an answer to a message that is not there',
    body: { content: 'x', message_reference: { message_id: '1500000000000000001' } },
    at: 'message_reference',
  },
];

const string = (more: object = {}) => ({ type: 3, name: 'a', description: 'A', ...more });
const command = (more: object = {}) => ({ name: 'do', description: 'Do it', ...more });
const sub = (name: string, options: object[] = []) => ({ type: 1, name, description: 'S', options });

const COMMANDS = [
  { what: 'a capital in the name', body: command({ name: 'Do' }), at: '0.name' },
  { what: 'a space in the name', body: command({ name: 'do it' }), at: '0.name' },
  { what: 'a name of 33', body: command({ name: text(33) }), at: '0.name' },
  { what: 'no description', body: { name: 'do' }, at: '0.description' },
  { what: 'a description of 101', body: command({ description: text(101) }), at: '0.description' },
  { what: 'a description of a context menu', body: command({ type: 2 }), at: '0.description' },
  {
    what: '26 options',
    body: command({ options: many(26, (i) => string({ name: `o${i}` })) }),
    at: '0.options',
  },
  {
    what: 'a required option after an optional one',
    body: command({ options: [string(), string({ name: 'b', required: true })] }),
    at: '0.options.1',
  },
  { what: 'the same option twice', body: command({ options: [string(), string()] }), at: '0.options.1.name' },
  {
    what: 'choices and autocomplete',
    body: command({ options: [string({ autocomplete: true, choices: [{ name: 'x', value: 'x' }] })] }),
    at: '0.options.0',
  },
  {
    what: 'a choice of 101',
    body: command({ options: [string({ choices: [{ name: 'x', value: text(101) }] })] }),
    at: '0.options.0.choices.0.value',
  },
  {
    what: 'a least above the most',
    body: command({ options: [{ type: 4, name: 'n', description: 'N', min_value: 2, max_value: 1 }] }),
    at: '0.options.0.min_value',
  },
  { what: 'subcommands beside options', body: command({ options: [sub('s'), string()] }), at: '0.options' },
  {
    what: 'a subcommand in a subcommand',
    body: command({ options: [sub('s', [sub('t')])] }),
    at: '0.options.0.options.0.type',
  },
  {
    what: 'a locale that is none',
    body: command({ name_localizations: { xx: 'do' } }),
    at: '0.name_localizations.xx',
  },
  {
    what: 'more than 8000 characters',
    body: command({
      options: many(25, (i) =>
        string({ name: `o${i}`, choices: many(25, (j) => ({ name: `${j}`, value: `${j}${text(12)}` })) }),
      ),
    }),
    at: '0',
  },
];

describe('the local channel refuses', () => {
  let channel: Awaited<ReturnType<typeof testChannel>>;
  beforeAll(async () => {
    channel = await testChannel();
  });
  afterAll(() => channel.close());

  const ask = async (method: string, path: string, body: unknown) => {
    const response = await fetch(`${channel.apiUrl}/v10${path}`, {
      method,
      headers: { authorization: `Bot ${channel.token}`, 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    return {
      status: response.status,
      answer: (await response.json()) as { code?: number; errors?: unknown },
    };
  };

  /** Where the problems are, as dotted paths. */
  const placesIn = (errors: unknown, path: readonly string[] = []): string[] => {
    if (typeof errors !== 'object' || errors === null) return [];
    return Object.entries(errors).flatMap(([key, value]) =>
      key === '_errors' ? [path.join('.')] : placesIn(value, [...path, key]),
    );
  };

  it.each(MESSAGES)('a message with $what', async ({ body, code, at }) => {
    const { status, answer } = await ask('POST', `/channels/${channel.channels[0]?.id}/messages`, body);
    expect(status).toBe(400);
    expect(answer.code).toBe(code ?? 50035);
    if (at !== undefined) expect(placesIn(answer.errors)).toEqual([at]);
  });

  it.each(COMMANDS)('a command with $what', async ({ body, at }) => {
    const application = (await ask('GET', '/applications/@me', undefined)).answer as { id?: string };
    const path = `/applications/${application.id}/guilds/${channel.guildId}/commands`;
    const { status, answer } = await ask('PUT', path, [body]);
    expect(status).toBe(400);
    expect(answer.code).toBe(50035);
    expect(placesIn(answer.errors)).toEqual([at]);
  });

  it('101 commands', async () => {
    const application = (await ask('GET', '/applications/@me', undefined)).answer as { id?: string };
    const path = `/applications/${application.id}/commands`;
    const { answer } = await ask(
      'PUT',
      path,
      many(101, (i) => command({ name: `do${i}` })),
    );
    expect(answer.code).toBe(30032);
  });

  it('a file over its limit', async () => {
    await using small = await testChannel({ uploadLimitBytes: 10 });
    const form = new FormData();
    form.set('files[0]', new File([text(11)], 'a.txt'));
    form.set('payload_json', '{}');
    const response = await fetch(`${small.apiUrl}/v10/channels/${small.channels[0]?.id}/messages`, {
      method: 'POST',
      headers: { authorization: `Bot ${small.token}` },
      body: form,
    });
    expect(await response.json()).toMatchObject({ code: 50045 });
    const large = { name: 'a.txt', type: 'text/plain', bytes: new Uint8Array(11) };
    const outcome = await small.hands('Ada').type('x', { files: [large] });
    expect(outcome).toMatchObject({
      kind: 'refused',
      problem: expect.stringContaining('"a.txt"') as unknown,
    });
  });

  it('what is no JSON', async () => {
    const response = await fetch(`${channel.apiUrl}/v10/channels/${channel.channels[0]?.id}/messages`, {
      method: 'POST',
      headers: { authorization: `Bot ${channel.token}`, 'content-type': 'application/json' },
      body: '{',
    });
    expect(await response.json()).toMatchObject({ code: 50109 });
  });

  it('and takes what is just within the limits', async () => {
    const place = `/channels/${channel.channels[0]?.id}/messages`;
    const bodies = [
      { content: text(2000), nonce: text(25) },
      { embeds: [{ description: text(4000) }, { description: text(2000) }] },
      v2(container(...many(39, () => display(text(102))))),
      v2(display(text(4000))),
      { components: many(5, (i) => row(...many(5, (j) => button({ custom_id: `${i} ${j}` })))) },
    ];
    for (const body of bodies) expect((await ask('POST', place, body)).status).toBe(200);
  });
});
