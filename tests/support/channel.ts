import {
  Client,
  type ClientOptions,
  Events,
  GatewayIntentBits,
  type Interaction,
  Partials,
} from 'discord.js';
import type { ChannelClock, ChannelOptions, LocalChannel } from '../../src/channel/contract.ts';
import { openLocalChannel } from '../../src/channel/open.ts';
import type { Exchange } from './published-api.ts';

/** A clock set by hand: `moveMs` runs, in order, what falls due on the way. */
export class HandClock implements ChannelClock {
  #nowMs: number;
  readonly #timers = new Set<{ readonly atMs: number; readonly task: () => void }>();

  constructor(nowMs = Date.UTC(2026, 4, 4, 18, 0)) {
    this.#nowMs = nowMs;
  }

  nowMs(): number {
    return this.#nowMs;
  }

  after(ms: number, task: () => void): () => void {
    const timer = { atMs: this.#nowMs + ms, task };
    this.#timers.add(timer);
    return () => void this.#timers.delete(timer);
  }

  moveMs(ms: number): void {
    const endMs = this.#nowMs + ms;
    for (let next = this.#due(endMs); next !== undefined; next = this.#due(endMs)) {
      this.#timers.delete(next);
      this.#nowMs = Math.max(this.#nowMs, next.atMs);
      next.task();
    }
    this.#nowMs = endMs;
  }

  /** Sets the clock without running anything, backwards too. */
  set(nowMs: number): void {
    this.#nowMs = nowMs;
  }

  #due(endMs: number) {
    return [...this.#timers].filter(({ atMs }) => atMs <= endMs).sort((a, b) => a.atMs - b.atMs)[0];
  }
}

/** A channel for a test, in memory, on a clock set by hand; closed by `await using`. */
export async function testChannel(
  options: Partial<ChannelOptions> = {},
): Promise<LocalChannel & AsyncDisposable & { readonly clock: HandClock }> {
  const clock = options.clock instanceof HandClock ? options.clock : new HandClock();
  const channel = await openLocalChannel({
    guildName: 'The shed',
    channels: ['build'],
    crew: ['Ada', 'Ben'],
    ...options,
    clock,
  });
  return { ...channel, clock, [Symbol.asyncDispose]: () => channel.close() };
}

/** An unmodified client, logged in to the channel and ready; destroyed by `await using`. */
export async function connectedClient(
  channel: LocalChannel,
  options: Partial<ClientOptions> = {},
): Promise<Client<true> & AsyncDisposable> {
  const client = new Client({
    intents: [GatewayIntentBits.Guilds, GatewayIntentBits.GuildMessages, GatewayIntentBits.DirectMessages],
    partials: [Partials.Channel],
    ...options,
    rest: { ...options.rest, api: channel.apiUrl },
  });
  const ready = new Promise<Client<true>>((resolve) => client.once(Events.ClientReady, resolve));
  await client.login(channel.token);
  return Object.assign(await ready, { [Symbol.asyncDispose]: () => client.destroy() });
}

/** Handles interactions; what the handling throws fails the test, as every unhandled rejection does. */
export function onInteraction(client: Client, handle: (interaction: Interaction) => Promise<unknown>): void {
  client.on(Events.InteractionCreate, (interaction) => void handle(interaction));
}

/** Puts every request of a client and its answer into `exchanges`, as parsed JSON. For `rest` of its options. */
export function recording(exchanges: Exchange[]): NonNullable<ClientOptions['rest']> {
  return {
    async makeRequest(url, init) {
      // The client's own way of asking takes the same arguments as fetch; only the types of their two versions differ.
      const response = await fetch(url, init as unknown as RequestInit);
      const text = await response.clone().text();
      exchanges.push({
        method: init.method ?? 'GET',
        path: new URL(url).pathname.replace('/api/v10', ''),
        status: response.status,
        request: jsonOf(init.body),
        response: text === '' ? undefined : (JSON.parse(text) as unknown),
      });
      return response;
    },
  };
}

function jsonOf(body: unknown): unknown {
  const text = body instanceof FormData ? body.get('payload_json') : body;
  return typeof text === 'string' ? JSON.parse(text) : undefined;
}
