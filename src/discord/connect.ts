import {
  type CacheWithLimitsOptions,
  Client,
  Events,
  GatewayIntentBits,
  type Interaction,
  Options,
  Partials,
} from 'discord.js';
import type { Catalogue } from '../bot/catalogue.ts';
import type { Dispatcher } from '../bot/dispatch.ts';
import type { Result } from '../bot/request.ts';
import type { Timer } from '../core/clock.ts';
import type { Post } from '../core/post.ts';
import { answer } from './answer.ts';
import type { FileShelf } from './file-shelf.ts';
import { type Heard, type Hears, hearMessages } from './hear.ts';
import { postThrough } from './post.ts';
import { readRequest, readSuggestRequest } from './read-request.ts';
import { register } from './registration.ts';

export interface ConnectionParts {
  readonly token: string;
  /** Base address of the bot API; absent for the platform itself. */
  readonly api?: string;
  readonly catalogue: Catalogue;
  readonly dispatcher: Dispatcher;
  /** Takes the files that come with what people ask. */
  readonly files: FileShelf;
  /** Whose lines are listened to. */
  readonly hears: Hears;
  readonly timer: Timer;
  readonly report: (fault: unknown, during: string) => void;
  /** The connection will not come back by itself: the token was refused, or the platform closed for good. */
  readonly onLost: (why: string) => void;
  /** Called with every result before it is shown; for whoever drives the bot from outside and wants its data. */
  readonly onResult?: (interactionId: string, result: Result) => void;
  /** Called for every message listened to, once it was answered; null where there was nothing to say. */
  readonly onHeard?: (messageId: string, heard: Heard | null) => void;
}

export interface Connection {
  readonly post: Post;
  /** Servers the bot is in. */
  teams(): readonly string[];
  close(): Promise<void>;
}

/** Nothing is read from these caches, so they are kept small; channels and servers must stay whole. */
const SMALL_CACHES: CacheWithLimitsOptions = {
  MessageManager: 50,
  UserManager: 200,
  GuildMemberManager: 200,
};

/** Words come with mentions and private messages alone; those of other messages need one intent more, a privileged one. */
const ADDRESSED = [
  GatewayIntentBits.Guilds,
  GatewayIntentBits.GuildMessages,
  GatewayIntentBits.DirectMessages,
] as const;

/** @throws Error when the platform refuses the token or cannot be reached; the client is closed then. */
export async function connect(parts: ConnectionParts): Promise<Connection> {
  const client = new Client({
    intents: [...ADDRESSED, ...(parts.hears === 'mentions' ? [] : [GatewayIntentBits.MessageContent])],
    // a private channel is not known before its first message
    partials: [Partials.Channel],
    allowedMentions: { parse: [] },
    enforceNonce: true,
    waitGuildTimeout: 1_000,
    makeCache: Options.cacheWithLimits(SMALL_CACHES),
    rest: parts.api === undefined ? {} : { api: parts.api },
  });
  const post = postThrough(client);
  // without this listener a fault in any handler would end the process
  client.on(Events.Error, (error) => parts.report(error, 'the connection'));
  client.on(Events.ShardDisconnect, ({ code }) =>
    parts.onLost(`the platform closed the connection for good (${code})`),
  );
  client.on(Events.Invalidated, () => parts.onLost('the platform invalidated the session'));
  // a token refused from the start is thrown below, to whoever is starting us
  let connected = false;
  client.rest.on('response', ({ path }, { status }) => {
    if (connected && status === 401 && !path.startsWith('/interactions') && !path.startsWith('/webhooks')) {
      parts.onLost('the platform no longer takes the token');
    }
  });
  const isFirst = firstTimes();
  client.on(Events.InteractionCreate, (interaction) => {
    if (isFirst(interaction.id)) void handle(interaction, parts, post);
  });
  hearMessages(client, { ...parts, isFirst });
  try {
    const { promise, resolve } = Promise.withResolvers<Client<true>>();
    client.once(Events.ClientReady, resolve);
    await client.login(parts.token);
    await register(await promise, parts.catalogue);
    connected = true;
  } catch (error) {
    await client.destroy();
    throw error;
  }
  return {
    post,
    teams: () => [...client.guilds.cache.keys()],
    close: () => client.destroy(),
  };
}

/** More than can be waiting to be delivered again when a connection is resumed. */
const REMEMBERED = 1_000;

/**
 * Tells the first delivery of an interaction from the same one delivered again: answering both would race, and whoever
 * pressed could be shown "already saved" instead of the answer. The record itself is kept safe by the ledger.
 */
function firstTimes(): (id: string) => boolean {
  const begun = new Set<string>();
  return (id) => {
    if (begun.has(id)) return false;
    begun.add(id);
    const [eldest] = begun;
    if (begun.size > REMEMBERED && eldest !== undefined) begun.delete(eldest);
    return true;
  };
}

async function handle(interaction: Interaction, parts: ConnectionParts, post: Post): Promise<void> {
  const { dispatcher, files, onResult } = parts;
  try {
    if (interaction.isAutocomplete()) {
      const choices = dispatcher.suggest(readSuggestRequest(interaction));
      await interaction.respond(choices.map(({ label, value }) => ({ name: label.slice(0, 100), value })));
    } else if (
      interaction.isChatInputCommand() ||
      interaction.isMessageComponent() ||
      interaction.isModalSubmit()
    ) {
      const request = readRequest(interaction, files);
      const work = async (onProgress: (said: string) => void): Promise<Result> => {
        const result = await dispatcher.answer(request, onProgress);
        onResult?.(interaction.id, result);
        return result;
      };
      await answer(interaction, work, {
        timer: parts.timer,
        report: parts.report,
        late: async (channelId, reply) => {
          const certainty = 'The platform did not take this as an answer in time; it stands here instead.';
          await post.send({ channelId, answer: { ...reply, certainty }, nonce: interaction.id });
        },
      });
    }
  } catch (error) {
    parts.report(error, `showing the answer to interaction ${interaction.id}`);
  }
}
