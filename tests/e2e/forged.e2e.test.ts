import { describe, expect, it } from 'vitest';
import { type CrewOptions, crewAtWork, messageOf } from '../support/crew.ts';
import { forgedMessage, registerStranger } from '../support/forged-message.ts';
import { tableState } from '../support/table-state.ts';

/** Two builds with an order each, and a way to press what no message of the bot's carries. */
async function twoBuilds(options: CrewOptions = {}) {
  const crew = await crewAtWork({ channels: ['coupe', 'saloon'], ...options });
  const [coupe = '', saloon = ''] = crew.channel.channels.map(({ id }) => id);
  await crew.type('/order place what:"head gasket" supplier:"Norvale Gaskets" due:"9 Dec"', {
    channelId: coupe,
  });
  await crew.type('/order place what:"oil cooler" supplier:"Norvale Gaskets" due:"9 Dec"', {
    channelId: saloon,
  });
  const before = JSON.stringify(tableState(crew.file));
  return {
    ...crew,
    coupe,
    saloon,
    async pressForged(customId: string, as = 'Ada') {
      const message = await forgedMessage(crew.channel, coupe, [customId]);
      return crew.press(message, '0', { as });
    },
    expectUnchanged: () => expect(JSON.stringify(tableState(crew.file))).toBe(before),
  };
}

describe('a press of something no button of ours carries', () => {
  it.each([
    ['an order that is not there', 'order/arrived?order=999', 'There is no order #999 in this build.'],
    ['another channel’s order', 'order/arrived?order=2', 'There is no order #2 in this build.'],
    ['another channel’s order, to be dated', 'order/date?order=2', 'There is no order #2 in this build.'],
    ['a number that is none', 'order/arrived?order=1%20OR%201=1', 'No order here is called "1 OR 1=1".'],
    ['no order at all', 'order/arrived', 'order:'],
    ['a form’s end without its form', 'order/partly-done?order=1', 'Nothing was changed.'],
    ['a quantity below zero', 'order/partly-done?order=1&quantity=-1&condition=good', 'Nothing was changed.'],
    ['an outcome that is none', 'order/settle-done?order=1&outcome=sold', 'Nothing was changed.'],
    ['an action that is none', 'order/destroy?order=1', 'older version of this bot. Nothing was changed.'],
    ['a command that is none', 'weigh/now', 'older version of this bot. Nothing was changed.'],
    [
      'an inherited name for an action',
      'order/constructor',
      'older version of this bot. Nothing was changed.',
    ],
    ['garbage', '\u0000%%%??//', 'older version of this bot. Nothing was changed.'],
    ['a hundred characters of it', '?'.repeat(100), 'older version of this bot. Nothing was changed.'],
    ['a change that is not there', 'undo/this?change=999', 'there is no change #999'],
    ['a change that is no number', 'undo/this?change=all', 'Nothing was changed.'],
    ['a question that was never put', 'draft/choose?id=999&choice=0', 'That question is gone.'],
    ['a question that is no number', 'draft/choose?id=x&choice=0', 'That question is gone.'],
  ])('%s is refused in private', async (_what, customId, problem) => {
    await using crew = await twoBuilds();
    const pressed = await crew.pressForged(customId);
    expect(pressed.outcome).toMatchObject({ kind: 'answered', private: true });
    expect(pressed.text).toContain(problem);
    crew.expectUnchanged();
  });

  it('somebody else’s change is not taken back by a button carrying its number', async () => {
    await using crew = await twoBuilds();
    const pressed = await crew.pressForged('undo/this?change=1', 'Bram');
    expect(pressed.text).toContain("is Ada's to undo.");
    crew.expectUnchanged();
  });

  it('somebody else’s question is not answered', async () => {
    await using crew = await twoBuilds();
    const asked = await crew.type('/order date order:1 due:2026-12-01');
    expect(messageOf(asked)).toBeDefined();
    const pressed = await crew.pressForged('draft/choose?id=1&choice=0', 'Bram');
    expect(pressed.text).toContain('That question was put to somebody else.');
    crew.expectUnchanged();
  });

  it('a reading that the question did not offer is not taken', async () => {
    await using crew = await twoBuilds();
    await crew.type('/order date order:1 due:2026-12-01');
    for (const choice of ['7', '-1', '__proto__']) {
      const pressed = await crew.pressForged(`draft/choose?id=1&choice=${choice}`);
      expect(pressed.result?.ok).toBe(false);
    }
    crew.expectUnchanged();
  });

  it('a notice of another build shows nothing of it', async () => {
    await using crew = await twoBuilds();
    crew.at('2026-12-14T08:30');
    await crew.tick();
    const pressed = await crew.pressForged('order/chased?order=1&notice=2');
    expect(pressed.text).not.toContain('oil cooler');
  });
});

describe('a command of another version', () => {
  it('is answered with what to do, and nothing else', async () => {
    await using crew = await twoBuilds();
    await registerStranger(crew.channel, 'weigh');
    const typed = await crew.type('/weigh');
    expect(typed.outcome).toMatchObject({ kind: 'answered', private: true });
    expect(typed.text).toContain('older version of this bot. Nothing was changed. Reload the app');
    crew.expectUnchanged();
  });
});

describe('a message between one person and the bot', () => {
  it('answers sums, and is not offered what needs the record', async () => {
    await using crew = await twoBuilds();
    const channelId = crew.channel.hands('Ada').directChannelId();
    const refused = await crew.type('/order list', { channelId });
    expect(refused.text).toContain('There is no command /order.');
    const sum = await crew.type('/thread size:"21.9 x 1.5"', { channelId });
    expect(sum.text).toContain('M22');
  });
});
