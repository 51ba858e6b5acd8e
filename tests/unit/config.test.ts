import { describe, expect, it } from 'vitest';
import { readConfig } from '../../src/config.ts';
import { UserError } from '../../src/core/user-error.ts';

/** Made up, in the shape of a bot token. */
const TOKEN = 'MTIzNDU2Nzg5MDEyMzQ1Njc4.GcAnAr.yCanaryCanaryCanaryCanaryCanaryCanary0';

function refusal(environment: Readonly<Record<string, string>>): string {
  try {
    readConfig(environment);
  } catch (error) {
    if (error instanceof UserError) return error.message;
    throw error;
  }
  throw new Error('it was taken');
}

describe('the settings', () => {
  it('may be left out altogether: then it is the local channel on this machine alone', () => {
    expect(readConfig({})).toEqual({ page: { host: '127.0.0.1', port: 4747 }, dataFolder: 'data/var' });
  });

  it('with a token are for the platform', () => {
    expect(readConfig({ DISCORD_TOKEN: ` ${TOKEN}\n` }).platform).toEqual({ token: TOKEN });
    expect(readConfig({ DISCORD_TOKEN: TOKEN, CHARGEHAND_API: 'http://127.0.0.1:1/api' }).platform?.api).toBe(
      'http://127.0.0.1:1/api',
    );
  });

  it('take a port of nothing as any free one', () => {
    expect(readConfig({ CHARGEHAND_PORT: '0' }).page.port).toBe(0);
    expect(readConfig({ CHARGEHAND_PORT: '65535' }).page.port).toBe(65_535);
  });

  it.each([
    ['DISCORD_TOKEN', '', 'DISCORD_TOKEN is not a bot token'],
    ['DISCORD_TOKEN', 'nonsense', 'DISCORD_TOKEN is not a bot token'],
    ['DISCORD_TOKEN', TOKEN.slice(0, 40), 'DISCORD_TOKEN is not a bot token'],
    ['CHARGEHAND_API', 'somewhere', 'CHARGEHAND_API is not an address'],
    ['CHARGEHAND_DATA', '', 'CHARGEHAND_DATA is empty'],
    ['CHARGEHAND_HOST', '', 'CHARGEHAND_HOST is empty'],
    ['CHARGEHAND_PORT', 'abc', 'CHARGEHAND_PORT is not a port from 0 to 65535'],
    ['CHARGEHAND_PORT', '80.5', 'CHARGEHAND_PORT is not a port from 0 to 65535'],
    ['CHARGEHAND_PORT', '-1', 'CHARGEHAND_PORT is not a port from 0 to 65535'],
    ['CHARGEHAND_PORT', '65536', 'CHARGEHAND_PORT is not a port from 0 to 65535'],
  ])('%s=%s is refused in a sentence that says what to do, not what was given', (name, value, said) => {
    const message = refusal({ [name]: value });
    expect(message).toContain(said);
    expect(message).toMatch(/(leave it out|Leave it out|remove the line)/);
    if (name === 'DISCORD_TOKEN' && value !== '') expect(message).not.toContain(value);
  });
});
