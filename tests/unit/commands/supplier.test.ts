import { describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import type { Result } from '../../../src/bot/request.ts';
import { instantOf } from '../../../src/core/time.ts';
import { type CrewBot, cardIn, openCrewBot, refusalIn } from '../../support/bot.ts';
import { contentsOf } from '../../support/crew-content.ts';

type Options = Record<string, string | number>;

const supplier = (bot: CrewBot, what: string, options: Options = {}) => bot.run(`supplier ${what}`, options);

function press(bot: CrewBot, result: Result, label: string) {
  const button = cardIn(result).buttons?.find((one) => one.label === label);
  if (!button) throw new Error(`no button ${label}`);
  return bot.press(writeActionRef(button.does));
}

/** An order that comes so many days after the Monday it is promised for. */
async function cameLate(bot: CrewBot, from: string, what: string, day: string): Promise<void> {
  bot.clock.set(instantOf('2026-11-23', '10:00', 'Europe/London'));
  await bot.run('order place', { what, supplier: from, due: '2026-11-30' });
  bot.clock.set(instantOf(day, '10:00', 'Europe/London'));
  expect((await bot.run('order arrived', { order: what })).ok).toBe(true);
}

describe('/supplier', () => {
  it('learns how late one comes, and says on how many orders that rests', async () => {
    const bot = await openCrewBot();
    await cameLate(bot, 'Norvale', 'gasket', '2026-11-30');
    await cameLate(bot, 'Tarn', 'bearing', '2026-12-07');
    await cameLate(bot, 'Tarn', 'shell', '2026-12-07');
    const { data, certainty } = cardIn(await supplier(bot, 'show', { supplier: 'tarn' }));
    // worked by hand: the team's mean is (0 + 5 + 5 + 0.8)/(3 + 2) = 2.16 and weighs 4, so Tarn's is (8.64 + 10)/(4 + 2) = 3.11
    expect(data).toMatchObject({ expectedLateDays: 3, restsOnOrders: 2 });
    expect(certainty).toBe("Rests on 2 of their orders that came; the team's 3 weigh as much as 4.");
    const list = cardIn(await supplier(bot, 'list'));
    expect(list.items?.map(({ text }) => text.split(':')[0])).toEqual(['Tarn', 'Norvale']);
  });

  it('expects later what is late already', async () => {
    const bot = await openCrewBot();
    await bot.run('order place', { what: 'pump', supplier: 'Norvale', due: '2026-11-25' });
    const expected = async (day: string) => {
      bot.clock.set(instantOf(day, '10:00', 'Europe/London'));
      return cardIn(await bot.run('order show', { order: 'pump' })).data;
    };
    expect(await expected('2026-11-24')).toMatchObject({ expectedOn: '2026-11-25', restsOnOrders: 0 });
    const late = await expected('2026-12-09');
    expect(String(late['expectedOn']) > '2026-12-09').toBe(true);
    expect(String(late['latestOn']) >= String(late['expectedOn'])).toBe(true);
  });

  it('keeps country, usual time, note and shutdowns, and counts lateness by them', async () => {
    const bot = await openCrewBot();
    await bot.run('order place', { what: 'pump', supplier: 'Norvale', due: '2026-12-18' });
    await supplier(bot, 'set', { supplier: 'Norvale', country: 'de/by', lead: 5, note: 'ring before ten' });
    await supplier(bot, 'shut', { supplier: 'Norvale', from: '21 Dec', to: '8 Jan', reason: 'holidays' });
    const { data, facts } = cardIn(await supplier(bot, 'show', { supplier: 'Norvale' }));
    expect({ data }).toMatchObject({
      data: {
        country: 'DE/BY',
        leadDays: 5,
        note: 'ring before ten',
        shutdowns: [{ from: '2026-12-21', to: '2027-01-08' }],
      },
    });
    expect(facts).toContainEqual(['Shut', 'Mon 21 Dec to Fri 8 Jan 2027, holidays']);
    bot.clock.set(instantOf('2027-01-12', '10:00', 'Europe/London'));
    // Monday and Tuesday alone: the shutdown and Epiphany count for nothing
    expect(cardIn(await bot.run('order show', { order: 'pump' })).result).toContain('late by 2 working days');
  });

  it('opens a supplier nobody has ordered from, and asks about one that is nearly known', async () => {
    const bot = await openCrewBot();
    expect((await supplier(bot, 'set', { supplier: 'Norvale', lead: 5 })).ok).toBe(true);
    expect(refusalIn(await supplier(bot, 'set', { supplier: 'Norvalle', lead: 5 })).code).toBe('which-one');
  });

  it.each<[string, Options]>([
    ['set', { supplier: 'Norvale', country: 'FR' }],
    ['set', { supplier: 'Norvale', lead: 0, note: 'slow', name: 'Norvale Gaskets' }],
    ['set', { supplier: 'Somebody new', lead: 3 }],
    ['shut', { supplier: 'Norvale', from: '21 Dec', to: '2 Jan' }],
  ])('/supplier %s %j is undone', async (what, options) => {
    const bot = await openCrewBot();
    await bot.run('order place', { what: 'pump', supplier: 'Norvale', due: '2026-12-18' });
    const before = contentsOf(bot);
    const done = await supplier(bot, what, options);
    expect(done.ok, cardIn(done).result).toBe(true);
    expect(contentsOf(bot)).not.toEqual(before);
    await press(bot, done, 'Undo');
    expect(contentsOf(bot)).toEqual(before);
  });

  it('a shutdown is taken off by its button, and that is undone', async () => {
    const bot = await openCrewBot();
    const shut = await supplier(bot, 'shut', { supplier: 'Norvale', from: '21 Dec', to: '2 Jan' });
    const before = contentsOf(bot);
    const open = await press(bot, shut, 'Open Mon 21 Dec to Sat 2 Jan 2027');
    expect(cardIn(open).data['shutdowns']).toEqual([]);
    expect(refusalIn(await press(bot, shut, 'Open Mon 21 Dec to Sat 2 Jan 2027')).code).toBe('not-found');
    await press(bot, open, 'Undo');
    expect(contentsOf(bot)).toEqual(before);
  });

  it.each<[string, Options, string]>([
    ['show', { supplier: 'Nobody' }, 'There is no supplier "Nobody". Known: Norvale, Tarn.'],
    ['set', { supplier: 'Norvale' }, 'Say what to change of Norvale'],
    ['set', { supplier: 'Norvale', country: 'Atlantis' }, 'There is no holiday list for "Atlantis"'],
    ['set', { supplier: 'Norvale', country: 'DE/ZZ' }, 'There is no holiday list for "DE/ZZ"'],
    ['set', { supplier: 'Norvale', lead: -1 }, 'lead: must be at least 0'],
    ['set', { supplier: 'Norvale', lead: 251 }, 'lead: must be at most 250'],
    ['set', { supplier: 'Norvale', name: 'tarn' }, 'There is a supplier Tarn already'],
    ['shut', { supplier: 'Norvale', from: '2 Jan', to: '21 Dec' }, 'ends before it begins'],
    ['shut', { supplier: 'Norvale', from: 'whenever', to: '21 Dec' }, 'does not name a day'],
    ['shut', { supplier: 'Tarn', from: '25 Dec', to: '28 Dec' }, 'Tarn is shut then already'],
  ])('/supplier %s %j is refused, and nothing is changed', async (what, options, said) => {
    const bot = await openCrewBot();
    await bot.run('order place', { what: 'pump', supplier: 'Norvale', due: '2026-12-18' });
    await supplier(bot, 'shut', { supplier: 'Tarn', from: '21 Dec', to: '2 Jan' });
    const before = contentsOf(bot);
    expect(refusalIn(await supplier(bot, what, options)).message).toContain(said);
    expect(contentsOf(bot)).toEqual(before);
  });
});
