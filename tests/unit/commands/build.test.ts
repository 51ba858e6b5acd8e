import { describe, expect, it } from 'vitest';
import { type CrewBot, cardIn, openCrewBot, refusalIn } from '../../support/bot.ts';
import { pressed } from '../../support/pressed.ts';

const place = (bot: CrewBot) =>
  bot.run('order place', { what: 'head gasket', supplier: 'Norvale', due: '2026-12-04' });

const nameIn = async (bot: CrewBot, channel?: string, threadOf?: string): Promise<string> =>
  cardIn(await bot.run('build show', {}, { ...(channel && { channel }), ...(threadOf && { threadOf }) }))
    .result;

describe('/build show, name', () => {
  it('says that nothing is recorded, then opens with the first order under the channel’s name', async () => {
    const bot = await openCrewBot();
    expect(await nameIn(bot)).toBe('Nothing is recorded in this channel yet');
    await place(bot);
    expect(cardIn(await bot.run('build show'))).toMatchObject({
      result: 'hill-climb',
      facts: [['Orders open', '1']],
    });
  });

  it('is named, and keeps its orders apart from another channel’s', async () => {
    const bot = await openCrewBot();
    await place(bot);
    await bot.run('build name', { name: 'Coupe' });
    expect(cardIn(await bot.run('build show')).data).toEqual({ name: 'Coupe', openOrders: 1, facts: [] });
    expect(cardIn(await bot.run('build show', {}, { channel: '601' })).data).toMatchObject({
      name: null,
      openOrders: 0,
    });
    expect(refusalIn(await bot.run('order show', { order: '1' }, { channel: '601' })).code).toBe('not-found');
  });

  it('goes back to its old name', async () => {
    const bot = await openCrewBot();
    await place(bot);
    const card = cardIn(await bot.run('build name', { name: 'Coupe' }));
    await pressed(bot, card, 'Undo');
    expect(await nameIn(bot)).toBe('hill-climb');
  });
});

describe('a thread', () => {
  it('is about the build of the channel it hangs on', async () => {
    const bot = await openCrewBot();
    await place(bot);
    expect(await nameIn(bot, '700', '600')).toBe('hill-climb');
  });

  it('writes into that build too, and opens it for the channel', async () => {
    const bot = await openCrewBot();
    await bot.run('build spec', { what: 'bore', value: '81 mm' }, { channel: '700', threadOf: '600' });
    expect(cardIn(await bot.run('build show')).data).toMatchObject({
      facts: [{ name: 'bore', value: '81 mm' }],
    });
  });

  it('can have one of its own', async () => {
    const bot = await openCrewBot();
    await place(bot);
    await bot.run('build open', { name: 'Spare engine' }, { channel: '700', threadOf: '600' });
    expect(await nameIn(bot, '700', '600')).toBe('Spare engine');
    expect(await nameIn(bot)).toBe('hill-climb');
    const again = await bot.run('build open', { name: 'Third' }, { channel: '700', threadOf: '600' });
    expect(refusalIn(again).message).toContain(
      'This channel has a build: Spare engine. Nothing was changed.',
    );
  });
});

describe('/build spec', () => {
  it('writes a line down, corrects it under the name it has, strikes it off, and takes each back', async () => {
    const bot = await openCrewBot();
    await bot.run('build spec', { what: 'Compression ratio', value: '8.6' });
    const corrected = cardIn(await bot.run('build spec', { what: 'compression  ratio', value: '8.4' }));
    expect(corrected.data).toMatchObject({
      facts: [{ name: 'Compression ratio', value: '8.4' }],
      said: 'Compression ratio: 8.4, was 8.6',
    });
    const struck = cardIn(await bot.run('build spec', { what: 'compression ratio' }));
    expect(struck.data).toMatchObject({ facts: [] });
    await pressed(bot, struck, 'Undo');
    await pressed(bot, corrected, 'Undo');
    expect(cardIn(await bot.run('build show')).data).toMatchObject({
      facts: [{ name: 'Compression ratio', value: '8.6' }],
    });
  });

  it('says what is written down when a line is not known', async () => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('build spec', { what: 'bore' })).message).toBe(
      'Nothing is written down under "bore". Nothing is written down yet. Give value:"…" to write it down.',
    );
    await bot.run('build spec', { what: 'stroke', value: '77.4 mm' });
    expect(refusalIn(await bot.run('build spec', { what: 'bore' })).message).toContain('There is stroke.');
  });
});

describe('/build list, take', () => {
  it('lists the crew’s builds and moves one to another channel and back', async () => {
    const bot = await openCrewBot();
    await place(bot);
    await bot.run('build name', { name: 'Coupe' });
    expect(cardIn(await bot.run('build list')).items).toEqual([
      { text: 'Coupe', note: 'This channel’s. Orders open: 1.' },
    ]);
    const moved = cardIn(await bot.run('build take', { build: 'coupe' }, { channel: '601' }));
    expect(moved.result).toBe('Coupe');
    expect(await nameIn(bot)).toBe('Nothing is recorded in this channel yet');
    await pressed(bot, moved, 'Undo');
    expect(await nameIn(bot)).toBe('Coupe');
  });

  it.each([
    [{ build: 'Saloon' }, '601', 'No build here is called "Saloon". There is Coupe.'],
    [{ build: 'Coupe' }, '600', 'This channel is that build’s already. Nothing was changed.'],
  ])('refuses %j in channel %s', async (options, channel, said) => {
    const bot = await openCrewBot();
    await bot.run('build name', { name: 'Coupe' });
    expect(refusalIn(await bot.run('build take', options, { channel })).message).toContain(said);
  });

  it('does not take a channel away from a build', async () => {
    const bot = await openCrewBot();
    await bot.run('build name', { name: 'Coupe' });
    await bot.run('build name', { name: 'Van' }, { channel: '601' });
    const refused = refusalIn(await bot.run('build take', { build: 'Coupe' }, { channel: '601' }));
    expect(refused.message).toBe(
      'This channel is Van’s. Nothing was changed. Ask in a channel or thread that has none.',
    );
  });
});
