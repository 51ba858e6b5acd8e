import { describe, expect, it } from 'vitest';
import { openOutboxStore } from '../../../src/reminders/outbox-store.ts';
import { openRecord } from '../../support/record.ts';

const due = (key = 'morning:1:2026-11-23') => ({
  key,
  channelId: '600',
  notice: { kind: 'morning' as const, buildId: 1, day: '2026-11-23', orderIds: [1] },
});

const opened = (scope = '500') => openOutboxStore(openRecord().db, scope);

describe('the outbox', () => {
  it('holds the same key once, however often it is put in', () => {
    const outbox = opened();
    for (const nowMs of [0, 0, 15_000]) outbox.put(due(), nowMs);
    expect(outbox.due(15_000)).toHaveLength(1);
    outbox.put(due('morning:1:2026-11-24'), 0);
    expect(outbox.due(15_000)).toHaveLength(2);
  });

  it('gives the same notice the same nonce of at most 25 characters, and another team another', () => {
    const nonces = ['500', '500', '501'].map((scope) => {
      const outbox = opened(scope);
      outbox.put(due(), 0);
      return outbox.due(0)[0]?.nonce ?? '';
    });
    expect(nonces[0]).toBe(nonces[1]);
    expect(nonces[0]).not.toBe(nonces[2]);
    expect(nonces[0]).toMatch(/^[\w-]{25}$/);
  });

  it('keeps what was claimed until it is marked: its sender may have died', () => {
    const outbox = opened();
    outbox.put(due(), 0);
    outbox.claim(1, 1_000);
    outbox.claim(1, 9_000);
    expect(outbox.due(10_000)).toMatchObject([{ id: 1, firstTryAtMs: 1_000, tries: 2 }]);
    outbox.sent(1, '77', null);
    expect(outbox.due(10_000)).toEqual([]);
    outbox.put(due(), 20_000);
    expect(outbox.due(20_000)).toEqual([]);
  });

  it('tries again when it is time, not before', () => {
    const outbox = opened();
    outbox.put(due(), 0);
    outbox.again(1, 2_000, 'no answer');
    expect(outbox.due(1_999)).toEqual([]);
    expect(outbox.due(2_000)).toHaveLength(1);
  });

  it('shows what was given up, and forgets what was not needed', () => {
    const outbox = opened();
    outbox.put(due('a'), 0);
    outbox.put(due('b'), 0);
    outbox.giveUp(1, '50001: Missing Access');
    outbox.drop(2);
    expect(outbox.due(1_000)).toEqual([]);
    expect(outbox.dead()).toEqual([{ key: 'a', trouble: '50001: Missing Access' }]);
  });
});
