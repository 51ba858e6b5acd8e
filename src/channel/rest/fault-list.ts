import type { HttpBindings } from '@hono/node-server';
import type { Context, MiddlewareHandler } from 'hono';
import type { HttpFault } from '../contract.ts';
import { tooMany } from './too-many.ts';

interface Standing {
  readonly fault: HttpFault;
  left: number;
}

/** Faults that a test has ordered for requests of the bot. */
export class FaultList {
  readonly #standing = new Set<Standing>();

  add(fault: HttpFault): () => void {
    const standing = { fault, left: fault.times ?? Number.POSITIVE_INFINITY };
    this.#standing.add(standing);
    return () => void this.#standing.delete(standing);
  }

  readonly middleware: MiddlewareHandler = async (c, next) => {
    const fault = this.#take(c.req.method, c.req.path.replace(/^\/api\/v10/, ''));
    if (fault === undefined) return next();
    const { answer } = fault;
    if (fault.afterEffect ?? answer === 'lost-answer') await next();
    if (typeof answer === 'object') {
      c.res = new Response(JSON.stringify({ message: answer.message, code: answer.code }), {
        status: answer.status,
        headers: { 'content-type': 'application/json' },
      });
      return undefined;
    }
    switch (answer) {
      case 'too-many':
        return tooMany(
          (name, value) => c.header(name, value),
          (body) => c.json(body, 429),
          fault.retryAfterMs ?? 50,
          false,
        );
      case 'server-error':
        c.res = c.json({ message: '500: Internal Server Error', code: 0 }, 500);
        return undefined;
      case 'lost-answer':
        socketOf(c).resetAndDestroy();
        return undefined;
      case 'hang':
        // The client gives up, or the server closes; either ends the socket.
        return new Promise((resolve) => {
          socketOf(c).once('close', () => resolve(c.body(null, 204)));
        });
    }
  };

  #take(method: string, path: string): HttpFault | undefined {
    for (const standing of this.#standing) {
      const { fault } = standing;
      if ((fault.method !== undefined && fault.method !== method) || !fault.path.test(path)) continue;
      standing.left -= 1;
      if (standing.left <= 0) this.#standing.delete(standing);
      return fault;
    }
    return undefined;
  }
}

function socketOf(c: Context) {
  // The node server puts its request among the bindings; the app runs under no other.
  return (c.env as HttpBindings).incoming.socket;
}
