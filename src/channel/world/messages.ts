import { flatten } from '../rules/components.ts';
import { type Allowed, DEFAULTS } from '../rules/mentions.ts';
import { compact, type JsonObject } from '../wire/json.ts';
import { Flag, Intent, MessageKind } from '../wire/numbers.ts';
import { mentionsIn } from './mentions.ts';
import { guildIdOf, messagePayload } from './message-payload.ts';
import { memberPayload } from './payloads.ts';
import type { Attachment, Message, Person } from './things.ts';
import type { World } from './world.ts';

/** What a message is made of before it has an id. */
export interface Draft {
  readonly channelId: string;
  readonly author: Person;
  readonly content: string;
  readonly kind?: number;
  readonly flags?: number;
  readonly embeds?: readonly JsonObject[];
  readonly components?: readonly JsonObject[];
  readonly attachments?: readonly Attachment[];
  readonly allowed?: Allowed;
  readonly nonce?: string | undefined;
  readonly reference?: Message['reference'] | undefined;
  readonly asked?: Message['asked'] | undefined;
  readonly webhook?: boolean;
  readonly privateTo?: string | undefined;
}

/** Private answers kept; the eldest go first. */
const PASSING_KEPT = 500;

/**
 * The messages of the channel. Public ones are history and are kept; private answers and answers that are still being
 * worked on live in memory until they are replaced or the process ends.
 */
export class Messages {
  readonly #world: World;
  readonly #passing = new Map<string, Message>();
  /** How often each new one is delivered; more than once only as a fault. */
  deliveries = 1;

  constructor(world: World) {
    this.#world = world;
  }

  find(id: string): Message | undefined {
    return this.#passing.get(id) ?? this.#world.storage.message(id);
  }

  /** Private messages this person sees in this channel, oldest first, and public answers still being worked on. */
  passing(channelId: string, personId: string): readonly Message[] {
    return [...this.#passing.values()].filter(
      (one) => one.channelId === channelId && (one.privateTo === undefined || one.privateTo === personId),
    );
  }

  post(draft: Draft): Message {
    const world = this.#world;
    const components = numbered(draft.components ?? []);
    const message: Message = {
      id: world.newId(),
      channelId: draft.channelId,
      authorId: draft.author.id,
      kind: draft.kind ?? (draft.reference === undefined ? MessageKind.plain : MessageKind.reply),
      content: draft.content,
      createdMs: world.clock.nowMs(),
      editedMs: null,
      flags: draft.flags ?? 0,
      embeds: draft.embeds ?? [],
      components,
      attachments: draft.attachments ?? [],
      ...this.#pinged(draft, components),
      reactions: [],
      pinnedMs: null,
      ...(draft.nonce === undefined ? {} : { nonce: draft.nonce }),
      ...(draft.reference === undefined ? {} : { reference: draft.reference }),
      ...(draft.asked === undefined ? {} : { asked: draft.asked }),
      ...(draft.webhook === true ? { webhook: true } : {}),
      ...(draft.privateTo === undefined ? {} : { privateTo: draft.privateTo }),
    };
    this.#save(message);
    this.#tell('added', message);
    return message;
  }

  /** Writes the message as it now is. `edited` sets the time of the edit; pins and reactions are no edits. */
  change(message: Message, edited = true): Message {
    const now = edited ? { ...message, editedMs: this.#world.clock.nowMs() } : message;
    this.#save(now);
    this.#tell('changed', now);
    return now;
  }

  remove(message: Message): void {
    const world = this.#world;
    this.#passing.delete(message.id);
    world.storage.dropMessage(message.id);
    world.news.tell({ kind: 'message', what: 'removed', message });
    if (message.privateTo === undefined) {
      const guildId = guildIdOf(world, message.channelId);
      world.gateway.tell({
        name: 'MESSAGE_DELETE',
        intents: guildId === undefined ? Intent.directMessages : Intent.guildMessages,
        data: compact({ id: message.id, channel_id: message.channelId, guild_id: guildId }),
      });
    }
  }

  #pinged(draft: Draft, components: readonly JsonObject[]) {
    const allowed = draft.allowed ?? DEFAULTS.message;
    const pinged = mentionsIn(this.#world, draft.content, components, allowed);
    const repliedTo =
      draft.reference !== undefined && allowed.repliedUser
        ? this.find(draft.reference.messageId)?.authorId
        : undefined;
    if (repliedTo === undefined || pinged.mentionIds.includes(repliedTo)) return pinged;
    return { ...pinged, mentionIds: [...pinged.mentionIds, repliedTo] };
  }

  #save(message: Message): void {
    if (message.privateTo !== undefined || (message.flags & Flag.loading) !== 0) {
      this.#passing.set(message.id, message);
      const [eldest] = this.#passing.keys();
      if (this.#passing.size > PASSING_KEPT && eldest !== undefined) this.#passing.delete(eldest);
    } else {
      this.#world.storage.saveMessage(message);
      this.#passing.delete(message.id);
    }
  }

  #tell(what: 'added' | 'changed', message: Message): void {
    const world = this.#world;
    world.news.tell({ kind: 'message', what, message });
    if (message.privateTo !== undefined) return;
    const guildId = guildIdOf(world, message.channelId);
    const author = world.person(message.authorId) ?? world.bot;
    const { user: _user, ...member } = memberPayload(author);
    const event = {
      name: what === 'added' ? 'MESSAGE_CREATE' : 'MESSAGE_UPDATE',
      intents: guildId === undefined ? Intent.directMessages : Intent.guildMessages,
      data: compact({
        ...messagePayload(world, message),
        channel_type: world.channel(message.channelId)?.kind,
        guild_id: guildId,
        member: guildId === undefined ? undefined : member,
      }),
      guarded: guildId !== undefined && !author.bot && !message.mentionIds.includes(world.bot.id),
    };
    for (let time = 0; time < (what === 'added' ? this.deliveries : 1); time += 1) world.gateway.tell(event);
  }
}

/** Components with the ids that the platform gives to those that have none: 1, 2, 3 … in order, skipping taken ones. */
export function numbered(components: readonly JsonObject[]): readonly JsonObject[] {
  const taken = new Set(flatten(components, []).map(({ part }) => part['id']));
  let next = 0;
  const free = (): number => {
    do next += 1;
    while (taken.has(next));
    return next;
  };
  const number = (part: JsonObject): JsonObject => {
    const id = typeof part['id'] === 'number' && part['id'] > 0 ? part['id'] : free();
    const { components: children, accessory } = part;
    return {
      ...part,
      id,
      ...(Array.isArray(children) ? { components: children.map((child: JsonObject) => number(child)) } : {}),
      ...(isPart(accessory) ? { accessory: number(accessory) } : {}),
    };
  };
  return components.map(number);
}

const isPart = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
