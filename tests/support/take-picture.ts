import { statSync } from 'node:fs';
import { startBrowser, visit } from './browser.ts';
import { demoAtWork } from './demo-at-work.ts';

/** Takes the picture of the page that the README shows: the demonstration on a phone, as Ada sees it in the morning. */
const FILE = new URL('../../docs/page.png', import.meta.url).pathname;

const browser = await startBrowser();
{
  await using demo = await demoAtWork();
  await using page = await visit(browser, {
    url: demo.channel.pageUrl,
    as: 'Ada',
    scale: 2,
    zone: 'Europe/London',
  });
  await page.locator('.card .result').waitFor();
  await page.screenshot({ path: FILE });
}
await browser.close();
process.stdout.write(`${FILE}: ${Math.round(statSync(FILE).size / 1000)} kB\n`);
