import { MessageFlags } from 'discord.js';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, browserPath, startBrowser, visit } from '../support/browser.ts';
import { testChannel } from '../support/channel.ts';
import { type CrewBot, card, crewBot, orderCard, TONE, threadCard } from './crew-bot.ts';
import { sidewaysPx, tooSmall } from './reach.ts';

/** Widths of phones in a fitter's pocket, and of a bench's screen. */
const SIZES = [
  [360, 640],
  [390, 844],
  [1280, 900],
] as const;

/** Fills the sheet with one of everything. */
async function fill(bot: CrewBot): Promise<void> {
  const flags = MessageFlags.IsComponentsV2;
  await bot.place.send({ components: [threadCard('11/16 in 16 TPI')], flags });
  await bot.place.send({ components: [orderCard()], flags });
  await bot.place.send({
    components: [card(TONE.soon, '### Stage', '## Oil pressure 3.2 bar', '-# Gauge, 21 °C.')],
    flags,
  });
  await bot.place.send({ components: [card(TONE.done, '### Order #9', '## Arrived')], flags });
  await bot.place.send({
    embeds: [{ title: 'An embed', description: 'From **another** bot', footer: { text: 'foot' } }],
  });
}

describe.skipIf(browserPath === undefined)('within reach', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  it.each(['light', 'dark'] as const)('has nothing that axe finds wrong, in %s', async (scheme) => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await fill(bot);
    await using page = await visit(browser, {
      url: channel.pageUrl,
      as: 'Ada',
      width: 360,
      height: 640,
      scheme,
    });
    await page.locator('.card').nth(4).waitFor();
    // Tall enough that nothing is scrolled under the head: axe does not measure what is half covered.
    await page.setViewportSize({ width: 360, height: 3000 });
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('textbox', { name: 'Write to the crew' }).fill('/');
    await page.getByRole('option').first().waitFor();
    await page.keyboard.press('ArrowDown');
    expect(await axeFindings(page, '#foot')).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Only some came' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Send' }).click();
    expect(await axeFindings(page, 'dialog')).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'I am Ada' }).click();
    expect(await axeFindings(page, 'dialog')).toEqual([]);
  });

  it.each(SIZES)(
    'gives everything to press 44 px, and nothing scrolls sideways, at %i × %i',
    async (width, height) => {
      await using channel = await testChannel({ channels: ['build', 'spares'] });
      await using bot = await crewBot(channel);
      await fill(bot);
      await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada', width, height });
      await page.locator('.card').nth(4).waitFor();
      await page.getByRole('textbox', { name: 'Write to the crew' }).fill('/thread size:many');
      await page.getByRole('option', { name: /number 25/u }).waitFor({ state: 'attached' });
      expect(await tooSmall(page)).toEqual([]);
      expect(await sidewaysPx(page)).toBe(0);
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Only some came' }).click();
      await page.getByRole('dialog').waitFor();
      expect(await tooSmall(page)).toEqual([]);
      expect(await sidewaysPx(page)).toBe(0);
    },
  );

  it('stands up to 2,000 characters, with and without a place to break them', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    const [solid, words] = ['x'.repeat(2000), 'gasket '.repeat(285)];
    await channel.hands('Ada').type(solid);
    await channel.hands('Ada').type(words);
    const flags = MessageFlags.IsComponentsV2;
    await bot.place.send({
      components: [card(TONE.late, `### ${'y'.repeat(200)}`, `## ${'z'.repeat(900)}`, solid)],
      flags,
    });
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada', width: 360, height: 640 });
    await page.locator('.card').waitFor();
    expect(await sidewaysPx(page)).toBe(0);
    await page.getByRole('textbox', { name: 'Write to the crew' }).fill(solid);
    expect(await sidewaysPx(page)).toBe(0);
    expect((await page.locator('footer').boundingBox())?.height).toBeLessThan(320);
    expect(bot.faults).toEqual([]);
  });

  it('holds a list of forty, which scrolls in itself', async () => {
    const crew = Array.from({ length: 40 }, (_, index) => `Hand number ${index + 1} of the crew`);
    await using channel = await testChannel({ crew });
    await using page = await visit(browser, { url: channel.pageUrl, width: 360, height: 640 });
    const rows = page.locator('dialog .person');
    await rows.nth(39).waitFor();
    expect((await page.locator('dialog').boundingBox())?.height).toBeLessThanOrEqual(640);
    expect(await sidewaysPx(page)).toBe(0);
    await rows.nth(39).tap();
    await page.getByRole('button', { name: 'I am Hand number 40 of the crew' }).waitFor();
    expect(await sidewaysPx(page)).toBe(0);
    expect(await tooSmall(page)).toEqual([]);
  });

  it('shows no text smaller than 14 px and nothing in capitals by style', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await fill(bot);
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada', width: 360, height: 640 });
    await page.locator('.card').nth(4).waitFor();
    const styles = await page.evaluate(`[...document.body.querySelectorAll('*')].map((one) => {
      const style = getComputedStyle(one);
      return style.fontSize + ' ' + style.textTransform;
    })`);
    const odd = (styles as readonly string[]).filter(
      (style) => Number.parseFloat(style) < 14 || style.includes('uppercase'),
    );
    expect(odd).toEqual([]);
  });
});
