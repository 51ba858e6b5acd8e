import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { browserPath, startBrowser, visit } from '../support/browser.ts';
import { testChannel } from '../support/channel.ts';
import { crewBot } from './crew-bot.ts';

describe.skipIf(browserPath === undefined)('a form', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  it('is filled in by keyboard and sent', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await channel.hands('Ada').type('/order');
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByRole('button', { name: 'Only some came' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('dialog', { name: 'Only some came' }).waitFor();
    await page.keyboard.type('3');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    await page.getByLabel('How many came').press('Enter');
    await page.locator('.result', { hasText: '3 of 4 came' }).waitFor();
    expect(await page.locator('.small', { hasText: 'State: good' }).count()).toBe(1);
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(bot.faults).toEqual([]);
  });

  it('says beside the field what is missing, and sends nothing', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await channel.hands('Ada').type('/order');
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    await page.getByRole('button', { name: 'Only some came' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Send' }).click();
    const field = page.locator('.field').first();
    expect(await field.locator('.problem').textContent()).toBe('This one has to be filled in.');
    expect(await page.getByLabel('How many came').getAttribute('aria-invalid')).toBe('true');
    expect(await page.evaluate('document.activeElement.getAttribute("aria-invalid")')).toBe('true');
    expect(await page.locator('.entry').count()).toBe(1);
    expect(bot.faults).toEqual([]);
  });

  it('keeps what was typed when Esc closes it, and after a reload', async () => {
    await using channel = await testChannel();
    await using bot = await crewBot(channel);
    await channel.hands('Ada').type('/order');
    await using page = await visit(browser, { url: channel.pageUrl, as: 'Ada' });
    const press = page.getByRole('button', { name: 'Only some came' });
    await press.click();
    await page.getByLabel('Remark').fill('one is bent');
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.reload();
    await press.click();
    expect(await page.getByLabel('Remark').inputValue()).toBe('one is bent');
    expect(bot.faults).toEqual([]);
  });
});
