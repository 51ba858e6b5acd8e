import { describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import { type CrewBot, cardIn, openCrewBot, refusalIn } from '../../support/bot.ts';
import { contentsOf } from '../../support/crew-content.ts';

type Options = Record<string, string | number>;

const order = (bot: CrewBot, what: string, price: string, options: Options = {}) =>
  bot.run('order place', { what, price, supplier: 'Norvale', due: '2026-12-04', ...options });

const cost = async (bot: CrewBot, options: Options = {}) => cardIn(await bot.run('cost show', options));

describe('/cost show', () => {
  it('says that nothing has a price yet', async () => {
    const bot = await openCrewBot();
    expect((await cost(bot)).result).toBe('Nothing has a price yet');
  });

  it('tells what was spent from what is on order, carriage and part of an order too', async () => {
    const bot = await openCrewBot();
    await order(bot, 'stud', '10', { quantity: 3 });
    await bot.run('order arrived', { order: 'stud', quantity: 1 });
    const lines = {
      lines: 'gasket 84.50; bolt x10 12.00',
      supplier: 'Tarn',
      due: '2026-12-04',
      carriage: '6.50',
    };
    await bot.run('order several', lines);
    expect((await cost(bot)).result).toBe('GBP 3.33 spent, GBP 109.67 on order');
    await bot.run('order parcel', { order: 'gasket' });
    const { result, data } = await cost(bot);
    expect(result).toBe('GBP 106.33 spent, GBP 6.67 on order');
    expect(data['groups']).toEqual([
      { name: 'Tarn', totals: [expect.objectContaining({ spentMinor: 10_300, committedMinor: 0 })] },
      { name: 'Norvale', totals: [expect.objectContaining({ spentMinor: 333, committedMinor: 667 })] },
    ]);
  });

  it('takes refunds off, and forgets what was cancelled', async () => {
    const bot = await openCrewBot();
    await order(bot, 'hose', '20', { quantity: 2 });
    await bot.run('order arrived', { order: 'hose', quantity: 1, condition: 'wrong' });
    await bot.run('order settle', { order: 'hose', outcome: 'refunded' });
    const here = cardIn(await bot.run('order arrived', { order: 'hose' }));
    expect(here.result).toBe('2 × hose: 1 here, 1 refunded');
    await order(bot, 'pump', '99');
    await bot.run('order cancel', { order: 'pump' });
    expect((await cost(bot)).result).toBe('GBP 10.00 spent, GBP 10.00 refunded');
  });

  it('counts what is missing at the price guessed, and says what has none', async () => {
    const bot = await openCrewBot();
    await bot.run('part add', { name: 'pin', needed: 4, guess: '1.80', system: 'block' });
    await bot.run('part add', { name: 'plug', needed: 2 });
    const { result, facts, data } = await cost(bot, { by: 'system' });
    expect(result).toBe('GBP 7.20 to come');
    expect(facts).toContainEqual(['Not counted', '1 missing part without a guessed price']);
    expect(data['groups']).toMatchObject([{ name: 'block', totals: [{ toComeMinor: 720 }] }]);
  });

  it('adds up by month: of coming, or of the day promised', async () => {
    const bot = await openCrewBot();
    await order(bot, 'stud', '10');
    await bot.run('order arrived', { order: 'stud' });
    await order(bot, 'pump', '20');
    await bot.run('part add', { name: 'pin', guess: '1' });
    const { data } = await cost(bot, { by: 'month' });
    expect(data['groups']).toMatchObject([
      { name: '2026-11', totals: [{ spentMinor: 1000 }] },
      { name: '2026-12', totals: [{ committedMinor: 2000 }] },
      { name: 'not ordered yet', totals: [{ toComeMinor: 100 }] },
    ]);
  });

  it('keeps currencies apart until there is a rate', async () => {
    const bot = await openCrewBot();
    await order(bot, 'stud', '10');
    await order(bot, 'seal', 'EUR 50');
    await order(bot, 'belt', 'JPY 4000');
    expect((await cost(bot)).result).toBe('EUR 50.00 on order; GBP 10.00 on order; JPY 4000 on order');
    await bot.run('cost rate', { from: 'EUR', to: 'GBP', rate: '0.86' });
    const partly = await cost(bot);
    expect(partly.facts).toContainEqual(['All in GBP', 'GBP 53.00 on order, as far as the rates reach']);
    expect(refusalIn(await bot.run('cost show', { in: 'GBP' })).message).toContain('No rate from JPY to GBP');
    await bot.run('cost rate', { from: 'GBP', to: 'JPY', rate: '200' });
    const { result, data } = await cost(bot);
    expect(result).toBe('GBP 73.00 on order');
    expect(data['together']).toMatchObject({ currency: 'GBP', committedMinor: 7300 });
  });
});

describe('/cost rate', () => {
  it('gives a rate, changes it, lists it and takes it away, each undone', async () => {
    const bot = await openCrewBot();
    for (const rate of ['0.86', '0,88', '0']) {
      const before = contentsOf(bot);
      const done = cardIn(await bot.run('cost rate', { from: 'eur', to: 'gbp', rate }));
      const undo = done.buttons?.find(({ label }) => label === 'Undo');
      const after = contentsOf(bot);
      expect(after).not.toEqual(before);
      const undone = cardIn(await bot.press(undo ? writeActionRef(undo.does) : ''));
      expect(contentsOf(bot)).toEqual(before);
      const redo = undone.buttons?.[0];
      await bot.press(redo ? writeActionRef(redo.does) : '');
      expect(contentsOf(bot)).toEqual(after);
    }
    expect(cardIn(await bot.run('cost rates')).result).toContain('No rate has been given');
  });

  it.each<[Options, string]>([
    [{ from: 'EUR', to: 'EUR', rate: '1' }, 'One EUR is one EUR'],
    [{ from: 'XXZ', to: 'GBP', rate: '1' }, '"XXZ" is no currency'],
    [{ from: 'EUR', to: 'pounds', rate: '1' }, '"pounds" is no currency'],
    [{ from: 'EUR', to: 'GBP', rate: 'much' }, '"much" is no rate'],
    [{ from: 'EUR', to: 'GBP', rate: '-1' }, '"-1" is no rate'],
    [{ from: 'EUR', to: 'GBP', rate: '1e12' }, '"1e12" is no rate'],
  ])('refuses %j and changes nothing', async (options, said) => {
    const bot = await openCrewBot();
    const before = contentsOf(bot);
    expect(refusalIn(await bot.run('cost rate', options)).message).toContain(said);
    expect(contentsOf(bot)).toEqual(before);
  });

  it.each<[Options, string]>([
    [{ by: 'colour' }, 'by: must be one of supplier, system, month'],
    [{ in: 'pounds' }, '"pounds" is no currency'],
  ])('/cost show refuses %j', async (options, said) => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('cost show', options)).message).toContain(said);
  });
});
