import { randomBytes } from 'node:crypto';
import { Hono } from 'hono';
import type { ChannelOptions, LocalChannel, WireMessage } from './contract.ts';
import { Gateway } from './gateway/gateway.ts';
import { guard } from './page-server/guard.ts';
import { Live } from './page-server/live.ts';
import { pageApi } from './page-server/routes.ts';
import { staticRoutes } from './page-server/static.ts';
import { handsOf } from './people/hands.ts';
import { botApi } from './rest/app.ts';
import { Buckets } from './rest/buckets.ts';
import { FaultList } from './rest/fault-list.ts';
import { cdnRoutes } from './rest/files.ts';
import { serve } from './serve.ts';
import { Flag, Intent } from './wire/numbers.ts';
import { Interactions } from './world/interactions.ts';
import { wireMessage } from './world/message-payload.ts';
import { Messages } from './world/messages.ts';
import { openStorage } from './world/storage.ts';
import type { Person } from './world/things.ts';
import { welcome } from './world/welcome.ts';
import { type News, World } from './world/world.ts';

/** 50 MB however a file manager counts them. */
const DEFAULT_UPLOAD_LIMIT = 50 * 1024 * 1024;
const PRIVILEGED = {
  members: Intent.members,
  presences: Intent.presences,
  content: Intent.messageContent,
} as const;

/**
 * Opens the local channel: the bot API over HTTP and gateway, the page and the hands of the people, on one loopback
 * port.
 * @throws Error of node:net when the port is taken, of node:sqlite when the file cannot be used.
 */
export async function openLocalChannel(options: ChannelOptions): Promise<LocalChannel> {
  const { clock, host = '127.0.0.1', uploadLimitBytes = DEFAULT_UPLOAD_LIMIT } = options;
  const storage = openStorage(options.file);
  const world = new World({ botName: 'Chargehand', ...options, storage });
  const messages = new Messages(world);
  const interactions = new Interactions(world, uploadLimitBytes);
  const state = { world, messages, interactions, uploadLimitBytes };
  const token = `local.${randomBytes(24).toString('base64url')}`;
  const privileged = (options.privilegedIntents ?? []).reduce((bits, name) => bits | PRIVILEGED[name], 0);
  const gateway = new Gateway(world, { token, privileged });
  const faults = new FaultList();
  const unknownRequests: string[] = [];
  const refusals: { request: string; status: number; body: unknown }[] = [];
  const ready = Promise.withResolvers<void>();
  const checkReady = () => {
    const registered = world.callable(true).length + world.callable(false).length > 0;
    if (gateway.online && registered) ready.resolve();
  };

  const live = new Live(state, () => gateway.online);
  const handsFor = (person: Person) => handsOf(state, person, () => gateway.anySession);

  const app = new Hono();
  app.use(guard(host));
  const api = botApi(state, {
    token,
    faults,
    buckets: new Buckets(clock, options.rateLimits ?? 'generous'),
    registered: checkReady,
    refused: (refusal) => void refusals.push(refusal),
  });
  app.route('/api/v10', api);
  app.route(
    '/page-api',
    pageApi(state, {
      starters: options.starters ?? [],
      botOnline: () => gateway.online,
      handsOf: handsFor,
    }),
  );
  cdnRoutes(app, state);
  staticRoutes(app);
  app.notFound((c) => {
    // Browsers ask for all sorts of files; only what the bot asks for in vain is a gap in this server.
    if (c.req.path.startsWith('/api/')) unknownRequests.push(`${c.req.method} ${c.req.path}`);
    return c.json({ message: '404: Not Found', code: 0 }, 404);
  });

  const serving = await serve({
    app,
    host,
    port: options.port ?? 0,
    sockets: (pathname) => (pathname === '/page-api/live' ? live : gateway).server,
  }).catch((error: unknown) => {
    storage.close();
    throw error;
  });
  world.origin = serving.origin;
  interactions.expired.listen(({ originalId }) => {
    const message = originalId === undefined ? undefined : messages.find(originalId);
    // "Working" that never came to anything is taken away with the token that could have finished it.
    if (message !== undefined && (message.flags & Flag.loading) !== 0) messages.remove(message);
  });
  const unlisten = world.news.listen((news) => {
    if (news.kind === 'bot') checkReady();
  });

  return {
    apiUrl: `${world.origin}/api`,
    pageUrl: `${world.origin}/`,
    token,
    botName: world.bot.name,
    guildId: world.guildId,
    channels: world.textChannels().map(({ id, name }) => ({ id, name })),
    nameOf: (personId) => world.people().find(({ id }) => id === personId)?.name,
    hands: (name) => handsFor(welcome(world, name)),
    messages: (channelId) => storage.all(channelId).map((message) => wireMessage(world, message)),
    onMessage: (listener) => world.news.listen(publicNews(world, listener)),
    ready: () => ready.promise,
    faults: {
      http: (fault) => faults.add(fault),
      dropSockets: () => gateway.dropSockets(),
      askReconnect: () => gateway.askReconnect(),
      invalidateSession: (resumable) => gateway.invalidate(resumable),
      closeWith: (code) => gateway.closeWith(code),
      repeatInteractions: (times) => {
        interactions.deliveries = times;
        return () => {
          interactions.deliveries = 1;
        };
      },
      repeatMessages: (times) => {
        messages.deliveries = times;
        return () => {
          messages.deliveries = 1;
        };
      },
    },
    unknownRequests,
    refusals,
    async close() {
      unlisten();
      interactions.close();
      gateway.close();
      live.close();
      await serving.close();
      storage.close();
    },
  };
}

/** Hides private messages and placeholders; a placeholder's first real content is when the message is added. */
function publicNews(
  world: World,
  listener: (message: WireMessage, what: 'added' | 'changed' | 'removed') => void,
): (news: News) => void {
  const pending = new Set<string>();
  return (news) => {
    if (news.kind !== 'message' || news.message.privateTo !== undefined) return;
    const { message, what } = news;
    if ((message.flags & Flag.loading) !== 0) {
      if (what === 'removed') pending.delete(message.id);
      else pending.add(message.id);
      return;
    }
    listener(wireMessage(world, message), pending.delete(message.id) ? 'added' : what);
  };
}
