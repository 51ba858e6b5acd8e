import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sheetsByTopic, sumsPage } from '../../support/sums-page.ts';

describe('the page of the sums', () => {
  it('finds the sheets', async () => {
    const sheets = [...(await sheetsByTopic()).values()].flat();
    expect(sheets.length).toBeGreaterThan(40);
    for (const { title, formula, range, sources } of sheets) {
      expect(
        [title, formula, range].every((text) => text.trim() !== ''),
        title,
      ).toBe(true);
      expect(sources.length, title).toBeGreaterThan(0);
    }
  });

  it('is what the code says now (npm run sums writes it anew)', async () => {
    expect(readFileSync(new URL('../../../docs/sums.md', import.meta.url), 'utf8')).toBe(await sumsPage());
  });
});
