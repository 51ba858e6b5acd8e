import { expect } from 'vitest';
import type { LocalChannel } from '../../src/channel/contract.ts';
import type { Exchange } from './published-api.ts';

/** Fails when the bot asked for something that no route took, or that the platform would have refused. */
export function expectCleanChannel(
  { unknownRequests, refusals }: Pick<LocalChannel, 'unknownRequests' | 'refusals'>,
  tolerated: readonly number[] = [],
): void {
  expect(unknownRequests, 'requests that no route took').toEqual([]);
  const unexpected = refusals.filter(({ body }) => !tolerated.includes(codeOf(body)));
  expect(JSON.stringify(unexpected, null, 1), 'requests that the platform would refuse').toBe('[]');
}

const codeOf = (body: unknown): number =>
  typeof body === 'object' && body !== null && 'code' in body ? Number(body.code) : 0;

/** Fails when any message went out with mentions left to be read from its text. */
export function expectNoStrayPings(exchanges: readonly Exchange[]): void {
  for (const { method, path, request } of exchanges) {
    for (const message of messagesIn(method, path, request)) {
      expect(message, `${method} ${path}`).toMatchObject({ allowed_mentions: { parse: [] } });
    }
  }
}

/** The bodies that make or change a message. */
export function messagesIn(method: string, path: string, body: unknown): readonly object[] {
  if (typeof body !== 'object' || body === null) return [];
  if (/\/callback/.test(path)) {
    const data = 'data' in body ? body.data : undefined;
    return typeof data === 'object' && data !== null && 'components' in data && !('title' in data)
      ? [data]
      : [];
  }
  const writes = method === 'POST' || method === 'PATCH';
  return writes && /^\/(channels|webhooks)\//.test(path) ? [body] : [];
}
