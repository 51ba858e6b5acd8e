import { describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import type { Answer, Form } from '../../../src/core/reply.ts';
import { type CrewBot, cardIn, openCrewBot, TEAM } from '../../support/bot.ts';

const LONG = {
  old: '440 cc/min',
  new: '1000 cc/min',
  newfuel: '85% ethanol + 15% petrol',
  pulse: '2.5 ms',
  olddead: '8V 2.1ms, 10V 1.5ms, 12V 1.1ms, 14V 0.9ms',
  dead: '8V 2.5ms, 10V 1.8ms, 12V 1.3ms, 14V 1.1ms',
};

const changeOf = ({ buttons = [] }: Answer): string => {
  const button = buttons.find(({ label }) => label === 'Change what was assumed');
  return button === undefined ? '' : writeActionRef(button.does);
};

async function formOf(bot: CrewBot, ref: string, outside = false): Promise<Form> {
  const { reply } = await bot.press(ref, {}, { outside });
  if (reply.kind !== 'form') throw new Error(`no form came: ${reply.result}`);
  return reply;
}

describe('a sum too long for a button', () => {
  it('is kept for the crew, and changed by a button all the same', async () => {
    const bot = await openCrewBot();
    const answer = cardIn(await bot.run('injector change', LONG));
    const form = await formOf(bot, changeOf(answer));
    expect(form.fields.find(({ name }) => name === 'volts')?.value).toBe('14 V');
    // anybody of the crew may press it: the answer was for all
    const changed = cardIn(
      await bot.press(writeActionRef(form.does), { volts: '12 V', fuel: 'petrol' }, { as: 'Bram' }),
    );
    expect(changed.smallPrint).toContainEqual(expect.stringContaining('dead time 1.3 ms at 12 V'));
    expect(changed.data['newFuel']).toBe(answer.data['newFuel']);
    // and the changed one can be changed again
    expect(changeOf(changed)).not.toBe('');
  });

  it('says so when it is not kept any more', async () => {
    const bot = await openCrewBot();
    const ref = changeOf(cardIn(await bot.run('injector change', LONG)));
    bot.clock.set(bot.clock.nowMs() + 31 * 24 * 3_600_000);
    // the next one kept lets go of what is older than thirty days
    await bot.run('injector change', LONG);
    expect(cardIn(await bot.press(ref)).result).toContain('too old to be changed by a button');
    expect(bot.teams.at(TEAM).drafts.find(1)).toBeUndefined();
  });

  it('has no button where there is no crew to keep it for', async () => {
    const bot = await openCrewBot();
    expect(changeOf(cardIn(await bot.run('injector change', LONG, { outside: true })))).toBe('');
  });
});

describe('a sum that a button can carry', () => {
  const shorter = {
    old: '440cc',
    new: '1000cc',
    newfuel: 'E85',
    pulse: '2.5ms',
    olddead: '0.9ms',
    dead: '1.1ms',
  };

  it('is carried with its options by their first letters, in a private message too', async () => {
    const bot = await openCrewBot();
    const ref = changeOf(cardIn(await bot.run('injector change', shorter, { outside: true })));
    expect(ref).toBe(
      'again/form?_run=injector+change&old=440cc&new=1000cc&newf=E85&p=2.5ms&oldd=0.9ms&de=1.1ms',
    );
    const form = await formOf(bot, ref, true);
    const changed = cardIn(await bot.press(writeActionRef(form.does), { volts: '12 V' }, { outside: true }));
    expect(changed.data).toMatchObject({ newFuel: 'E85', oldCcMin: 440, newCcMin: 1000 });
  });

  it('is answered in the crew’s units still, when the form is sent with what stood in it', async () => {
    const bot = await openCrewBot();
    await bot.run('team', { units: 'US' });
    const before = cardIn(await bot.run('injector power', { flow: '42 lb/h', count: 4 }));
    const form = await formOf(bot, changeOf(before));
    const filled = Object.fromEntries(form.fields.map(({ name, value = '' }) => [name, value]));
    expect(filled['rated']).toBe('3 bar');
    const again = cardIn(await bot.press(writeActionRef(form.does), { ...filled, duty: '80 %' }));
    expect(again.smallPrint?.[0]).toContain('80 %');
    expect(again.working?.[0]).toContain('lb/h');
    const flow = { flow: '550 cc/min', to: '58 psi' };
    const other = await formOf(bot, changeOf(cardIn(await bot.run('injector flow', flow))));
    const values = Object.fromEntries(other.fields.map(({ name, value = '' }) => [name, value]));
    expect(cardIn(await bot.press(writeActionRef(other.does), values)).result).toContain('58 psi (4 bar)');
  });

  it('keeps what was typed into options that its form has no room for', async () => {
    const bot = await openCrewBot();
    const typed = { boost: '1 bar', temp: '30 °C', efficiency: '65 %', barometer: '980 mbar' };
    const before = cardIn(await bot.run('boost charge', typed));
    const form = await formOf(bot, changeOf(before));
    expect(form.fields).toHaveLength(5);
    const filled = Object.fromEntries(form.fields.map(({ name, value = '' }) => [name, value]));
    const again = cardIn(await bot.press(writeActionRef(form.does), filled));
    expect(again.data).toEqual(before.data);
  });

  it.each([
    'again/form?_run=boost+charge&x=1',
    'again/form?_run=boost+charge&b=1',
    'again/form?_run=nothing',
    'again/run?_kept=99',
  ])('is refused in words when a forged or old button says %s', async (ref) => {
    const bot = await openCrewBot();
    const { ok, reply } = await bot.press(ref);
    expect(ok).toBe(false);
    expect(reply.kind === 'answer' && reply.result).toMatch(/changed since|too old/);
    expect(bot.reported).toEqual([]);
  });
});
