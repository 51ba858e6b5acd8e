import { describe, expect, it } from 'vitest';
import { whyNot } from '../../../src/channel/page-server/guard.ts';

const asking = (more: Partial<Parameters<typeof whyNot>[0]>) => ({
  method: 'GET',
  host: '127.0.0.1:8080',
  origin: undefined,
  fetchSite: undefined,
  ...more,
});

describe('the guard of the local channel', () => {
  it.each([
    { host: '127.0.0.1:8080' },
    { host: 'localhost:8080' },
    { host: '[::1]:8080' },
    { method: 'POST', origin: 'http://127.0.0.1:8080', fetchSite: 'same-origin' },
    { method: 'POST' },
  ])('lets in %o', (more) => {
    expect(whyNot(asking(more), '127.0.0.1')).toBeUndefined();
  });

  it.each([
    { host: 'evil.example:8080' },
    { host: undefined },
    { host: '192.168.1.5:8080' },
    { method: 'POST', origin: 'http://evil.example' },
    { method: 'POST', origin: 'http://127.0.0.1:9999' },
    { method: 'POST', origin: 'null' },
    { method: 'POST', fetchSite: 'cross-site' },
  ])('keeps out %o', (more) => {
    expect(whyNot(asking(more), '127.0.0.1')).toEqual(expect.any(String));
  });

  it('takes addresses, but no stranger’s name, once it is open to the network', () => {
    expect(whyNot(asking({ host: '192.168.1.5:8080' }), '0.0.0.0')).toBeUndefined();
    expect(whyNot(asking({ host: 'shed.local:8080' }), '0.0.0.0')).toBeUndefined();
    expect(whyNot(asking({ host: 'evil.example:8080' }), '0.0.0.0')).toEqual(expect.any(String));
  });
});
