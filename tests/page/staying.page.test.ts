import { ActionRowBuilder, ButtonBuilder, ButtonStyle, MessageFlags, TextDisplayBuilder } from 'discord.js';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openLocalChannel } from '../../src/channel/open.ts';
import { browserPath, startBrowser, visit } from '../support/browser.ts';
import { HandClock, testChannel } from '../support/channel.ts';
import { card, crewBot, TONE } from './crew-bot.ts';

// Scripts for the page are texts: the tests' own types know no browser.
const ofBook = async (page: Page, script: string) =>
  Number(
    await page.evaluate(
      `(({ scrollTop, scrollHeight, clientHeight }) => Math.round(${script}))(document.getElementById('book'))`,
    ),
  );
const scrolled = (page: Page) => ofBook(page, 'scrollTop');
const fromEnd = (page: Page) => ofBook(page, 'scrollHeight - scrollTop - clientHeight');
const scrollTo = (page: Page, top: number) =>
  page.evaluate(`document.getElementById('book').scrollTo(0, ${top})`);

describe.skipIf(browserPath === undefined)('keeping the place', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  it('asks who is writing, takes a new name and remembers it', async () => {
    await using channel = await testChannel();
    await using page = await visit(browser, { url: channel.pageUrl });
    await page.getByRole('dialog', { name: 'Who is writing?' }).waitFor();
    expect(await page.locator('.person').allInnerTexts()).toEqual(['Ad\nAda', 'Be\nBen']);
    await page.getByLabel('Somebody else: name').fill('Cleo Marsh');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'I am Cleo Marsh' }).waitFor();
    await page.reload();
    await page.getByRole('button', { name: 'I am Cleo Marsh' }).waitFor();
    await page.getByRole('textbox', { name: 'Write to the crew' }).fill('Here I am.');
    await page.keyboard.press('Enter');
    await page.locator('.written', { hasText: 'Here I am.' }).waitFor();
    expect(await page.locator('.margin .unseen').allInnerTexts()).toEqual(['Cleo Marsh:']);
  });

  it('says that the channel is away, comes back by itself and shows what was missed', async () => {
    const options = {
      guildName: 'The shed',
      channels: ['build'],
      crew: ['Ada', 'Ben'],
      clock: new HandClock(),
    };
    const first = await openLocalChannel(options);
    const port = Number(new URL(first.pageUrl).port);
    await using page = await visit(browser, { url: first.pageUrl, as: 'Ada' });
    await page.getByRole('button', { name: 'I am Ada' }).waitFor();
    await first.close();
    await page.getByText('The channel is away.').waitFor();
    await page.getByRole('textbox', { name: 'Write to the crew' }).fill('typed meanwhile');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').waitFor();
    expect(await page.getByRole('textbox', { name: 'Write to the crew' }).inputValue()).toBe(
      'typed meanwhile',
    );
    const second = await openLocalChannel({ ...options, port });
    await second.hands('Ben').type('said meanwhile');
    await page.locator('.written', { hasText: 'said meanwhile' }).waitFor();
    expect(await page.getByText('The channel is away.').count()).toBe(0);
    await page.getByRole('textbox', { name: 'Write to the crew' }).press('Enter');
    await page.locator('.written', { hasText: 'typed meanwhile' }).waitFor();
    await second.close();
  });

  it('follows the newest entry unless the reader has scrolled up, and then offers the way back', async () => {
    await using channel = await testChannel();
    const ben = channel.hands('Ben');
    for (let line = 1; line <= 30; line += 1) await ben.type(`Line ${line}`);
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByText('Line 30', { exact: true }).waitFor();
    expect(await fromEnd(page)).toBe(0);
    await ben.type('Line 31');
    await page.getByText('Line 31', { exact: true }).waitFor();
    expect(await fromEnd(page)).toBe(0);
    await scrollTo(page, 300);
    await page.waitForFunction("document.getElementById('book').scrollTop === 300");
    await ben.type('Line 32');
    const back = page.getByRole('button', { name: 'New entries' });
    await back.waitFor();
    expect(await scrolled(page)).toBe(300);
    await back.click();
    expect(await fromEnd(page)).toBe(0);
    expect(await back.count()).toBe(0);
  });

  it('loads earlier entries on the way up without moving what is being read', async () => {
    await using channel = await testChannel();
    const ben = channel.hands('Ben');
    for (let line = 1; line <= 90; line += 1) await ben.type(`Line ${line}`);
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByText('Line 90', { exact: true }).waitFor();
    expect(await page.locator('.entry').count()).toBe(50);
    await scrollTo(page, 0);
    await page.getByText('Line 1', { exact: true }).waitFor({ state: 'attached' });
    expect(await page.locator('.entry').count()).toBe(90);
    expect(await scrolled(page)).toBeGreaterThan(500);
    expect(await page.getByRole('button', { name: 'Earlier entries' }).count()).toBe(0);
    const order = await page.locator('.entry .written').allInnerTexts();
    expect(order).toEqual(Array.from({ length: 90 }, (_, index) => `Line ${index + 1}`));
  });

  it('leaves no gap behind when an entry further back is changed', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    const first = await bot.place.send('Line 0');
    for (let line = 1; line <= 60; line += 1) await channel.hands('Ben').type(`Line ${line}`);
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByText('Line 60', { exact: true }).waitFor();
    await first.edit('Line 0, changed');
    await channel.hands('Ben').type('Line 61');
    await page.getByText('Line 61', { exact: true }).waitFor();
    expect(await page.locator('.entry').count()).toBe(51);
    await scrollTo(page, 0);
    await page.locator('.entry', { hasText: 'Line 0, changed' }).waitFor({ state: 'attached' });
    expect(await page.locator('.entry').count()).toBe(62);
  });

  it('draws a rule between days and keeps one hand’s entries together', async () => {
    const clock = new HandClock(Date.UTC(2026, 11, 20, 20, 0));
    await using channel = await testChannel({ clock });
    await channel.hands('Ben').type('Sunday');
    await channel.hands('Ben').type('Still Sunday');
    clock.moveMs(12 * 3_600_000);
    await channel.hands('Ben').type('Monday');
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByText('Still Sunday').waitFor();
    // 20 December 2026 is a Sunday (ISO 8601 calendar).
    const days = await page.getByRole('heading', { level: 2 }).allInnerTexts();
    expect(days.map((day) => day.replace(/ \d{4}$/u, ''))).toEqual([
      'Sunday 20 December',
      'Monday 21 December',
    ]);
    expect(await page.locator('.entry[data-again]').count()).toBe(1);
  });

  it('attaches a file and takes back one that is too large', async () => {
    await using channel = await testChannel({ uploadLimitBytes: 1_048_576 });
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    const choosing = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Attach' }).click();
    const files = [
      { name: 'bore.txt', mimeType: 'text/plain', buffer: Buffer.from('86.02') },
      { name: 'film.bin', mimeType: 'application/octet-stream', buffer: Buffer.alloc(1_200_000) },
    ];
    await (await choosing).setFiles(files);
    expect(await page.getByRole('alert').textContent()).toBe(
      'film.bin is 1.1 MB and was not attached. The channel takes up to 1 MB.',
    );
    expect(await page.locator('.files li').count()).toBe(1);
    await page.getByRole('button', { name: 'Send' }).click();
    await page.getByRole('link', { name: 'File: bore.txt' }).waitFor();
    const [first] = channel.channels;
    expect(channel.messages(first?.id ?? '')[0]?.attachments[0]?.filename).toBe('bore.txt');
  });

  it('takes a file that is dropped on the page', async () => {
    await using channel = await testChannel();
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByRole('button', { name: 'I am Ada' }).waitFor();
    await page.evaluate(`{
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File(['86.02'], 'dropped.txt'));
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    }`);
    expect(await page.locator('.files bdi').allInnerTexts()).toEqual(['dropped.txt']);
    await page.getByRole('button', { name: 'Take off dropped.txt' }).click();
    expect(await page.locator('.files li').count()).toBe(0);
  });

  it('shows in the head how the build stands, from what is pinned before what the bot last said', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    const flags = MessageFlags.IsComponentsV2;
    const first = await bot.place.send({
      components: [card(TONE.soon, '### Stage 2', '## Block is bored')],
      flags,
    });
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    const standing = page.locator('header .standing');
    await standing.waitFor();
    expect(await standing.textContent()).toBe('Block is bored Stage 2');
    expect(await standing.getAttribute('data-tone')).toBe('soon');
    const morning = await bot.place.send({
      components: [card(TONE.late, '### Morning', '## 2 late, 1 due today')],
      flags,
    });
    const said = (words: string) => page.locator('header .standing', { hasText: words });
    await said('2 late, 1 due today').waitFor();
    await morning.edit({ components: [card(TONE.done, '### Morning', '## All dealt with')], flags });
    await said('All dealt with').waitFor();
    expect(await standing.getAttribute('data-tone')).toBe('done');
    // An answer to somebody is no notice.
    await channel.hands('Ada').type('/order');
    await page.getByText('Late by 4').first().waitFor();
    expect(await standing.textContent()).toBe('All dealt with Morning');
    await first.pin();
    await said('Block is bored').waitFor();
    await first.unpin();
    await said('All dealt with').waitFor();
    await morning.delete();
    await said('Block is bored').waitFor();
    await first.delete();
    await standing.waitFor({ state: 'detached' });
  });

  it('goes to the entry that says how the build stands, however far back it is', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    const flags = MessageFlags.IsComponentsV2;
    await bot.place.send({ components: [card(TONE.late, '### Morning', '## 2 late, 1 due today')], flags });
    for (let line = 1; line <= 120; line += 1) await channel.hands('Ben').type(`Line ${line}`);
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByText('Line 120', { exact: true }).waitFor();
    expect(await page.locator('.card').count()).toBe(0);
    await page.locator('header .standing').click();
    await page.locator('.card .result', { hasText: '2 late' }).waitFor();
    await expect.poll(() => scrolled(page)).toBeLessThan(50);
    expect(await page.locator('.entry').count()).toBe(121);
  });

  it('opens a tall entry at its beginning, and takes nobody away from it', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    const lines = (from: number) => Array.from({ length: 35 }, (_, index) => `Line ${from + index}`);
    const flags = MessageFlags.IsComponentsV2;
    const tall = (subject: string) =>
      bot.place.send({ components: [card(TONE.late, `### ${subject}`, ...lines(1))], flags });
    for (const line of lines(1)) await channel.hands('Ben').type(line);
    await tall('Monday');
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    const top = () =>
      page.evaluate(`[...document.querySelectorAll('.entry')].at(-1).getBoundingClientRect().top
        - document.getElementById('book').getBoundingClientRect().top`);
    await page.locator('.tab', { hasText: 'Monday' }).waitFor();
    await expect.poll(() => top()).toBe(0);
    // It is not read yet: another entry is only announced.
    await channel.hands('Ben').type('Good morning');
    await page.getByRole('button', { name: 'New entries' }).click();
    expect(await fromEnd(page)).toBe(0);
    // At the end, a tall one is shown from its beginning.
    await tall('Tuesday');
    await page.locator('.tab', { hasText: 'Tuesday' }).waitFor();
    await expect.poll(() => top()).toBe(0);
    // What one sends oneself is followed.
    await page.getByRole('textbox', { name: 'Write to the crew' }).fill('On it.');
    await page.keyboard.press('Enter');
    await page.getByText('On it.', { exact: true }).waitFor();
    await expect.poll(() => fromEnd(page)).toBe(0);
  });

  it('leaves what was pressed under the thumb when its card is drawn anew', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    const item = (name: string, ...ids: readonly string[]) => {
      const row = new ActionRowBuilder<ButtonBuilder>().addComponents(
        ids.map((id) =>
          new ButtonBuilder().setCustomId(id).setLabel(`Press ${id}`).setStyle(ButtonStyle.Secondary),
        ),
      );
      return { text: `**${name}**\nis awaited`, row };
    };
    const list = (result: string, items: readonly ReturnType<typeof item>[]) => {
      const container = card(TONE.late, '### Morning', `## ${result}`);
      for (const { text, row } of items) {
        container.addTextDisplayComponents(new TextDisplayBuilder().setContent(text));
        if (row.components.length > 0) container.addActionRowComponents(row);
      }
      return { components: [container], flags: MessageFlags.IsComponentsV2 } as const;
    };
    const all = Array.from({ length: 8 }, (_, index) => item(`Part ${index}`, `a${index}`, `b${index}`));
    for (let line = 1; line <= 10; line += 1) await channel.hands('Ben').type(`Line ${line}`);
    const entry = await bot.place.send(list('8 late, 1 due today, 1 to sort out', all));
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    const name = page.getByText('Part 3', { exact: true });
    await page.getByRole('button', { name: 'Press b3' }).click();
    await expect.poll(() => bot.presses).toEqual(['b3']);
    const before = (await name.boundingBox())?.y;
    await entry.edit(list('7 late', all.with(3, item('Part 3')).with(1, item('Part 1'))));
    await page.locator('.card .result', { hasText: '7 late' }).waitFor();
    expect((await name.boundingBox())?.y).toBeCloseTo(before ?? 0, 0);
  });

  it('goes from one channel to another', async () => {
    await using channel = await testChannel({ channels: ['build', 'spares'] });
    const [, spares] = channel.channels;
    await channel.hands('Ben').type('On the build');
    await channel.hands('Ben').type('Among the spares', spares === undefined ? {} : { channelId: spares.id });
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByText('On the build').waitFor();
    await page.getByLabel('Channel').selectOption('spares');
    await page.getByText('Among the spares').waitFor();
    expect(await page.getByText('On the build').count()).toBe(0);
    await channel.hands('Ben').type('Still the build');
    await channel.hands('Ben').type('More spares', spares === undefined ? {} : { channelId: spares.id });
    await page.getByText('More spares').first().waitFor();
    expect(await page.getByText('Still the build').count()).toBe(0);
  });

  it('says when the bot is not there', async () => {
    await using channel = await testChannel();
    const bot = await crewBot(channel);
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByRole('button', { name: 'I am Ada' }).waitFor();
    expect(await page.getByText('is not here at the moment').count()).toBe(0);
    await bot.destroy();
    await page.getByText('Chargehand is not here at the moment').waitFor();
  });
});
