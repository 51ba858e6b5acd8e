import { describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import { instantOf } from '../../../src/core/time.ts';
import { type CrewBot, cardIn, formIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';
import { pressed } from '../../support/pressed.ts';

const log = (bot: CrewBot, reading: string) => bot.run('reading log', { reading });
const on = (bot: CrewBot, day: string, time = '10:00') =>
  bot.clock.set(instantOf(day, time, 'Europe/London'));
const plan = (bot: CrewBot) => {
  const { record } = bot.teams.at(TEAM);
  const found = record.runIn.ofBuild(record.builds.all()[0]?.id ?? 0);
  if (found === undefined) throw new Error('there is no plan');
  return found;
};

/** A plan by distance from 84 210 km on Monday 23 November. */
async function begun(options: Record<string, string> = {}): Promise<CrewBot> {
  const bot = await openCrewBot();
  await log(bot, 'odo 84210 km');
  await bot.run('runin plan', {
    choose: 'road by distance',
    limit: '7200 rpm',
    boost: '1.1 bar',
    ...options,
  });
  return bot;
}

describe('/runin plan', () => {
  it('starts a marked plan of common practice from the newest odometer reading', async () => {
    const bot = await begun();
    expect(plan(bot)).toMatchObject({
      name: 'road by distance',
      origin: 'common practice',
      startedOn: '2026-11-23',
      startKm: 84_210,
      limitRpm: 7200,
      boostKPa: 110,
    });
    const card = cardIn(await bot.run('runin plan'));
    expect(card.smallPrint?.join(' ')).toContain(
      "Common practice, no source: the builder's own figures come first",
    );
    expect(card.pictures?.[0]?.alt).toContain('The ceiling rises from 3600 to 7200 rpm.');
  });

  it('takes the first start and both counters as they are said', async () => {
    const bot = await openCrewBot();
    await bot.run('runin plan', {
      choose: 'by engine hours',
      started: '16 Nov',
      hours: '12.5',
      odometer: '52310 miles',
    });
    expect(plan(bot).startedOn).toBe('2026-11-16');
    expect(plan(bot).startH).toBe(12.5);
    expect(plan(bot).startKm).toBeCloseTo(84_184.784_64, 4);
  });

  it('changes what it rests on and keeps its steps', async () => {
    const bot = await begun();
    await bot.run('runin done', { step: 'leaks' });
    await bot.run('runin plan', { limit: '6500 rpm' });
    expect(plan(bot).limitRpm).toBe(6500);
    expect(plan(bot).steps.filter(({ doneOn }) => doneOn !== null)).toHaveLength(1);
  });

  it('says what to do when there is none, and refuses a first start still to come', async () => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('runin today')).message).toContain(
      '/runin plan choose:"road by distance" starts one',
    );
    const early = await bot.run('runin plan', { choose: 'own', started: '2026-12-24' });
    expect(refusalIn(early).message).toContain('still to come');
  });

  it('gives way to another, and comes back whole when that is undone', async () => {
    const bot = await begun();
    on(bot, '2026-11-25');
    await log(bot, 'odo 84278 km');
    await bot.run('runin done', { step: 'leaks', found: 'dry' });
    await bot.run('runin snooze', { step: 'first oil', until: '50 km', reason: 'no filter here' });
    const before = plan(bot);
    const card = cardIn(await bot.run('runin plan', { choose: 'own' }));
    expect(plan(bot).steps).toEqual([]);
    await pressed(bot, card, 'Undo');
    expect(plan(bot)).toEqual(before);
  });

  it('asks whether a drain of the engine oil was one of its changes', async () => {
    const bot = await begun();
    await bot.run('fluid case', { name: 'sump', grade: '10W-40', capacity: '5 L' });
    await bot.run('fluid poured', { what: '5 L into sump' });
    on(bot, '2026-11-25');
    await log(bot, 'odo 84290 km');
    await bot.run('fluid drained', { what: 'sump' });
    const card = cardIn(await bot.run('runin plan'));
    const fact = card.facts?.find(([label]) => label === 'Drained')?.[1];
    expect(fact).toMatch(/^sump on Wed 25 Nov by Ada\. If that was “First oil and filter change/);
    expect(plan(bot).steps.every(({ doneOn }) => doneOn === null)).toBe(true);
  });

  it('is undone as a whole', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await bot.run('runin plan', { choose: 'road by distance' }));
    await pressed(bot, card, 'Undo');
    const { record } = bot.teams.at(TEAM);
    expect(record.runIn.ofBuild(1)).toBeUndefined();
  });
});

describe('/runin today', () => {
  it.each([
    [
      '84210 km',
      '3600 rpm at most, 50 % of the boost (0.55 bar), up to half load, always varied, no steady cruise above 10 minutes; until 150 km',
    ],
    [
      '84535 km',
      '4650 rpm at most, 50 % of the boost (0.55 bar), short pulls up to three quarters, then overrun; until 500 km',
    ],
    ['85510 km', '6450 rpm at most, 75 % of the boost (0.82 bar), full load in longer pulls; until 1600 km'],
    ['85900 km', '7200 rpm at most, full boost, no more than any sound engine'],
  ])('at %s', async (odometer, said) => {
    const bot = await begun();
    on(bot, '2026-11-25');
    await log(bot, `odo ${odometer}`);
    expect(cardIn(await bot.run('runin today')).result).toBe(said);
  });

  it('holds to the first ceiling while nothing was read, and says so', async () => {
    const bot = await openCrewBot();
    await bot.run('runin plan', { choose: 'by engine hours' });
    const card = cardIn(await bot.run('runin today'));
    expect(card.result).toMatch(/^3500 rpm at most, 50 % of the boost/);
    expect(card.certainty).toContain('Nothing was read since the first start');
  });
});

describe('steps', () => {
  it('are due, coming up or later by distance, with a day by recent use', async () => {
    const bot = await begun();
    on(bot, '2026-11-25');
    await log(bot, 'odo 84278 km');
    const { data } = cardIn(await bot.run('runin plan'));
    expect(data['steps']).toMatchObject([
      { state: 'due' },
      { state: 'soon', expectedOn: '2026-11-26' },
      { state: 'soon', expectedOn: '2026-11-26' },
      { state: 'later', expectedOn: '2026-11-29' },
      {},
      {},
      {},
      {},
      {},
      {},
    ]);
  });

  it('come first by hours where those are reached first', async () => {
    const bot = await begun({ hours: '0' });
    on(bot, '2026-11-25');
    await log(bot, 'hours 1.6');
    const card = cardIn(await bot.run('runin plan'));
    expect(card.result).toContain('2 due');
  });

  it('are done with what was found, and not twice', async () => {
    const bot = await begun();
    on(bot, '2026-11-25');
    await log(bot, 'odo 84278 km');
    const today = cardIn(await bot.run('runin today'));
    const form = formIn(await pressed(bot, today, 'Done'));
    await bot.press(writeActionRef(form.does), { found: 'dry everywhere', link: '' });
    expect(plan(bot).steps[0]).toMatchObject({
      doneOn: '2026-11-25',
      doneByName: 'Ada',
      doneKm: 68,
      found: 'dry everywhere',
    });
    expect(refusalIn(await bot.run('runin done', { step: '#1' })).code).toBe('already-done');
  });

  it('are put off by distance, hours or days, with a reason', async () => {
    const bot = await begun();
    on(bot, '2026-11-25');
    await log(bot, 'odo 84300 km');
    await bot.run('runin snooze', { step: 'first oil', until: '50 km', reason: 'no filter here' });
    expect(plan(bot).steps[1]?.snoozes).toMatchObject([
      { due: { km: 140 }, reason: 'no filter here', byName: 'Ada' },
    ]);
    const card = cardIn(await bot.run('runin snooze', { step: 'leaks', until: '3 days', reason: 'raining' }));
    expect(plan(bot).steps[0]?.snoozes).toMatchObject([{ due: { km: null, h: null, days: 5 } }]);
    expect(card.result).not.toContain('due');
    expect(
      refusalIn(await bot.run('runin snooze', { step: 'leaks', until: '2 h', reason: 'x' })).message,
    ).toContain('No hours are logged');
    expect(
      refusalIn(await bot.run('runin snooze', { step: 'leaks', until: 'soonish', reason: 'x' })).code,
    ).toMatch(/bad-input|which-one/);
  });

  it('stand on the strip where they were done', async () => {
    const bot = await begun();
    on(bot, '2026-11-25');
    await log(bot, 'odo 84300 km');
    await bot.run('runin snooze', { step: 'first oil', until: '200 km', reason: 'no filter here' });
    await bot.run('runin done', { step: 'first oil' });
    const [picture] = cardIn(await bot.run('runin plan')).pictures ?? [];
    expect(picture?.alt).toMatch(/90 km: First oil.*\(done\); 100 km: /);
    expect(picture?.alt).not.toContain('290 km');
  });

  it('ask whether a distance is one by the odometer or from now, where it could be either', async () => {
    const bot = await openCrewBot();
    await bot.run('runin plan', { choose: 'road by distance' });
    await log(bot, 'odo 140 km');
    const said = { step: 'first oil', reason: 'no filter here' };
    const asked = await bot.run('runin snooze', { ...said, until: '160 km' });
    expect(refusalIn(asked)).toMatchObject({ code: 'which-one' });
    expect(plan(bot).steps[1]?.snoozes).toEqual([]);
    await bot.run('runin snooze', { ...said, until: 'at 160 km' });
    await bot.run('runin snooze', { ...said, until: 'another 160 km' });
    await bot.run('runin snooze', { ...said, until: '20 km more' });
    expect(plan(bot).steps[1]?.snoozes.map(({ due }) => due.km)).toEqual([160, 300, 160]);
  });

  it('of the builder come beside those of common practice, are changed and left out', async () => {
    const bot = await begun();
    await bot.run('runin step', { what: 'change the fuel filter', due: '300 km or 5 h' });
    expect(plan(bot).steps.at(-1)).toMatchObject({ origin: 'builder', due: { km: 300, h: 5, days: null } });
    await bot.run('runin step', { what: '#2', due: '50 km' });
    expect(plan(bot).steps[1]).toMatchObject({ origin: 'builder', due: { km: 50, h: null, days: null } });
    await bot.run('runin step', { what: 'wheel bolts', remove: true });
    expect(plan(bot).steps[2]?.dropped).toBe(true);
    expect(refusalIn(await bot.run('runin step', { what: 'listen to it' })).message).toContain(
      'due: say when',
    );
    expect(refusalIn(await bot.run('runin step', { what: 'listen to it', due: 'later' })).code).toMatch(
      /bad-input|which-one/,
    );
  });

  it('ask which one where several fit', async () => {
    const bot = await begun();
    const asked = await bot.run('runin done', { step: 'oil and filter change' });
    expect(refusalIn(asked).code).toBe('which-one');
    expect(cardIn(asked).buttons?.length).toBe(3);
  });
});

describe('/runin ceiling', () => {
  it("puts the builder's own figures down, a straight line between", async () => {
    const bot = await openCrewBot();
    await log(bot, 'odo 1000 km');
    await bot.run('runin plan', { choose: 'own', limit: '8000 rpm', boost: '1 bar' });
    await bot.run('runin ceiling', { at: '0 km', speed: '4000 rpm', boost: '40 %', load: 'half load' });
    await bot.run('runin ceiling', { at: '1000 km', speed: '8000 rpm', boost: '100 %', load: 'all of it' });
    on(bot, '2026-11-25');
    await log(bot, 'odo 1500 km');
    expect(cardIn(await bot.run('runin today')).result).toBe(
      '6000 rpm at most, 70 % of the boost (0.7 bar), half load; until 1000 km',
    );
  });

  it('are counted in hours or days where the builder says so', async () => {
    const bot = await openCrewBot();
    await bot.run('runin plan', { choose: 'own', limit: '8000 rpm', measure: 'days' });
    await bot.run('runin ceiling', { at: '0 days', speed: '4000 rpm', load: 'half load' });
    await bot.run('runin ceiling', { at: '10 days', speed: '8000 rpm', load: 'all of it' });
    on(bot, '2026-11-28');
    expect(cardIn(await bot.run('runin today')).result).toBe('6000 rpm at most, half load; until 10 days');
    expect(refusalIn(await bot.run('runin plan', { measure: 'h' })).code).toBe('not-now');
  });

  it('refuses what is above the engine’s limit, or counted otherwise than the plan', async () => {
    const bot = await begun();
    expect(refusalIn(await bot.run('runin ceiling', { at: '500 km', speed: '9000 rpm' })).code).toBe(
      'out-of-range',
    );
    expect(refusalIn(await bot.run('runin ceiling', { at: '5 h', speed: '5000 rpm' })).message).toContain(
      'are counted in km',
    );
  });
});
