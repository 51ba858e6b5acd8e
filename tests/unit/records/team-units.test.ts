import { describe, expect, it } from 'vitest';
import { BUILT_IN } from '../../../src/calc/units/own-units.ts';
import { type CrewBot, cardIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';

const unitsOf = (bot: CrewBot) => bot.teams.at(TEAM).record.settings.units();

describe('what a crew counts in', () => {
  it('is the built-in choice until it says otherwise', async () => {
    const bot = await openCrewBot();
    expect(unitsOf(bot)).toEqual(BUILT_IN);
    const { facts, data } = cardIn(await bot.run('team'));
    expect(facts).toContainEqual(['Answers in', 'bar, N·m, °C, mm, L, cc/min, hp, km']);
    expect(data['units']).toEqual(BUILT_IN);
  });

  it('is chosen all at once, or each for itself', async () => {
    const bot = await openCrewBot();
    await bot.run('team', { units: 'British' });
    expect(unitsOf(bot)).toEqual({ ...BUILT_IN, pressure: 'psi', torque: 'lbf.ft', distance: 'mi' });
    await bot.run('team', { torque: 'N·m', volume: 'imp pt' });
    expect(unitsOf(bot)).toEqual({ ...BUILT_IN, pressure: 'psi', volume: 'impPt', distance: 'mi' });
    await bot.run('team', { units: 'metric', power: 'PS' });
    expect(unitsOf(bot)).toEqual({ ...BUILT_IN, power: 'PS' });
  });

  it('stands in the history, and can be undone', async () => {
    const bot = await openCrewBot();
    await bot.run('team', { units: 'US' });
    const undone = cardIn(await bot.run('undo'));
    expect(undone.result).toBe('Undone: team set to answers in psi, lbf·ft, °F, in, US qt, lb/h, hp, mi');
    expect(unitsOf(bot)).toEqual(BUILT_IN);
    expect(bot.teams.at(TEAM).ledger.audit()).toEqual([]);
  });

  it('changes nothing, and says nothing was changed, when it is so already', async () => {
    const bot = await openCrewBot();
    expect(cardIn(await bot.run('team', { pressure: 'bar' })).buttons).toEqual([]);
  });

  it('is one of the choices there are', async () => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('team', { pressure: 'atm' })).message).toContain(
      'must be one of bar, psi, kPa',
    );
    expect(unitsOf(bot)).toEqual(BUILT_IN);
  });
});
