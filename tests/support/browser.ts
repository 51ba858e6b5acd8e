import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import axe from 'axe-core';
import { type Browser, chromium, type Page } from 'playwright-core';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'] as const;
const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
] as const;

/** The browser of this machine, or `undefined`; `CHROMIUM` names one that is not in the usual places. */
export const browserPath = findBrowser();

if (browserPath === undefined) {
  const words =
    'The page tests were LEFT OUT: no Chromium on this machine. Install one, or name it in CHROMIUM.';
  if (process.env['CI'] === 'true') throw new Error(words);
  console.log(`\n${words}\n`);
}

function findBrowser(): string | undefined {
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  const places = ['/usr/bin', ...folders].flatMap((folder) => NAMES.map((name) => join(folder, name)));
  const named = process.env['CHROMIUM'];
  return [...(named === undefined ? [] : [named]), ...places].find(canRun);
}

function canRun(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    // Not there, or not to be run: the next place is looked at.
    return false;
  }
}

/** Starts the browser; close it after the tests. */
export async function startBrowser(): Promise<Browser> {
  if (browserPath === undefined) throw new Error('There is no browser; skip these tests.');
  return await chromium.launch({ executablePath: browserPath, args: [...FLAGS] });
}

export interface Visit {
  readonly url: string;
  /** Who the page remembers as writing; absent: nobody yet. */
  readonly as?: string;
  readonly width?: number;
  readonly height?: number;
  readonly scheme?: 'light' | 'dark';
  /** Device pixels to one CSS pixel. */
  readonly scale?: number;
  /** Time zone of the device, by its IANA name. */
  readonly zone?: string;
}

/**
 * A page on a phone of this size, with whatever went wrong in it. Closed by `await using`; that fails when a script
 * on the page did, or when the page refused a part of itself.
 */
export async function visit(
  browser: Browser,
  { url, as, width = 390, height = 844, scheme = 'light', scale = 1, zone = 'Europe/Berlin' }: Visit,
): Promise<Page & AsyncDisposable> {
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: scheme,
    deviceScaleFactor: scale,
    hasTouch: width < 500,
    timezoneId: zone,
    locale: 'en-GB',
  });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.stack ?? error.message));
  page.on('console', (message) => {
    const isOutage = message.text().includes('net::ERR') || message.text().includes('WebSocket');
    if (message.type() === 'error' && !isOutage) faults.push(message.text());
  });
  page.on('dialog', (dialog) => {
    faults.push(`a dialog opened: ${dialog.message()}`);
    void dialog.dismiss();
  });
  if (as !== undefined)
    await page.addInitScript(`localStorage.setItem('day-book.me', ${JSON.stringify(as)})`);
  await page.goto(url);
  return Object.assign(page, {
    async [Symbol.asyncDispose]() {
      await context.close();
      if (faults.length > 0) throw new Error(`The page went wrong:\n${faults.join('\n')}`);
    },
  });
}

interface AxeFinding {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/**
 * What axe finds wrong inside this element, one line each. The rules drawn behind the text are taken off first: axe does not measure
 * contrast over a gradient, and what it cannot measure counts as wrong here.
 */
export async function axeFindings(page: Page, within = 'body'): Promise<readonly string[]> {
  await page.evaluate(`document.styleSheets[0].insertRule(
    '#entries, .entry, .slip pre { background-image: none !important }')`);
  await page.evaluate(`document.styleSheets[0].insertRule('#entries::before { content: none !important }')`);
  await page.evaluate(axe.source);
  // axe.run answers with plain data of this form.
  const found = (await page.evaluate(
    `axe.run(${JSON.stringify(within)}, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })
      .then(({ violations, incomplete }) => [...violations, ...incomplete.filter(({ id }) => id === 'color-contrast')])`,
  )) as readonly AxeFinding[];
  return found.map(({ id, help, nodes }) => {
    const places = nodes.map(({ html, failureSummary }) => `  ${html}\n    ${failureSummary ?? ''}`);
    return `${id}: ${help}\n${places.join('\n')}`;
  });
}
