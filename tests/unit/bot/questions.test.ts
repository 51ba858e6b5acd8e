import { describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import { type CrewBot, cardIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';

const ordersOf = (bot: CrewBot) => {
  const { record } = bot.teams.at(TEAM);
  return record.builds.all().flatMap(({ id }) => record.orders.ofBuild(id));
};

/** Asks for something that could be meant in two ways: `Norvale` is known, `Norvle` is nearly that. */
async function askAmbiguously(bot: CrewBot): Promise<readonly string[]> {
  await bot.run('order place', { what: 'head gasket', supplier: 'Norvale', due: 'tomorrow' });
  const asked = cardIn(
    await bot.run('order place', { what: 'ring set', supplier: 'Norvle', due: 'tomorrow' }),
  );
  expect(asked.subject).toBe('Which one?');
  expect(asked.audience).toBe('asker');
  return (asked.buttons ?? []).map(({ does }) => writeActionRef(does));
}

describe('a question instead of a guess', () => {
  it('saves nothing until it is answered, and offers every fair reading as a button', async () => {
    const bot = await openCrewBot();
    const refs = await askAmbiguously(bot);
    expect(refs).toHaveLength(2);
    expect(ordersOf(bot)).toHaveLength(1);
  });

  it('is finished by pressing a reading, with everything else as it was typed', async () => {
    const bot = await openCrewBot();
    const [norvale = ''] = await askAmbiguously(bot);
    expect(cardIn(await bot.press(norvale)).result).toContain('ring set');
    expect(ordersOf(bot).map(({ what, supplier }) => [what, supplier])).toEqual([
      ['head gasket', 'Norvale'],
      ['ring set', 'Norvale'],
    ]);
  });

  it('takes the other reading as well as the first', async () => {
    const bot = await openCrewBot();
    const [, fresh = ''] = await askAmbiguously(bot);
    await bot.press(fresh);
    expect(ordersOf(bot).at(-1)?.supplier).toBe('Norvle');
  });

  it('saves once, however many of its readings are pressed', async () => {
    const bot = await openCrewBot();
    const [norvale = '', fresh = ''] = await askAmbiguously(bot);
    await bot.press(norvale);
    const again = cardIn(await bot.press(fresh));
    expect(again.subject).toBe('Already saved');
    expect(ordersOf(bot)).toHaveLength(2);
  });

  it('can be answered only by whom it was put to', async () => {
    const bot = await openCrewBot();
    const [norvale = ''] = await askAmbiguously(bot);
    const { code, message } = refusalIn(await bot.press(norvale, {}, { as: 'Bram' }));
    expect(code).toBe('not-yours');
    expect(message).toContain('somebody else');
    expect(ordersOf(bot)).toHaveLength(1);
  });

  it('keeps the people picked in what was typed', async () => {
    const bot = await openCrewBot();
    await bot.run('order place', { what: 'head gasket', supplier: 'Norvale', due: 'tomorrow' });
    const options = { what: 'ring set', supplier: 'Norvle', due: 'tomorrow', chaser: '77' };
    const asked = cardIn(await bot.run('order place', options, { people: { '77': 'Cleo' } }));
    const [first] = asked.buttons ?? [];
    if (first) await bot.press(writeActionRef(first.does));
    expect(ordersOf(bot).at(-1)).toMatchObject({ chaserId: '77', chaserName: 'Cleo' });
  });

  it('asks about one thing after the other', async () => {
    const bot = await openCrewBot();
    await bot.run('team', { country: 'DE/BY' });
    await bot.run('order place', { what: 'head gasket', supplier: 'Norvale', due: 'tomorrow' });
    const options = { what: 'ring set', supplier: 'Norvle', due: '1/2' };
    const supplier = cardIn(await bot.run('order place', options));
    expect(supplier.result).toContain('There is no supplier "Norvle" yet');
    const [norvale] = supplier.buttons ?? [];
    const day = cardIn(await bot.press(norvale ? writeActionRef(norvale.does) : ''));
    expect(day.result).toBe('Is that a date? If so, which?');
    const [first] = day.buttons ?? [];
    expect(cardIn(await bot.press(first ? writeActionRef(first.does) : '')).result).toContain('ring set');
    expect(ordersOf(bot)).toHaveLength(2);
  });
});
