import { describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import { TOPICS } from '../../../src/bot/topics.ts';
import {
  allCommands,
  type CrewBot,
  cardIn,
  formIn,
  openCrewBot,
  refusalIn,
  TEAM,
} from '../../support/bot.ts';
import { pressed } from '../../support/pressed.ts';

const place = (bot: CrewBot, options: Record<string, string | number> = {}) =>
  bot.run('order place', { what: 'head gasket', supplier: 'Norvale', due: '2026-12-04', ...options });

const settings = (bot: CrewBot) => bot.teams.at(TEAM).record.settings.read();

describe('/team', () => {
  it('shows what holds without changing it', async () => {
    const bot = await openCrewBot();
    expect(cardIn(await bot.run('team')).result).toBe('Mornings at 08:30, Europe/London');
    expect(bot.teams.at(TEAM).ledger.recent(1)).toEqual([]);
  });

  it('sets what is given, leaves the rest, and can be undone', async () => {
    const bot = await openCrewBot();
    const changed = cardIn(await bot.run('team', { country: 'DE/BY', zone: 'Europe/Berlin' }));
    expect(settings(bot)).toEqual({ country: 'DE/BY', zone: 'Europe/Berlin', morning: '08:30' });
    const [undo] = changed.buttons ?? [];
    await bot.press(undo ? writeActionRef(undo.does) : '');
    expect(settings(bot)).toEqual({ country: 'GB/ENG', zone: 'Europe/London', morning: '08:30' });
  });

  it.each([
    ['7:05', '07:05'],
    ['07.30', '07:30'],
    ['12:00', '12:00'],
  ])('reads the morning time %s', async (typed, morning) => {
    const bot = await openCrewBot();
    await bot.run('team', { morning: typed });
    expect(settings(bot).morning).toBe(morning);
  });

  it.each([
    [{ zone: 'London' }, 'There is no time zone "London"'],
    [{ country: 'XX' }, 'There is no holiday list for "XX"'],
    [{ country: 'GB/XXX' }, 'There is no holiday list for "GB/XXX"'],
    [{ morning: '24:00' }, '"24:00" is no time for a morning message'],
    [{ morning: 'early' }, '"early" is no time for a morning message'],
    [{ morning: '20:00' }, 'from 05:00 to 12:00'],
    [{ morning: '04:59' }, 'from 05:00 to 12:00'],
    [{ morning: '12:01' }, 'from 05:00 to 12:00'],
  ])('refuses %j and changes nothing', async (options, said) => {
    const bot = await openCrewBot();
    const { message } = refusalIn(await bot.run('team', options));
    expect(message).toContain(said);
    expect(message).toMatch(/Type .*Nothing was changed\.$/);
    expect(bot.teams.at(TEAM).ledger.recent(1)).toEqual([]);
  });
});

describe('/undo', () => {
  it('takes the asker’s own last change back, and brings it again', async () => {
    const bot = await openCrewBot();
    await place(bot);
    await place(bot, { what: 'pump' }).then(() =>
      bot.run('order place', { what: 'hose', supplier: 'Norvale', due: '2026-12-04' }, { as: 'Bram' }),
    );
    const undone = cardIn(await bot.run('undo'));
    expect(undone.result).toContain('pump');
    expect(cardIn(await bot.run('order list')).data['open']).toBe(2);
    const [back] = undone.buttons ?? [];
    await bot.press(back ? writeActionRef(back.does) : '');
    expect(cardIn(await bot.run('order list')).data['open']).toBe(3);
  });

  it('says so when there is nothing to take back', async () => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('undo')).code).toBe('not-found');
  });

  it('does not take back what is somebody else’s', async () => {
    const bot = await openCrewBot();
    const placed = cardIn(await place(bot));
    const undo = placed.buttons?.at(-1);
    const result = await bot.press(undo ? writeActionRef(undo.does) : '', {}, { as: 'Bram' });
    expect(refusalIn(result)).toMatchObject({ code: 'not-yours' });
  });
});

describe('/help', () => {
  it('has a place for every command', async () => {
    const { entries } = await allCommands();
    const placed = TOPICS.flatMap(({ commands }) => commands);
    expect(entries.map(({ name }) => name).filter((name) => !placed.includes(name))).toEqual([]);
    expect(new Set(placed).size).toBe(placed.length);
  });

  it('leads by topic to each command with an example, for the asker alone', async () => {
    const bot = await openCrewBot();
    const overview = cardIn(await bot.run('help'));
    expect(overview.audience).toBe('asker');
    expect(overview.items?.find(({ text }) => text === 'Parts and suppliers')?.note).toContain('/order');
    for (const { name, commands } of TOPICS) {
      const topic = cardIn(await pressed(bot, overview, name));
      expect(topic.items?.map(({ text }) => text.slice(1))).toEqual([...commands]);
      for (const { note } of topic.items ?? []) expect(note).toContain('For example: /');
    }
  });

  it('shows one chosen from a topic', async () => {
    const bot = await openCrewBot();
    const topic = cardIn(await pressed(bot, cardIn(await bot.run('help')), 'Sums'));
    const choice = topic.menu?.choices.find(({ label }) => label === '/convert');
    const menu = writeActionRef(topic.menu?.does ?? { command: '', action: '', args: {} });
    const { subject } = cardIn(await bot.press(menu, { command: choice?.value ?? '' }));
    expect(subject).toBe('/convert');
  });

  it.each(['order', '/order'])('shows the options of one: %s', async (command) => {
    const bot = await openCrewBot();
    const { items } = cardIn(await bot.run('help', { command }));
    expect(items?.find(({ text }) => text === '/order place')?.note).toContain('supplier: Who it comes from');
  });

  it('pages what has many subcommands, each shown once', async () => {
    const bot = await openCrewBot();
    let card = cardIn(await bot.run('help', { command: 'order' }));
    const seen = [...(card.items ?? [])];
    while (card.buttons?.some(({ label }) => label === 'Next page')) {
      card = cardIn(await pressed(bot, card, 'Next page'));
      seen.push(...(card.items ?? []));
    }
    const subcommands = (await allCommands()).find('order')?.subcommands ?? [];
    expect(seen.map(({ text }) => text)).toEqual(subcommands.map(({ name }) => `/order ${name}`));
  });

  it('names what there is not', async () => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('help', { command: 'bolt' })).message).toContain('/help lists them all');
  });
});

describe('/order', () => {
  it('says back how the day was read and that a supplier is new', async () => {
    const bot = await openCrewBot();
    const { certainty, data } = cardIn(
      await place(bot, { due: 'in 5 working days', price: '84,50', quantity: 2 }),
    );
    expect(certainty).toBe('“in 5 working days” read as Mon 30 Nov. Norvale is a new supplier here.');
    expect(data).toMatchObject({
      dueOn: '2026-11-30',
      priceMinor: 8450,
      currency: 'GBP',
      quantity: 2,
      chaser: 'Ada',
    });
  });

  it('gives the chase to whoever is picked', async () => {
    const bot = await openCrewBot();
    const options = { what: 'pump', supplier: 'Norvale', due: '2026-12-04', chaser: '77' };
    expect(cardIn(await bot.run('order place', options, { people: { '77': 'Cleo' } })).data['chaser']).toBe(
      'Cleo',
    );
  });

  it.each([
    [{ price: 'cheap' }, 'is not a price'],
    [{ due: 'whenever' }, ''],
    [{ quantity: 0 }, 'quantity: must be at least 1'],
    [{ what: '   ' }, 'what: nothing was typed'],
    [{ what: 'x'.repeat(201) }, 'what: must be at most 200 characters'],
  ])('saves nothing when %j', async (options, said) => {
    const bot = await openCrewBot();
    expect(refusalIn(await place(bot, options)).message).toContain(said);
    expect(bot.teams.at(TEAM).ledger.recent(1)).toEqual([]);
    expect(bot.reported).toEqual([]);
  });

  it('logs what only partly came by the form, in the same words as the command', async () => {
    const bot = await openCrewBot();
    await place(bot, { quantity: 3 });
    const form = formIn(await bot.press('order/partly?order=1'));
    expect(form.fields.map(({ name }) => name)).toEqual(['quantity', 'condition', 'rest', 'note']);
    const fields = { quantity: '1', condition: 'damaged', rest: '', note: ' dented ' };
    const { data, facts } = cardIn(await bot.press(writeActionRef(form.does), fields));
    expect(data).toMatchObject({ outstanding: 2, toSortOut: 1, received: 0 });
    expect(JSON.stringify(facts)).toContain('dented');
  });

  it.each([
    ['a', 'number'],
    ['0', 'at least 1'],
    ['4', 'cannot have arrived'],
    ['1.5', 'whole number'],
  ])('refuses %j as how many came, and keeps the order as it was', async (quantity, said) => {
    const bot = await openCrewBot();
    await place(bot, { quantity: 3 });
    const fields = { quantity, condition: 'good', rest: '', note: '' };
    expect(refusalIn(await bot.press('order/partly-done?order=1', fields)).message).toContain(said);
    expect(cardIn(await bot.run('order show', { order: '1' })).data['outstanding']).toBe(3);
  });

  it('lists the late first, of one supplier or of all', async () => {
    const bot = await openCrewBot();
    await place(bot);
    await place(bot, { what: 'pump', supplier: 'Castwell', due: '2026-11-24' });
    bot.clock.set(bot.clock.nowMs() + 3 * 24 * 3_600_000);
    const all = cardIn(await bot.run('order list'));
    expect(all).toMatchObject({ result: '2 open, 1 late', tone: 'late' });
    expect(all.items?.[0]?.text).toBe('#2 pump');
    expect(cardIn(await bot.run('order list', { supplier: 'Castwell' })).result).toBe(
      '1 open from Castwell, 1 late',
    );
    expect(refusalIn(await bot.run('order list', { supplier: 'Xylophon' })).message).toContain(
      'Known: Castwell, Norvale',
    );
  });
});
