import {
  AutocompleteInteraction,
  ButtonInteraction,
  ChatInputCommandInteraction,
  Client,
  ModalSubmitInteraction,
  StringSelectMenuInteraction,
} from 'discord.js';
import { describe, expect, it } from 'vitest';
import { openFileShelf } from '../../../src/discord/file-shelf.ts';
import { type Answerable, readRequest, readSuggestRequest } from '../../../src/discord/read-request.ts';

const client = new Client({ intents: [] });
const shelf = openFileShelf({ timer: { after: () => () => {} } });
const read = (interaction: Answerable) => readRequest(interaction, shelf);

const USER = { id: '77', username: 'ada', global_name: 'Ada', discriminator: '0', avatar: null };
const OTHER = { ...USER, id: '88', username: 'cleo', global_name: 'Cleo' };

/** As the wire has it: developer documentation of the platform, interaction object. */
const wire = (type: number, data: object, inServer = true) => ({
  id: '900',
  application_id: '1',
  type,
  token: 'canary',
  version: 1,
  user: USER,
  channel_id: '600',
  channel: { id: '600', type: 0 },
  locale: 'en-GB',
  entitlements: [],
  authorizing_integration_owners: {},
  attachment_size_limit: 10_485_760,
  app_permissions: '0',
  context: inServer ? 0 : 1,
  ...(inServer ? { guild_id: '500', guild_locale: 'en-GB' } : {}),
  data,
});

/** The client's own class, made the way the client makes it; only its constructor is closed to us by its types. */
function real<Interaction>(kind: { readonly prototype: Interaction }, data: object): Interaction {
  const made: unknown = Reflect.construct(kind as unknown as new (...given: unknown[]) => object, [
    client,
    data,
  ]);
  return made as Interaction;
}

const command = (options: readonly object[], resolved: object = {}) =>
  real(ChatInputCommandInteraction, wire(2, { id: '3', name: 'order', type: 1, options, resolved }));

describe('what a person did, as plain data', () => {
  it('brings the files given in its options, each under the id its option holds', () => {
    const attachments = {
      '41': {
        id: '41',
        filename: 'drive.csv.gz',
        size: 12,
        content_type: 'application/gzip',
        url: 'https://cdn.discordapp.com/ephemeral-attachments/1/41/drive.csv.gz?ex=1',
        proxy_url: 'https://media.discordapp.net/ephemeral-attachments/1/41/drive.csv.gz?ex=1',
        ephemeral: true,
      },
    };
    const request = read(command([{ type: 11, name: 'file', value: '41' }], { attachments }));
    expect(request.asks).toMatchObject({ options: { file: '41' } });
    expect(request.files).toEqual([{ id: '41', name: 'drive.csv.gz', bytes: 12, mime: 'application/gzip' }]);
    expect(shelf.find('41')).toEqual(request.files?.[0]);
  });

  it('is a command with its subcommand and options', () => {
    const request = read(
      command([
        {
          type: 1,
          name: 'place',
          options: [
            { type: 3, name: 'what', value: 'head gasket' },
            { type: 4, name: 'quantity', value: 2 },
            { type: 5, name: 'urgent', value: true },
            { type: 10, name: 'within', value: 0.5 },
          ],
        },
      ]),
    );
    expect(request).toEqual({
      id: '900',
      who: { id: '77', name: 'Ada' },
      place: { teamId: '500', channelId: '600', channelName: '' },
      people: {},
      files: [],
      asks: {
        kind: 'run',
        command: 'order',
        subcommand: 'place',
        options: { what: 'head gasket', quantity: 2, urgent: true, within: 0.5 },
      },
    });
  });

  it('has no subcommand where the command has none', () => {
    expect(read(command([{ type: 3, name: 'size', value: '10 x 1' }])).asks).toMatchObject({
      subcommand: null,
      options: { size: '10 x 1' },
    });
  });

  it('names the people picked', () => {
    const options = [{ type: 1, name: 'place', options: [{ type: 6, name: 'chaser', value: '88' }] }];
    const request = read(command(options, { users: { '88': OTHER } }));
    expect(request.people).toEqual({ '88': 'Cleo' });
    expect(request.asks).toMatchObject({ options: { chaser: '88' } });
  });

  it('has no place outside a server', () => {
    const request = read(
      real(ChatInputCommandInteraction, wire(2, { id: '3', name: 'help', type: 1, options: [] }, false)),
    );
    expect(request.place).toBeNull();
  });

  it('is a press with the button’s own text, unread', () => {
    const data = { component_type: 2, custom_id: 'order/arrived?order=12' };
    expect(
      read(real(ButtonInteraction, { ...wire(3, data), message: { id: '1', channel_id: '600' } })).asks,
    ).toEqual({
      kind: 'press',
      ref: 'order/arrived?order=12',
      fields: {},
    });
  });

  it('puts a menu’s choice under the name its own reference gives it', () => {
    const data = { component_type: 3, custom_id: 'order/show?notice=1&_menu=order', values: ['7'] };
    const pressed = real(StringSelectMenuInteraction, {
      ...wire(3, data),
      message: { id: '1', channel_id: '600' },
    });
    expect(read(pressed).asks).toMatchObject({ fields: { order: '7' } });
  });

  it('reads a form’s fields, typed and chosen', () => {
    const data = {
      custom_id: 'order/partly-done?order=12',
      components: [
        { type: 18, id: 1, component: { type: 4, id: 2, custom_id: 'quantity', value: '2' } },
        { type: 18, id: 3, component: { type: 3, id: 4, custom_id: 'condition', values: ['good'] } },
        { type: 18, id: 5, component: { type: 3, id: 6, custom_id: 'outcome', values: [] } },
      ],
    };
    expect(read(real(ModalSubmitInteraction, wire(5, data))).asks).toEqual({
      kind: 'press',
      ref: 'order/partly-done?order=12',
      fields: { quantity: '2', condition: 'good', outcome: '' },
    });
  });

  it('is the option being typed, for suggestions', () => {
    const options = [
      {
        type: 1,
        name: 'place',
        options: [
          { type: 3, name: 'supplier', value: 'Norvale' },
          { type: 3, name: 'due', value: 'next w', focused: true },
        ],
      },
    ];
    const asked = real<AutocompleteInteraction>(
      AutocompleteInteraction,
      wire(4, { id: '3', name: 'order', type: 1, options }),
    );
    expect(readSuggestRequest(asked)).toMatchObject({
      command: 'order',
      subcommand: 'place',
      option: 'due',
      typed: 'next w',
      given: { supplier: 'Norvale' },
      place: { teamId: '500' },
    });
  });

  it('carries no token', () => {
    expect(JSON.stringify(read(command([])))).not.toContain('canary');
  });
});
