import { MessageFlags } from 'discord.js';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { browserPath, startBrowser, visit } from '../support/browser.ts';
import { testChannel } from '../support/channel.ts';
import { card, crewBot, TONE } from './crew-bot.ts';

describe.skipIf(browserPath === undefined)('the day-book in the browser', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  it('shows the card of a typed command, under the line that asked for it', async () => {
    await using channel = await testChannel({ guildName: 'Hill-climb car' });
    await using bot = await crewBot(channel);
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada', width: 360, height: 640 });
    await page.getByRole('textbox', { name: 'Write to the crew' }).fill('/thread 11/16 in 16 TPI');
    await page.keyboard.press('Enter');
    const entry = page.locator('.entry').filter({ has: page.locator('.card') });
    await entry.waitFor();
    expect(await entry.locator('.tab').textContent()).toBe('Thread');
    expect(await entry.locator('.result').textContent()).toBe('11/16\u00a0in 16\u00a0TPI');
    expect(await entry.locator('.asked').textContent()).toContain('/thread');
    expect(await entry.locator('.square').allInnerTexts()).toEqual(['Ad', 'Ch']);
    expect(await page.getByRole('textbox', { name: 'Write to the crew' }).inputValue()).toBe('');
    expect(await page.locator('h1').textContent()).toBe('Hill-climb car');
    expect(bot.faults).toEqual([]);
    expect(channel.unknownRequests).toEqual([]);
  });

  it('folds the working after three lines on a phone, and shows the rest on demand', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await channel.hands('Ada').type('/thread size:M18');
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    const working = page.locator('.clip').first();
    const more = page.getByRole('button', { name: 'Show the rest' });
    await more.waitFor();
    const folded = (await working.boundingBox())?.height ?? 0;
    expect(folded).toBe(72);
    await more.click();
    expect((await working.boundingBox())?.height).toBe(120);
    expect(await page.getByRole('button', { name: 'Show less' }).getAttribute('aria-expanded')).toBe('true');
    expect(bot.faults).toEqual([]);
  });

  it.each([
    [390, 24],
    [1280, 96],
  ])('folds small print after its first line on a phone alone: %i px wide', async (width, height) => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    const print = ['First', 'Second', 'Third', 'Fourth'].map((word) => `-# ${word} assumption`).join('\n');
    await bot.place.send({
      components: [card(TONE.plain, '### Thread', '## M18', '-# Certain.', print)],
      flags: MessageFlags.IsComponentsV2,
    });
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada', width, height: 844 });
    const clip = page.locator('.fold .clip');
    await clip.waitFor();
    expect((await clip.boundingBox())?.height).toBe(height);
    expect(await page.getByText('Certain.').isVisible()).toBe(true);
    expect(await page.getByRole('button', { name: 'Show the rest' }).count()).toBe(width < 500 ? 1 : 0);
    expect(bot.faults).toEqual([]);
  });

  it('completes a command by keyboard alone', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByRole('textbox', { name: 'Write to the crew' }).focus();
    await page.keyboard.type('/thr');
    await page.getByRole('option', { name: 'thread' }).first().waitFor();
    await page.keyboard.press('Tab');
    expect(await page.getByRole('textbox', { name: 'Write to the crew' }).inputValue()).toMatch(/^\/thread/u);
    await page.getByRole('textbox', { name: 'Write to the crew' }).fill('/thread size:7');
    await page.getByRole('option', { name: '7/8 in 14 TPI' }).waitFor();
    await page.keyboard.press('ArrowDown');
    const active = await page
      .getByRole('textbox', { name: 'Write to the crew' })
      .getAttribute('aria-activedescendant');
    expect(await page.locator(`#${active}`).getAttribute('aria-selected')).toBe('true');
    await page.keyboard.press('Enter');
    expect(await page.getByRole('textbox', { name: 'Write to the crew' }).inputValue()).toContain(
      '7/8 in 14 TPI',
    );
    await page.keyboard.press('Escape');
    await page.keyboard.press('Enter');
    await page.locator('.result', { hasText: '7/8' }).waitFor();
    expect(bot.faults).toEqual([]);
  });

  it('completes a command by tapping', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByRole('textbox', { name: 'Write to the crew' }).tap();
    await page.keyboard.type('/thread size:M');
    await page.getByRole('option', { name: 'M18 x 1.5' }).tap();
    expect(await page.getByRole('textbox', { name: 'Write to the crew' }).inputValue()).toContain(
      'M18 x 1.5',
    );
    await page.getByRole('button', { name: 'Send' }).tap();
    await page.locator('.result', { hasText: 'M18' }).waitFor();
    expect(bot.faults).toEqual([]);
  });

  it('offers things to try to whoever has typed nothing', async () => {
    await using channel = await testChannel({ starters: ['/order', '21.9 x 1.5'] });
    await using bot = await crewBot(channel);
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByRole('button', { name: 'Things to try' }).tap();
    expect(await page.getByRole('option').allInnerTexts()).toEqual(['/order', '21.9 x 1.5']);
    await page.getByRole('option', { name: '/order' }).tap();
    expect(await page.getByRole('textbox', { name: 'Write to the crew' }).inputValue()).toBe('/order');
    expect(bot.faults).toEqual([]);
  });

  it('gives a refused line back with the sentence of what is wrong, and keeps it over a reload', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByRole('textbox', { name: 'Write to the crew' }).fill('/thraed 22');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').waitFor();
    expect(await page.getByRole('alert').textContent()).toContain('thraed');
    expect(await page.getByRole('textbox', { name: 'Write to the crew' }).inputValue()).toBe('/thraed 22');
    await page.reload();
    expect(await page.getByRole('textbox', { name: 'Write to the crew' }).inputValue()).toBe('/thraed 22');
    expect(bot.faults).toEqual([]);
  });

  it('changes the card in place when its button is pressed, once however often it is pressed', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await channel.hands('Ada').type('/order');
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    const arrived = page.getByRole('button', { name: 'Arrived' });
    await arrived.dblclick();
    await page.locator('.result', { hasText: 'Arrived, all of it' }).waitFor();
    expect(await page.locator('.entry').count()).toBe(1);
    expect(await arrived.count()).toBe(0);
    expect(await page.locator('.card').getAttribute('data-tone')).toBe('done');
    expect(bot.presses).toEqual(['arrived']);
    expect(bot.faults).toEqual([]);
  });

  it('holds further presses back until the first is answered, and says so when none comes', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await channel.hands('Ada').type('/order');
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    const cancel = page.getByRole('button', { name: 'Cancel the order' });
    await cancel.click();
    expect(await cancel.getAttribute('aria-busy')).toBe('true');
    await page.getByRole('button', { name: 'Arrived' }).click();
    await expect.poll(() => bot.presses).toEqual(['cancel']);
    channel.clock.moveMs(3_000);
    await page.getByRole('alert').filter({ hasText: 'No answer within three seconds.' }).waitFor();
    expect(await cancel.getAttribute('aria-busy')).toBeNull();
    expect(bot.presses).toEqual(['cancel']);
  });

  it('shows what somebody else does as it happens, and says so to a screen reader', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.locator('#entries').waitFor({ state: 'attached' });
    await channel.hands('Ben').type('The sump is on.');
    await page.getByText('The sump is on.').first().waitFor();
    await page.locator('#announcer', { hasText: 'Ben: The sump is on.' }).waitFor({ state: 'attached' });
    expect(bot.faults).toEqual([]);
  });

  it('marks a private answer in words and puts it away', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await using other = await visit(browser, { url: channel.pageUrl, as: 'Ben' });
    await page.getByRole('textbox', { name: 'Write to the crew' }).fill('/aside');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Enter');
    await page.getByText('Only you see this.', { exact: true }).waitFor();
    expect(await other.locator('.card').count()).toBe(0);
    await page.getByRole('button', { name: 'Put away' }).click();
    expect(await page.locator('.entry').count()).toBe(0);
    await page.reload();
    await page.getByRole('button', { name: 'I am Ada' }).waitFor();
    expect(await page.locator('.entry').count()).toBe(0);
    expect(bot.faults).toEqual([]);
  });

  it('lets one be chosen from a list', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await channel.hands('Ada').type('/list');
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByRole('button', { name: 'Which order' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Order #17' }).click();
    await page.locator('.result', { hasText: 'Chosen: #17' }).waitFor();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(bot.faults).toEqual([]);
  });
});
