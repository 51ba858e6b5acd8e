import { describe, expect, it } from 'vitest';
import { openLog, redact } from '../../src/log.ts';

/** Made up, in the shapes the platform documents: a bot token, an interaction's token, a webhook's. */
const BOT = 'MTIzNDU2Nzg5MDEyMzQ1Njc4.GcAnAr.yCanaryCanaryCanaryCanaryCanaryCanary0';
const INTERACTION = 'aW50ZXJhY3Rpb246MTIzNDU2Nzg5MDEyMzQ1Njc4OkNhbmFyeUNhbmFyeUNhbmFyeUNhbmFyeQ';
const WEBHOOK = 'CanaryWebhook_0123456789-CanaryCanaryCanaryCanaryCanaryCanary';
const LOCAL = 'a-token-of-no-known-shape';
const OTHER = 'Canary+of+another+kind';
const CANARIES = [BOT, INTERACTION, WEBHOOK, LOCAL, OTHER];

const INTERACTION_URL = `https://discord.com/api/v10/interactions/900000000000000001/${INTERACTION}/callback?with_response=true`;
const WEBHOOK_URL = `https://discord.com/api/v10/webhooks/900000000000000002/${INTERACTION}/messages/@original`;
const HOOK = `https://discord.com/api/webhooks/900000000000000003/${WEBHOOK}`;

/** An error with the members that the client's own carry: the address and all of the body. */
function apiError(): Error {
  return Object.assign(new Error(`Unknown interaction at ${INTERACTION_URL}`), {
    name: 'DiscordAPIError[10062]',
    code: 10_062,
    status: 404,
    method: 'POST',
    url: INTERACTION_URL,
    rawError: { message: 'Unknown interaction', code: 10_062 },
    requestBody: { files: [], json: { type: 4, data: { content: `see ${HOOK}` }, token: INTERACTION } },
  });
}

function logged(
  write: (log: ReturnType<typeof openLog>) => void,
  secrets: readonly string[] = [LOCAL],
): string {
  const lines: string[] = [];
  write(openLog((line) => void lines.push(line), secrets));
  expect(lines.length).toBeGreaterThan(0);
  for (const line of lines) expect(() => JSON.parse(line) as unknown).not.toThrow();
  return lines.join('');
}

describe('no secret comes out of the log', () => {
  it.each([
    ['a message', (log: ReturnType<typeof openLog>) => log.info(`logging in with ${BOT} and ${LOCAL}`)],
    [
      'details',
      (log: ReturnType<typeof openLog>) =>
        log.warn('odd', { deep: { er: [BOT, HOOK, { token: INTERACTION }] } }),
    ],
    [
      'a header',
      (log: ReturnType<typeof openLog>) => log.warn('odd', { headers: { authorization: `Bot ${BOT}` } }),
    ],
    [
      'an error',
      (log: ReturnType<typeof openLog>) => log.error(new Error(`refused ${BOT}`), `with ${LOCAL}`),
    ],
    ['the client’s error', (log: ReturnType<typeof openLog>) => log.error(apiError(), 'showing an answer')],
    [
      'a cause of a cause',
      (log: ReturnType<typeof openLog>) =>
        log.error(new Error('outer', { cause: new Error(WEBHOOK_URL, { cause: apiError() }) }), 'failed'),
    ],
    [
      'several errors in one',
      (log: ReturnType<typeof openLog>) =>
        log.error(new AggregateError([new Error(BOT), apiError()], `all failed: ${HOOK}`), 'failed'),
    ],
    [
      'what is no error at all',
      (log: ReturnType<typeof openLog>) => log.error({ token: INTERACTION, bot: BOT }, LOCAL),
    ],
    [
      'an address put into JSON once more',
      (log: ReturnType<typeof openLog>) => log.warn('odd', { body: JSON.stringify({ url: HOOK }) }),
    ],
  ])('in %s', (_name, write) => {
    const text = logged(write);
    for (const canary of CANARIES) expect(text).not.toContain(canary);
  });

  it('but what went wrong does', () => {
    const text = logged((log) => log.error(apiError(), 'showing an answer', { reference: 'K7Q2' }));
    expect(text).toContain('Unknown interaction');
    expect(text).toContain('10062');
    expect(text).toContain('K7Q2');
    expect(text).toContain('showing an answer');
    expect(text).toContain('/interactions/900000000000000001/[token]');
  });

  it('and ordinary words stay as they are', () => {
    const words = 'order #12, 2 × head gasket, promised 2026-12-04, GBP 12.50, data/var/500.team.sqlite';
    expect(redact(words, [''])).toBe(words);
  });
});
