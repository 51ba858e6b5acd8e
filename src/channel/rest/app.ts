import { Hono, type MiddlewareHandler } from 'hono';
import { ApiError, refuse } from '../wire/api-error.ts';
import type { ChannelState } from '../world/state.ts';
import type { Buckets } from './buckets.ts';
import { callbackRoutes } from './callbacks.ts';
import { commandRoutes } from './commands.ts';
import { eventRoutes } from './events.ts';
import type { FaultList } from './fault-list.ts';
import { markRoutes } from './marks.ts';
import { messageRoutes } from './messages.ts';
import { placeRoutes } from './places.ts';
import { threadRoutes } from './threads.ts';
import { tooMany } from './too-many.ts';
import { webhookRoutes } from './webhooks.ts';

export interface ApiOptions {
  readonly token: string;
  readonly buckets: Buckets;
  readonly faults: FaultList;
  /** Told after each change of the registered commands. */
  readonly registered: () => void;
  readonly refused: (refusal: { request: string; status: number; body: unknown }) => void;
}

/** The bot's HTTP API v10, to be mounted at `/api/v10`. */
export function botApi(state: ChannelState, options: ApiOptions): Hono {
  const api = new Hono();
  api.use(options.faults.middleware);
  api.use(authorise(options.token));
  api.use(limit(options.buckets));
  placeRoutes(api, state);
  commandRoutes(api, state, options.registered);
  callbackRoutes(api, state);
  webhookRoutes(api, state);
  // Ahead of the messages by id: the address of the pins has a word where an id would stand.
  markRoutes(api, state);
  messageRoutes(api, state);
  threadRoutes(api, state);
  eventRoutes(api, state);
  api.onError((error, c) => {
    if (!(error instanceof ApiError)) throw error;
    const request = `${c.req.method} ${c.req.path}`;
    options.refused({ request, status: error.status, body: error.body() });
    return c.json(error.body(), error.status);
  });
  return api;
}

/** Interaction answers carry their authority in the address; all else needs the bot's token. */
const byAddress = (path: string): boolean => /^\/api\/v10\/(interactions|webhooks)\//.test(path);

function authorise(token: string): MiddlewareHandler {
  return async (c, next) => {
    if (!byAddress(c.req.path) && c.req.header('authorization') !== `Bot ${token}`)
      throw refuse.unauthorized();
    await next();
  };
}

function limit(buckets: Buckets): MiddlewareHandler {
  return async (c, next) => {
    const { route, major } = bucketOf(c.req.method, c.req.path);
    const verdict = buckets.take(route, major, byAddress(c.req.path));
    for (const [name, value] of Object.entries(verdict.headers)) c.header(name, value);
    if (verdict.retryAfterMs === undefined) return next();
    return tooMany(
      c.header.bind(c),
      (body) => c.json(body, 429),
      verdict.retryAfterMs,
      verdict.global === true,
    );
  };
}

/** The path with its ids blanked, and the id its limits belong to: channel, guild, or webhook with token. */
function bucketOf(method: string, path: string): { route: string; major: string } {
  const bare = path.replace(/^\/api\/v10/, '');
  const major = /^\/(?:channels|guilds)\/(\d+)|^\/webhooks\/(\d+\/[^/]+)|^\/interactions\/(\d+)/.exec(bare);
  const route = bare
    .replace(/^\/webhooks\/\d+\/[^/]+/, '/webhooks/:webhook')
    .replace(/^\/interactions\/\d+\/[^/]+/, '/interactions/:interaction')
    .replace(/\/reactions\/.*/, '/reactions')
    .replace(/\/\d{17,19}/g, '/:id');
  return { route: `${method} ${route}`, major: major?.[1] ?? major?.[2] ?? major?.[3] ?? '' };
}
