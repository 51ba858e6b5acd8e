import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, browserPath, startBrowser, visit } from '../support/browser.ts';
import { demoAtWork } from '../support/demo-at-work.ts';

/** Types a line and sends it, whatever is suggested meanwhile. */
async function send(page: Page, typed: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Write to the crew' }).fill(typed);
  await page.getByRole('button', { name: 'Send', exact: true }).click();
}

/** Waits for words in the book itself, which are announced as well. */
const shown = (page: Page, words: string) => page.locator('#book').getByText(words).first().waitFor();

const results = (page: Page) => page.locator('.card .result');

describe.skipIf(browserPath === undefined)('a line without a slash, in the browser', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  it('is answered where it was written, asked back with buttons, and left alone when it is talk', async () => {
    await using demo = await demoAtWork();
    await using page = await visit(browser, {
      url: demo.channel.pageUrl,
      as: 'Ada',
      width: 360,
      height: 640,
      scheme: 'light',
    });
    await results(page).first().waitFor();
    await send(page, '12.4 afr');
    await shown(page, 'λ 0.844, 16 % rich');
    await shown(page, 'On Ada: 12.4 afr');
    await send(page, 'see you at 8');
    await send(page, '12.4');
    await shown(page, '12.4 of what?');
    await page.getByRole('button', { name: '12.4 mm in inches' }).click();
    await shown(page, '12.4 mm = 0.4882 in');
    // the mention of the bot is read as what it is, and quoted by its name
    await send(page, '@Chargehand 85lbft');
    await shown(page, '85 lbf·ft = 115.2 N·m');
    await shown(page, 'On Ada: @Chargehand 85lbft');
    expect(await page.getByText('On Ada: see you at 8').count()).toBe(0);
    expect(await axeFindings(page)).toEqual([]);
    expect(demo.logged).toEqual([]);
    expect(demo.channel.refusals).toEqual([]);
  });
});
