import { describe, expect, it } from 'vitest';
import { openProgress } from '../../../src/discord/progress.ts';
import { HandClock } from '../../support/channel.ts';

const soon = () => new Promise<void>((resolve) => setImmediate(resolve));

function watched(show?: (said: string) => Promise<unknown>) {
  const clock = new HandClock();
  const shown: string[] = [];
  const faults: unknown[] = [];
  const progress = openProgress(
    show ?? (async (said) => void shown.push(said)),
    clock,
    (fault) => void faults.push(fault),
  );
  return { clock, shown, faults, progress };
}

describe('how far long work has come', () => {
  it('is not shown before there is a message to show it in', async () => {
    const { progress, shown } = watched();
    progress.say('10 %');
    progress.say('20 %');
    expect(shown).toEqual([]);
    progress.begin();
    await soon();
    expect(shown).toEqual(['20 %']);
  });

  it('is shown at most once a second, the newest each time', async () => {
    const { clock, progress, shown } = watched();
    progress.begin();
    for (const said of ['1', '2', '3']) progress.say(said);
    await soon();
    clock.moveMs(999);
    expect(shown).toEqual(['1']);
    clock.moveMs(1);
    await soon();
    expect(shown).toEqual(['1', '3']);
  });

  it('is not shown twice when nothing has changed', async () => {
    const { clock, progress, shown } = watched();
    progress.begin();
    progress.say('half');
    await soon();
    clock.moveMs(5_000);
    progress.say('half');
    await soon();
    expect(shown).toEqual(['half']);
  });

  it('never comes after the answer: ending waits for the edit under way', async () => {
    const { promise, resolve } = Promise.withResolvers<void>();
    const { progress } = watched(() => promise);
    progress.begin();
    progress.say('half');
    let ended = false;
    const end = progress.end().then(() => {
      ended = true;
    });
    await soon();
    expect(ended).toBe(false);
    resolve();
    await end;
    expect(ended).toBe(true);
  });

  it('shows nothing more once it has ended', async () => {
    const { clock, progress, shown } = watched();
    progress.begin();
    await progress.end();
    progress.say('late');
    clock.moveMs(10_000);
    await soon();
    expect(shown).toEqual([]);
  });

  it('reports an edit that fails, and goes on', async () => {
    let times = 0;
    const { clock, faults, progress } = watched(async () => {
      times += 1;
      throw new Error('the platform did not take it');
    });
    progress.begin();
    progress.say('1');
    await soon();
    clock.moveMs(1_000);
    progress.say('2');
    await soon();
    await progress.end();
    expect(times).toBe(2);
    expect(faults).toHaveLength(2);
  });
});
