import type { ChannelClock, OpenForm } from '../contract.ts';
import type { JsonObject } from '../wire/json.ts';
import { ChannelKind, EVERYONE_MAY, OWNER_MAY } from '../wire/numbers.ts';
import { idMaker, type MakeId } from '../wire/snowflake.ts';
import { Emitter } from './emitter.ts';
import type { Storage } from './storage.ts';
import type { Channel, Command, Message, Person, Role, ScheduledEvent } from './things.ts';

/** An event for the bot's gateway connection. */
export interface GatewayEvent {
  readonly name: string;
  /** Sent to sessions with any of these intents; 0 needs none. */
  readonly intents: number;
  readonly data: JsonObject;
  /** Blank content, embeds, attachments and components for sessions without the content intent. */
  readonly guarded?: boolean;
}

/** What the people see happen. */
export type News =
  | { readonly kind: 'message'; readonly what: 'added' | 'changed' | 'removed'; readonly message: Message }
  | { readonly kind: 'form'; readonly personId: string; readonly form: OpenForm }
  | { readonly kind: 'people' }
  | { readonly kind: 'channels' }
  | { readonly kind: 'typing'; readonly channelId: string; readonly personId: string }
  | { readonly kind: 'bot'; readonly online: boolean };

export interface WorldOptions {
  readonly clock: ChannelClock;
  readonly storage: Storage;
  readonly guildName: string;
  readonly channels: readonly string[];
  readonly crew: readonly string[];
  readonly botName: string;
}

/** Everything there is on the channel's side of the wire: one guild, its people, channels, roles and commands. */
export class World {
  readonly clock: ChannelClock;
  readonly storage: Storage;
  readonly newId: MakeId;
  readonly guildName: string;
  readonly guildId: string;
  readonly bot: Person;
  readonly roles: readonly Role[];
  readonly gateway = new Emitter<GatewayEvent>();
  readonly news = new Emitter<News>();
  /** `http://127.0.0.1:PORT`, known once the server listens. */
  origin = '';
  /** Names in the order in which the channel was opened with them; the first is where people find themselves. */
  readonly #channelOrder: readonly string[];
  readonly #people = new Map<string, Person>();
  readonly #channels = new Map<string, Channel>();
  readonly #commands = new Map<string, Command>();
  readonly #events = new Map<string, ScheduledEvent>();

  constructor(options: WorldOptions) {
    const { clock, storage } = options;
    this.clock = clock;
    this.storage = storage;
    this.newId = idMaker(() => clock.nowMs(), storage.newestId());
    this.guildName = options.guildName;
    this.#channelOrder = options.channels;
    for (const person of storage.things('person')) this.#people.set(person.id, person);
    for (const channel of storage.things('channel')) this.#channels.set(channel.id, channel);
    for (const command of storage.things('command')) this.#commands.set(command.id, command);
    for (const event of storage.things('event')) this.#events.set(event.id, event);
    this.guildId = this.#remembered('guild');
    const botRole = this.#remembered('bot-role');
    this.roles = rolesOf(this.guildId, botRole, options.botName);
    this.bot = this.#botPerson(options.botName, botRole);
    for (const name of options.channels) {
      if (!this.textChannels().some((channel) => channel.name === name)) this.addChannel(name);
    }
    for (const name of options.crew) this.join(name);
  }

  #remembered(name: string): string {
    const known = this.storage.setting(name);
    if (known !== undefined) return known;
    const id = this.newId();
    this.storage.saveSetting(name, id);
    return id;
  }

  #botPerson(name: string, roleId: string): Person {
    const id = this.#remembered('bot');
    const known = this.#people.get(id);
    if (known !== undefined) return known;
    const bot = { id, name, bot: true, joinedMs: this.clock.nowMs(), roles: [roleId] };
    this.#people.set(id, bot);
    this.storage.save('person', bot);
    return bot;
  }

  /** The application's id; the platform gives bot user and application the same one. */
  get applicationId(): string {
    return this.bot.id;
  }

  /** The first of the crew owns the guild; before anybody has joined, the bot does. */
  get ownerId(): string {
    return this.people().find((person) => !person.bot)?.id ?? this.bot.id;
  }

  people(): readonly Person[] {
    return [...this.#people.values()];
  }

  person(id: string): Person | undefined {
    return this.#people.get(id);
  }

  /** Names are told apart without regard to case. */
  named(name: string): Person | undefined {
    const wanted = name.trim().toLowerCase();
    return this.people().find((person) => person.name.toLowerCase() === wanted);
  }

  /** The person of this name, who joins if need be. */
  join(name: string): Person {
    const known = this.named(name);
    if (known !== undefined) return known;
    const person = {
      id: this.newId(),
      name: name.trim(),
      bot: false,
      joinedMs: this.clock.nowMs(),
      roles: [],
    };
    this.savePerson(person);
    return person;
  }

  savePerson(person: Person): void {
    this.#people.set(person.id, person);
    this.storage.save('person', person);
    this.news.tell({ kind: 'people' });
  }

  permissionsOf(person: Person): bigint {
    return person.id === this.ownerId || person.bot ? OWNER_MAY : EVERYONE_MAY;
  }

  channels(): readonly Channel[] {
    return [...this.#channels.values()];
  }

  channel(id: string): Channel | undefined {
    return this.#channels.get(id);
  }

  /** The ordinary channels, as the opener ordered them; those of an earlier life that it no longer names come last. */
  textChannels(): readonly Channel[] {
    const place = ({ name }: Channel) => {
      const index = this.#channelOrder.indexOf(name);
      return index < 0 ? this.#channelOrder.length : index;
    };
    return this.channels()
      .filter((channel) => channel.kind === ChannelKind.text)
      .sort((a, b) => place(a) - place(b));
  }

  /** Is this one between the bot and one person? */
  isDirect(channel: Channel): boolean {
    return channel.kind === ChannelKind.direct;
  }

  addChannel(name: string): Channel {
    const position = this.textChannels().length;
    const createdMs = this.clock.nowMs();
    const channel = { id: this.newId(), kind: ChannelKind.text, name, topic: null, position, createdMs };
    this.saveChannel(channel);
    return channel;
  }

  /** The channel between the bot and this person, made when first needed. */
  directChannel(personId: string): Channel {
    const known = this.channels().find((channel) => channel.recipientId === personId);
    if (known !== undefined) return known;
    const channel = {
      id: this.newId(),
      kind: ChannelKind.direct,
      name: '',
      topic: null,
      position: 0,
      createdMs: this.clock.nowMs(),
      recipientId: personId,
    };
    this.saveChannel(channel);
    return channel;
  }

  saveChannel(channel: Channel): void {
    this.#channels.set(channel.id, channel);
    this.storage.save('channel', channel);
    this.news.tell({ kind: 'channels' });
  }

  dropChannel(id: string): void {
    this.#channels.delete(id);
    this.storage.drop('channel', id);
    this.news.tell({ kind: 'channels' });
  }

  /** Those of one scope; `undefined` is the global one. */
  commands(guildId: string | undefined): readonly Command[] {
    return [...this.#commands.values()].filter((command) => command.guildId === guildId);
  }

  /** What people in the guild can call; in a direct channel only global commands are. */
  callable(inGuild: boolean): readonly Command[] {
    const global = this.commands(undefined);
    if (!inGuild) return global.filter((command) => allowsContext(command, 1));
    const own = this.commands(this.guildId);
    const hidden = (command: Command) =>
      own.some((other) => other.kind === command.kind && other.name === command.name);
    return [...own, ...global.filter((command) => allowsContext(command, 0) && !hidden(command))];
  }

  saveCommand(command: Command): void {
    this.#commands.set(command.id, command);
    this.storage.save('command', command);
  }

  dropCommand(id: string): void {
    this.#commands.delete(id);
    this.storage.drop('command', id);
  }

  events(): readonly ScheduledEvent[] {
    return [...this.#events.values()];
  }

  saveEvent(event: ScheduledEvent): void {
    this.#events.set(event.id, event);
    this.storage.save('event', event);
  }

  dropEvent(id: string): void {
    this.#events.delete(id);
    this.storage.drop('event', id);
  }
}

function allowsContext(command: Command, context: number): boolean {
  const contexts = command.body['contexts'];
  return !Array.isArray(contexts) || contexts.includes(context);
}

/** `@everyone` shares the guild's id; the bot's own role is managed. */
function rolesOf(guildId: string, botRoleId: string, botName: string): readonly Role[] {
  return [
    {
      id: guildId,
      name: '@everyone',
      permissions: EVERYONE_MAY.toString(),
      position: 0,
      managed: false,
      mentionable: false,
    },
    {
      id: botRoleId,
      name: botName,
      permissions: OWNER_MAY.toString(),
      position: 1,
      managed: true,
      mentionable: false,
    },
  ];
}
