import { describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import type { Hand } from '../../../src/bot/hand.ts';
import type { Result } from '../../../src/bot/request.ts';
import {
  allCommands,
  type CrewBot,
  cardIn,
  formIn,
  openCrewBot,
  refusalIn,
  TEAM,
} from '../../support/bot.ts';
import { contentsOf } from '../../support/crew-content.ts';
import { pressed } from '../../support/pressed.ts';

const LINES = 'head gasket 84.50; M8 flange bolt x10 12; copper washer 14x18 x6 3.20';

const several = (bot: CrewBot, options: Record<string, string> = {}) =>
  bot.run('order several', {
    lines: LINES,
    supplier: 'Norvale',
    due: '2026-12-04',
    carriage: '6.50',
    ...options,
  });

const record = (bot: CrewBot) => bot.teams.at(TEAM).record;

function pressOn(bot: CrewBot, result: Result, label: string, fields: Record<string, string> = {}) {
  const card = cardIn(result);
  const button = [...(card.buttons ?? []), ...(card.items ?? []).flatMap((item) => item.buttons ?? [])].find(
    (one) => one.label === label,
  );
  if (!button) throw new Error(`no button ${label}: ${card.buttons?.map((one) => one.label).join()}`);
  return bot.press(writeActionRef(button.does), fields);
}

describe('/order several', () => {
  it('writes every line down, with what they share', async () => {
    const bot = await openCrewBot();
    const { result, data, facts } = cardIn(await several(bot, { reference: 'NG-2207' }));
    expect(result).toBe('3 lines from Norvale: due Fri 4 Dec');
    expect(data).toMatchObject({
      purchase: 1,
      supplier: 'Norvale',
      carriageMinor: 650,
      currency: 'GBP',
      reference: 'NG-2207',
      orders: [
        { order: 1, what: 'head gasket', quantity: 1, priceMinor: 8450, purchase: 1 },
        { order: 2, what: 'M8 flange bolt', quantity: 10, priceMinor: 1200 },
        { order: 3, what: 'copper washer 14x18', quantity: 6, priceMinor: 320 },
      ],
    });
    expect(facts).toContainEqual(['Altogether', 'GBP 106.20']);
    expect(
      record(bot)
        .parts.ofBuild(1)
        .map(({ name, needed }) => [name, needed]),
    ).toEqual([
      ['head gasket', 1],
      ['M8 flange bolt', 10],
      ['copper washer 14x18', 6],
    ]);
  });

  it('opens a form when lines or supplier are missing, and the form does the same', async () => {
    const bot = await openCrewBot();
    const form = formIn(await bot.run('order several'));
    expect(form.fields.map(({ name }) => name)).toEqual(['lines', 'supplier', 'due', 'carriage', 'link']);
    const done = await bot.press(writeActionRef(form.does), {
      lines: 'head gasket 84.50\nM8 flange bolt x10 12.00',
      supplier: 'Norvale',
      due: '2026-12-04',
      carriage: '',
      link: '',
    });
    expect(cardIn(done).result).toBe('2 lines from Norvale: due Fri 4 Dec');
  });

  it('is what /order place does with a ; between, and with carriage', async () => {
    const bot = await openCrewBot();
    const both = { what: 'gasket 84.50; bolt x10 12.00', supplier: 'Norvale', due: '2026-12-04' };
    expect(cardIn(await bot.run('order place', both)).result).toBe('2 lines from Norvale: due Fri 4 Dec');
    const one = {
      what: 'oil pump',
      quantity: 2,
      price: '80',
      carriage: '5',
      supplier: 'Norvale',
      due: '2026-12-04',
    };
    expect(cardIn(await bot.run('order place', one)).data).toMatchObject({
      carriageMinor: 500,
      orders: [{ what: 'oil pump', quantity: 2, priceMinor: 8000 }],
    });
  });

  it('is paid in the one currency that is named', async () => {
    const bot = await openCrewBot();
    const { data } = cardIn(await several(bot, { lines: 'seal kit EUR 138; pulley x2 44.50 each' }));
    expect(data).toMatchObject({
      carriageMinor: 650,
      currency: 'EUR',
      orders: [
        { priceMinor: 13_800, currency: 'EUR' },
        { priceMinor: 8_900, currency: 'EUR' },
      ],
    });
  });

  it('asks whether names with a ; between are one thing, and does either', async () => {
    const bot = await openCrewBot();
    const asked = await bot.run('order place', {
      what: 'gasket; hose',
      supplier: 'Norvale',
      due: '2026-12-04',
    });
    expect(cardIn(asked).buttons?.map(({ label }) => label)).toEqual(['Several things', 'One thing']);
    expect(cardIn(await pressOn(bot, asked, 'Several things')).result).toContain('2 lines');
    const again = await bot.run('order place', {
      what: 'pump; seal',
      supplier: 'Norvale',
      due: '2026-12-04',
    });
    expect(cardIn(await pressOn(bot, again, 'One thing')).data).toMatchObject({ what: 'pump; seal' });
  });

  it('asks about one line and keeps the others', async () => {
    const bot = await openCrewBot();
    const asked = await several(bot, { lines: 'head gasket 84.50; oil filter 8' });
    expect(cardIn(asked).result).toBe('What is the 8 in "oil filter 8"?');
    const { data } = cardIn(await pressOn(bot, asked, '8 of them'));
    expect(data).toMatchObject({
      orders: [{ priceMinor: 8450 }, { what: 'oil filter', quantity: 8, priceMinor: null }],
    });
  });

  it('asks about a part that is nearly a known one, within the lines', async () => {
    const bot = await openCrewBot();
    await several(bot);
    const asked = await several(bot, { lines: 'oil filter 8.20; head gaskets 80.00' });
    expect(cardIn(asked).result).toContain('There is no part "head gaskets" yet, but there is head gasket');
    await pressOn(bot, asked, 'head gasket');
    expect(record(bot).parts.ofBuild(1)).toHaveLength(4);
    expect(record(bot).orders.find(5)).toMatchObject({ what: 'head gasket', partId: 1 });
  });

  it('writes all of it or nothing', async () => {
    const bot = await openCrewBot();
    await several(bot);
    const before = contentsOf(bot);
    const asked = await several(bot, { lines: 'oil filter 8.20; head gaskets 80.00' });
    expect(asked.ok).toBe(false);
    expect(contentsOf(bot)).toEqual(before);
  });

  it.each([
    [{ lines: '84.50' }, 'bad-input', '"84.50" has no name.'],
    [{ lines: 'gasket £1.234,567' }, 'bad-input', 'more decimals'],
    [{ carriage: 'lots' }, 'bad-input', '"lots" is not a price'],
    [{ due: 'whenever' }, 'bad-input', 'does not name a day'],
  ])('refuses %j and writes nothing', async (options, code, said) => {
    const bot = await openCrewBot();
    const result = await several(bot, options);
    const refused = refusalIn(result);
    expect(refused.code).toBe(code);
    expect(refused.message).toContain(said);
    expect(bot.teams.at(TEAM).ledger.recent(1)).toEqual([]);
  });

  it('is undone whole', async () => {
    const bot = await openCrewBot();
    await bot.run('order place', { what: 'pump', supplier: 'Norvale', due: '2026-12-04' });
    const before = contentsOf(bot);
    const placed = await several(bot);
    await pressOn(bot, placed, 'Undo');
    expect(contentsOf(bot)).toEqual(before);
  });
});

describe('a parcel', () => {
  it('arrives by one press', async () => {
    const bot = await openCrewBot();
    const done = cardIn(await pressOn(bot, await several(bot), 'All of it arrived'));
    expect(done.result).toBe('3 lines from Norvale: all here');
    expect(
      record(bot)
        .orders.ofBuild(1)
        .flatMap(({ arrivals }) => arrivals.map((one) => one.quantity)),
    ).toEqual([1, 10, 6]);
  });

  it('arrives but for what is named, as typed on one line', async () => {
    const bot = await openCrewBot();
    await several(bot);
    const done = await bot.run('order parcel', {
      order: 'gasket',
      missing: 'flange bolt x2',
      damaged: '#3 x 1',
      rest: '11 Dec',
    });
    expect(cardIn(done).result).toBe('3 lines from Norvale: 1 still to come, due Fri 11 Dec, 1 to sort out');
    expect(record(bot).orders.find(2)).toMatchObject({
      promisedOn: '2026-12-11',
      arrivals: [{ quantity: 8, condition: 'good' }],
    });
    expect(record(bot).orders.find(3)?.arrivals).toMatchObject([
      { quantity: 5, condition: 'good' },
      { quantity: 1, condition: 'damaged' },
    ]);
    expect(cardIn(done).data['said']).toContain(
      'but 2 × M8 flange bolt missing, copper washer 14x18 damaged',
    );
  });

  it('arrives but for what is named, in the form', async () => {
    const bot = await openCrewBot();
    const form = formIn(await pressOn(bot, await several(bot), 'All but some of it'));
    const fields = { missing: '', wrong: 'gasket', damaged: '', rest: '', note: 'for another engine' };
    const done = cardIn(await bot.press(writeActionRef(form.does), fields));
    expect(done.result).toBe('3 lines from Norvale: 1 to sort out');
    expect(record(bot).orders.find(1)?.arrivals).toMatchObject([
      { condition: 'wrong', note: 'for another engine' },
    ]);
  });

  it('gets a new date and is chased as one', async () => {
    const bot = await openCrewBot();
    const placed = await several(bot);
    const form = formIn(await pressOn(bot, placed, 'New date for all'));
    await bot.press(writeActionRef(form.does), { due: '18 Dec' });
    await pressOn(bot, placed, 'All chased');
    const orders = record(bot).orders.ofBuild(1);
    expect(orders.map(({ promisedOn, chasedTimes }) => [promisedOn, chasedTimes])).toEqual([
      ['2026-12-18', 1],
      ['2026-12-18', 1],
      ['2026-12-18', 1],
    ]);
  });

  it.each([
    [{ order: 'pump' }, 'not-found', 'was ordered by itself'],
    [
      { order: 'gasket', missing: 'radiator' },
      'not-found',
      'No line of this parcel is called "radiator". It holds #2 head gasket',
    ],
    [
      { order: 'gasket', missing: 'flange bolt x11' },
      'out-of-range',
      'Only 10 of #3 M8 flange bolt are still to come',
    ],
    [{ order: 'gasket', missing: 'gasket; bolt; washer' }, 'bad-input', 'nothing of this parcel has come'],
    [{ order: 'gasket', missing: 'e' }, 'not-found', 'Several lines of this parcel fit "e"'],
    [{ order: 'radiator' }, 'not-found', 'No order here is called "radiator"'],
  ])('refuses %j and changes nothing', async (options, code, said) => {
    const bot = await openCrewBot();
    await bot.run('order place', { what: 'pump', supplier: 'Norvale', due: '2026-12-04' });
    await several(bot);
    const before = contentsOf(bot);
    const { code: refused, message } = refusalIn(await bot.run('order parcel', options));
    expect(refused).toBe(code);
    expect(message).toContain(said);
    expect(contentsOf(bot)).toEqual(before);
  });

  it('says who has logged it when it has all come', async () => {
    const bot = await openCrewBot();
    const placed = await several(bot);
    await pressOn(bot, placed, 'All of it arrived');
    const { code, message } = refusalIn(await pressOn(bot, placed, 'All of it arrived'));
    expect(code).toBe('already-done');
    expect(message).toContain('logged by Ada');
  });
});

describe('the day promised', () => {
  it('counts the working days of the supplier’s country and skips its shutdown', async () => {
    const bot = await openCrewBot();
    await bot.run('supplier set', { supplier: 'Norvale', country: 'DE' });
    await bot.run('supplier shut', { supplier: 'Norvale', from: '2026-11-26', to: '2026-11-27' });
    const { data, certainty } = cardIn(
      await bot.run('order place', { what: 'pump', supplier: 'norvale', due: 'in 5 working days' }),
    );
    expect(data).toMatchObject({ dueOn: '2026-12-02' });
    expect(certainty).toContain('Counted by Norvale’s working days in DE, less its shutdowns.');
  });

  it.each([
    ['84.50 gbp', { minor: 8450, currency: 'GBP' }],
    ['€ 12', { minor: 1200, currency: 'EUR' }],
  ])('goes with a price of %s that has carriage beside it', async (price, money) => {
    const bot = await openCrewBot();
    const options = { what: 'head gasket', supplier: 'Norvale', due: '2026-12-02', carriage: '6 gbp' };
    await bot.run('order place', { ...options, price, carriage: `6 ${money.currency.toLowerCase()}` });
    expect(bot.teams.at(TEAM).record.orders.find(1)).toMatchObject({ what: 'head gasket', price: money });
    expect(refusalIn(await bot.run('order place', { ...options, price: 'lots' })).message).toContain(
      '"lots" is not a price',
    );
  });

  it('is asked for with the spans most suppliers promise, when nothing tells', async () => {
    const bot = await openCrewBot();
    const asked = cardIn(await bot.run('order place', { what: 'pump', supplier: 'Norvale' }));
    expect(asked.buttons?.map(({ label }) => label)).toEqual([
      'tomorrow',
      'in 3 working days',
      'in 5 working days',
      'in 2 weeks',
    ]);
    const placed = cardIn(await pressed(bot, asked, 'in 3 working days'));
    expect(placed.data).toMatchObject({ dueOn: '2026-11-26' });
  });

  it('is the supplier’s usual time when none is typed', async () => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('order place', { what: 'pump', supplier: 'Norvale' })).message).toContain(
      'When is it promised?',
    );
    await bot.run('supplier set', { supplier: 'Norvale', lead: 3 });
    const { data, certainty } = cardIn(await bot.run('order place', { what: 'pump', supplier: 'Norvale' }));
    expect(data).toMatchObject({ dueOn: '2026-11-26' });
    expect(certainty).toContain('Norvale’s usual 3 working days makes Thu 26 Nov');
  });
});

describe('/order by', () => {
  it('counts back in the supplier’s working days, and says what would be fairly sure', async () => {
    const bot = await openCrewBot();
    await bot.run('order place', { what: 'pump', supplier: 'Norvale', due: '2026-12-04' });
    await bot.run('supplier set', { supplier: 'Norvale', country: 'GB/ENG', lead: 3 });
    const { result, data } = cardIn(await bot.run('order by', { part: 'pump', needed: '2027-01-04' }));
    expect(data).toMatchObject({
      latestOn: '2026-12-29',
      leadDays: 3,
      supplier: 'Norvale',
      restsOnOrders: 0,
    });
    expect(result).toMatch(/^Order by Tue 29 Dec, by .* to be fairly sure$/);
  });

  it('says when it is too late', async () => {
    const bot = await openCrewBot();
    await bot.run('order place', { what: 'pump', supplier: 'Norvale', due: '2026-12-04' });
    const late = cardIn(await bot.run('order by', { part: 'pump', needed: 'tomorrow', lead: 10 }));
    expect(late).toMatchObject({ tone: 'late' });
    expect(late.result).toContain('Too late for Tue 24 Nov');
  });

  it.each([
    [{ part: 'pump', needed: '2027-01-04' }, 'How long does Norvale take?'],
    [{ part: 'hose', needed: '2027-01-04', lead: 3 }, 'No part here is called "hose"'],
    [{ part: 'pump', needed: 'whenever', lead: 3 }, 'does not name a day'],
    [{ part: 'pump', needed: '2027-01-04', supplier: 'Nobody', lead: 3 }, 'There is no supplier "Nobody"'],
  ])('refuses %j', async (options, said) => {
    const bot = await openCrewBot();
    await bot.run('order place', { what: 'pump', supplier: 'Norvale', due: '2026-12-04' });
    expect(refusalIn(await bot.run('order by', options)).message).toContain(said);
  });
});

describe('what is offered while a day is typed', () => {
  it.each([
    [
      'in 5 working days',
      [{ label: 'in 5 working days, as the supplier works', value: 'in 5 working days' }],
    ],
    ['4 Dec', [{ label: 'Fri 4 Dec (4 Dec)', value: '2026-12-04' }]],
    ['in 5 workin', []],
  ])('%s', async (typed, offered) => {
    const catalogue = await allCommands();
    const bot = await openCrewBot(catalogue);
    const suggest = catalogue.runnable('order', 'place')?.suggest['due'];
    const { record } = bot.teams.at(TEAM);
    const hand = { record, clock: bot.clock } as unknown as Hand; // the only parts that reading a day looks at
    expect(suggest?.(typed, hand, {})).toEqual(offered);
    expect(suggest?.('', hand, {}).map(({ value }) => value)).toEqual([
      '2026-11-24',
      'in 3 working days',
      'in 5 working days',
      '2026-12-07',
    ]);
  });
});
