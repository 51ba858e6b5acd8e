import { describe, expect, it } from 'vitest';
import { cardIn, openCrewBot, refusalIn } from '../../support/bot.ts';

describe('what a job needs', () => {
  it('says by when to order it, without being told the day', async () => {
    const bot = await openCrewBot();
    await bot.run('job add', { name: 'clean the block', minutes: '20 h', stage: 'assembly' });
    await bot.run('job add', {
      name: 'fit the head',
      minutes: '3 h',
      stage: 'assembly',
      needs: 'part:+head gasket, job #1',
    });
    const asked = await bot.run('order by', { part: 'head gasket', supplier: 'Norvale', lead: 5 });
    expect(refusalIn(asked).message).toContain('There is no supplier "Norvale"');
    await bot.run('supplier set', { supplier: 'Norvale', lead: 5 });
    const card = cardIn(await bot.run('order by', { part: 'head gasket', supplier: 'Norvale' }));
    expect(card.certainty).toContain('is when its first job is likely to begin');
    expect(String(card.data['latestOn']) < String(card.data['neededOn'])).toBe(true);
    const other = await bot.run('order by', { part: 'belt', supplier: 'Norvale' });
    expect(refusalIn(other).code).toBe('not-found');
  });

  it('is told of when the job is done without it', async () => {
    const bot = await openCrewBot();
    await bot.run('job add', { name: 'wash the block' });
    await bot.run('job add', { name: 'fit the crank', needs: 'job #1' });
    const card = cardIn(await bot.run('job done', { job: '#2' }));
    expect(card.certainty).toMatch(/^The record had it waiting for: .*wash the block/);
    expect(cardIn(await bot.run('job done', { job: '#1' })).certainty ?? '').not.toContain('waiting for');
  });

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
