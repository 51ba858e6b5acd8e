import { describe, expect, it } from 'vitest';
import { workingDays } from '../../../src/calendar/working-days.ts';
import type { Post } from '../../../src/core/post.ts';
import type { Answer } from '../../../src/core/reply.ts';
import { instantOf } from '../../../src/core/time.ts';
import { NOTICE_ARG } from '../../../src/records/orders/order-buttons.ts';
import { morningAnswer } from '../../../src/reminders/morning-answer.ts';
import { Notice } from '../../../src/reminders/notice.ts';
import type { RemarkSaid } from '../../../src/reminders/remark.ts';
import { type CrewBot, cardIn, openCrewBot } from '../../support/bot.ts';
import { buttonsOf, pressed } from '../../support/pressed.ts';
import { anOrder, TODAY } from '../../support/record.ts';

const posted: Post = {
  send: () => Promise.resolve({ messageId: '1' }),
  find: () => Promise.resolve(undefined),
  edit: () => Promise.resolve(),
};

async function morningOf(bot: CrewBot, day: string): Promise<Answer | undefined> {
  bot.clock.set(instantOf(day, '08:31', 'Europe/London'));
  const sent = await bot.teams.tick(bot.clock.nowMs(), posted);
  return sent[0]?.answer;
}

/** A hose ordered for the drain that is blanked until it comes. */
async function blanked(): Promise<CrewBot> {
  const bot = await openCrewBot();
  await bot.run('order place', { what: 'turbo drain hose', supplier: 'Norvale', due: '2026-11-30' });
  await bot.run('temporary put', {
    what: 'blanked the turbo drain until the hose comes, undo before first start',
  });
  return bot;
}

describe('a morning message for something temporary', () => {
  it('comes when its part has come, every morning, and says so', async () => {
    const bot = await blanked();
    expect(await morningOf(bot, '2026-11-24')).toBeUndefined();
    await bot.run('order arrived', { order: 'hose' });
    const morning = await morningOf(bot, '2026-11-25');
    expect(morning).toMatchObject({ result: '1 temporary measure can be undone', tone: 'soon', notify: [] });
    expect(morning?.items).toMatchObject([
      {
        text: 'Temporary: blanked the turbo drain',
        note: 'Turbo drain hose is here. In place since Mon 23 Nov. It must be undone before First start.',
      },
    ]);
    expect(morning?.data['remarks']).toEqual([{ kind: 'measure', id: 1 }]);
    expect(await morningOf(bot, '2026-11-26')).toBeDefined();
  });

  it('is redrawn in its place by its button, and is silent afterwards', async () => {
    const bot = await blanked();
    await bot.run('order arrived', { order: 'hose' });
    const morning = await morningOf(bot, '2026-11-25');
    if (morning === undefined) throw new Error('no morning message');
    const card = cardIn(await pressed(bot, morning, 'Undone', {}, { as: 'Bram' }));
    expect(card).toMatchObject({
      inPlace: true,
      subject: 'Morning, Wed 25 Nov',
      result: 'All of this is dealt with',
      tone: 'done',
    });
    expect(card.items?.[0]).toMatchObject({ note: 'Undone, noted by Bram.', tone: 'done' });
    expect(await morningOf(bot, '2026-11-26')).toBeUndefined();
  });

  it('never closes it by itself', async () => {
    const bot = await blanked();
    await bot.run('order arrived', { order: 'hose' });
    await morningOf(bot, '2026-11-25');
    expect(cardIn(await bot.run('temporary list')).data['inPlace']).toBe(1);
  });

  it('finds the part by its words when it was ordered only afterwards', async () => {
    const bot = await openCrewBot();
    await bot.run('temporary put', { what: 'capped the return until the catch tank comes' });
    await bot.run('order place', { what: 'catch tank', supplier: 'Norvale', due: '2026-11-30' });
    await bot.run('order arrived', { order: 'catch tank' });
    expect((await morningOf(bot, '2026-11-25'))?.items?.[0]?.note).toContain('Catch tank is here');
  });

  it('comes when the job is done that undoes it', async () => {
    const bot = await openCrewBot();
    await bot.run('job add', { name: 'weld the sump' });
    await bot.run('temporary put', { what: 'tray under the sump until weld the sump is done' });
    expect(await morningOf(bot, '2026-11-24')).toBeUndefined();
    await bot.run('job done', { job: 'weld the sump' });
    expect((await morningOf(bot, '2026-11-25'))?.items?.[0]?.note).toContain('“weld the sump” is done');
  });

  it('is not sent when it was undone between deciding and sending', async () => {
    const bot = await blanked();
    await bot.run('order arrived', { order: 'hose' });
    bot.clock.set(instantOf('2026-11-25', '08:31', 'Europe/London'));
    const failing: Post = { ...posted, send: () => Promise.reject(new Error('down')) };
    await bot.teams.tick(bot.clock.nowMs(), failing);
    await bot.run('temporary undone', { measure: 'drain' });
    expect(await bot.teams.tick(bot.clock.nowMs(), posted)).toEqual([]);
  });

  it('leaves a forged press on another message a card of its own', async () => {
    const bot = await blanked();
    await bot.run('temporary put', { what: 'fan off' });
    await bot.run('order arrived', { order: 'hose' });
    const morning = await morningOf(bot, '2026-11-25');
    const notice = buttonsOf(morning ?? cardIn(await bot.run('temporary list')))[0]?.does.args[NOTICE_ARG];
    expect(notice).toBe(1);
    const card = cardIn(await bot.press(`temporary/undone?measure=2&${NOTICE_ARG}=${notice}`));
    expect(card.inPlace).toBeUndefined();
    expect(card.result).toBe('fan off');
  });
});

describe('the notice of a morning', () => {
  it('is read as it was kept before there were remarks', () => {
    const old = { kind: 'morning', buildId: 1, day: TODAY, orderIds: [3] };
    expect(Notice.parse(old)).toEqual(old);
  });
});

describe('a morning with orders and remarks', () => {
  const said = (count: number): readonly RemarkSaid[] =>
    Array.from({ length: count }, (_, at) => ({ open: true, item: { text: `remark ${at + 1}` } }));
  const orders = [1, 2, 3, 4].map((id) => anOrder({ id, what: `part ${id}` }));
  const view = (count: number) =>
    morningAnswer({
      buildName: 'Coupe',
      notice: { kind: 'morning', buildId: 1, day: TODAY, orderIds: [1, 2, 3, 4] },
      noticeId: 9,
      orders,
      daysOf: () => workingDays('GB/ENG'),
      remarks: { said: said(count), headlines: count === 0 ? [] : [`${count} of them`] },
    });

  it('gives the orders one place less, and the last of them goes into the menu', () => {
    expect(view(0).items).toHaveLength(4);
    const both = view(2);
    expect(both.result).toBe('4 late, 2 of them');
    expect(both.items?.map(({ text }) => text.replace(/^#\d /, ''))).toEqual([
      'part 1',
      'part 2',
      'part 3',
      'remark 1',
      'remark 2',
    ]);
    expect(both.menu?.choices.map(({ value }) => value)).toEqual(['4']);
  });

  it('names what has no room, so that nothing is left out in silence', () => {
    expect(view(5).items?.at(-1)).toEqual({ text: 'And 2 more', note: 'remark 4; remark 5' });
  });
});
