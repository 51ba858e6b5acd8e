import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Things to press that are lower or narrower than 44 px, the least a thumb finds. */
export async function tooSmall(page: Page): Promise<readonly string[]> {
  // What the script below answers with.
  const boxes = (await page.evaluate(
    `[...document.querySelectorAll('button, select, [role=option], textarea, input, label.choice')].map((one) => {
      const { width, height } = (one.closest('label.choice') ?? one).getBoundingClientRect();
      return { name: one.outerHTML.slice(0, 120), width, height };
    })`,
  )) as readonly { readonly name: string; readonly width: number; readonly height: number }[];
  expect(boxes.length).toBeGreaterThan(3);
  return boxes
    .filter(({ width, height }) => width > 0 && (height < 44 || width < 44))
    .map(({ name, width, height }) => `${width} × ${height}: ${name}`);
}

/** How far, in CSS pixels, anything on the page can be scrolled sideways; 0 is right. */
export async function sidewaysPx(page: Page): Promise<number> {
  const most = await page.evaluate(
    `Math.max(...[document.documentElement, document.getElementById('book'), document.getElementById('suggestions')]
      .map((one) => one.scrollWidth - one.clientWidth))`,
  );
  return Number(most);
}
