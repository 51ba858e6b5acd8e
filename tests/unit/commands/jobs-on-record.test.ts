import { describe, expect, it } from 'vitest';
import { openCrewBot, refusalIn } from '../../support/bot.ts';

describe('what a job needs', () => {
  it('stays on the record until the job needs it no more', async () => {
    const bot = await openCrewBot();
    await bot.run('part add', { name: 'dowel pin' });
    await bot.run('fluid case', { name: 'axle', grade: '75W-90', capacity: '1 L' });
    await bot.run('job add', { name: 'fit the box', needs: 'dowel pin, fluid:axle' });
    expect(refusalIn(await bot.run('part remove', { part: 'dowel pin' })).message).toBe(
      '"fit the box" needs dowel pin, so it stays. Nothing was changed. /job needs job:"#1" remove:"dowel pin" comes first.',
    );
    expect(refusalIn(await bot.run('fluid remove', { case: 'axle' })).message).toContain(
      '"fit the box" needs axle',
    );
    await bot.run('job needs', { job: '#1', remove: 'dowel pin' });
    await bot.run('job needs', { job: '#1', remove: 'axle' });
    expect((await bot.run('part remove', { part: 'dowel pin' })).ok).toBe(true);
    expect((await bot.run('fluid remove', { case: 'axle' })).ok).toBe(true);
  });
});
