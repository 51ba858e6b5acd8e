import { MessageFlags } from 'discord.js';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { browserPath, startBrowser, visit } from '../support/browser.ts';
import { testChannel } from '../support/channel.ts';
import { card, crewBot, TONE } from './crew-bot.ts';

/** Texts that try to be more than text. Each has to stand on the page as it was typed. */
const LITERAL = [
  '<img src=x onerror="window.harm = 1">',
  '<script>window.harm = 2</script>',
  '[press me](javascript:window.harm=3)',
  '[press me](data:text/html,<script>window.harm=4</script>)',
  '<a href="https://example.org" onclick="window.harm=5">x</a>',
  '<style>body { display: none }</style>',
  '</p></li></ol><h1>Not ours</h1>',
  '&lt;b&gt; &amp; &#x202e;',
  '<iframe srcdoc="<script>parent.harm=6</script>"></iframe>',
  '| a | b |',
  '#### four',
] as const;

describe.skipIf(browserPath === undefined)('hostile text', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  it.each(LITERAL)('stays text: %s', async (text) => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await channel.hands('Ada').type(text);
    await bot.place.send({
      components: [card(TONE.plain, '### Card', text)],
      flags: MessageFlags.IsComponentsV2,
    });
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.locator('.card').waitFor();
    const written = await page.locator('.entry .written').allInnerTexts();
    expect(written).toHaveLength(2);
    for (const words of written)
      expect(words.replaceAll('\u00a0', ' ')).toContain(text.replaceAll('\u00a0', ' '));
    expect(await page.evaluate('typeof window.harm')).toBe('undefined');
    expect(await page.locator('.entry').locator('img, script, style, iframe, a, h1').count()).toBe(0);
  });

  it('follows links to the web only, cut off from this page', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await channel.hands('Ada').type('[the drawing](https://example.org/a) and <https://example.org/b>');
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.locator('.entry a').first().waitFor();
    const found = await page.evaluate(
      `[...document.querySelectorAll('.entry a')].map((link) => [link.getAttribute('href'), link.rel])`,
    );
    expect(found).toEqual([
      ['https://example.org/a', 'noopener noreferrer nofollow'],
      ['https://example.org/b', 'noopener noreferrer nofollow'],
    ]);
    expect(bot.faults).toEqual([]);
  });

  it('keeps a name and a text written right to left from reordering their surroundings', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await channel.hands('Ada').type('\u202eneves sa nwod edispu');
    await channel.hands('Ada').type('after it');
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByText('after it').waitFor();
    const paragraphs = await page.evaluate(
      `[...document.querySelectorAll('.written p')].map((paragraph) => paragraph.dir)`,
    );
    expect(paragraphs).toEqual(['auto', 'auto']);
    expect(await page.locator('.margin bdi').count()).toBe(2);
    expect(bot.faults).toEqual([]);
  });

  it('shows a picture of the channel, and only links to one from elsewhere', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    const png = Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
      'base64',
    );
    await channel
      .hands('Ada')
      .type('the bore', { files: [{ name: 'bore.png', type: 'image/png', bytes: png }] });
    await bot.place.send({
      embeds: [{ title: 'Elsewhere', image: { url: 'https://example.org/pixel.png' } }],
    });
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByRole('img', { name: 'bore.png' }).waitFor();
    expect(await page.locator('.entry img').count()).toBe(1);
    expect(await page.getByRole('link', { name: 'Picture at example.org' }).count()).toBe(1);
  });
});
