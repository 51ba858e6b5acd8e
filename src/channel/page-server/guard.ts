import { isIP } from 'node:net';
import { hostname } from 'node:os';
import type { MiddlewareHandler } from 'hono';
import type { Problem } from '../page-api.ts';

/** The headers that say where a request comes from. */
export interface Asking {
  readonly method: string;
  readonly host: string | undefined;
  readonly origin: string | undefined;
  readonly fetchSite: string | undefined;
}

const LOOPBACK = /^(127(\.\d{1,3}){3}|localhost|\[::1\])$/;

/** Does the server listen on this machine only? */
const isLoopback = (host: string): boolean => LOOPBACK.test(host) || host === '::1';

/**
 * Keeps other web sites out. A name that somebody else's server answers for could be pointed at this machine, so only
 * names that cannot be are taken: loopback, and, where the channel was opened to the network, bare addresses and this
 * machine's own name. What changes something must come from the page itself or from no browser at all.
 * @returns why not, or nothing.
 */
export function whyNot({ method, host, origin, fetchSite }: Asking, listensOn: string): string | undefined {
  const name = (host ?? '').replace(/:\d+$/, '').toLowerCase();
  const own = isLoopback(name) || (!isLoopback(listensOn) && isNear(name));
  if (!own) return `This channel does not go by the name "${name}".`;
  const changing = method !== 'GET' && method !== 'HEAD';
  if (origin !== undefined && origin !== `http://${host}` && changing)
    return 'Another site may not speak here.';
  if (changing && fetchSite !== undefined && !['same-origin', 'none'].includes(fetchSite)) {
    return 'Another site may not speak here.';
  }
  return undefined;
}

const isNear = (name: string): boolean =>
  isIP(name.replace(/^\[|\]$/g, '')) !== 0 || name === hostname().toLowerCase() || name.endsWith('.local');

export function guard(listensOn: string): MiddlewareHandler {
  return async (c, next) => {
    const reason = whyNot(
      {
        method: c.req.method,
        host: c.req.header('host'),
        origin: c.req.header('origin'),
        fetchSite: c.req.header('sec-fetch-site'),
      },
      listensOn,
    );
    if (reason !== undefined) return c.json({ problem: reason } satisfies Problem, 403);
    return next();
  };
}
