import { readdir, readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';

const root = new URL('../../', import.meta.url);
const TOPICS = [
  ...(['air', 'electrics', 'fasteners', 'fluids'] as const),
  ...(['fuel', 'geometry', 'readings'] as const),
] as const;
const Sheet = z.strictObject({
  title: z.string().min(5),
  formula: z.string().min(5),
  symbols: z.record(z.string().min(1), z.string().min(2)),
  sources: z.array(z.string()).min(1),
  range: z.string().min(5),
});

const document = await readFile(new URL('docs/sources.md', root), 'utf8');
/** First column of every table; a row may hold several keys. */
const known = new Set(
  [...document.matchAll(/^\| ([^|]+) \|/gm)].flatMap(([, keys = '']) =>
    keys.split(',').map((key) => key.trim()),
  ),
);

/** A key at the beginning; a word of explanation may stand behind it. */
const KEY = /^[\s*]*([A-Z][A-Z\d-]+)(?![a-z])/;

const filesOf = async (topic: string): Promise<readonly URL[]> => {
  const folder = new URL(`src/calc/${topic}/`, root);
  return (await readdir(folder)).map((file) => new URL(file, folder));
};

describe.each(TOPICS)('the sheets of %s', (topic) => {
  it('are whole, and name sources that are spelled out', async () => {
    const sheets = (
      await Promise.all(
        (
          await filesOf(topic)
        ).map(async ({ href }) => {
          const module = z.record(z.string(), z.unknown()).parse({ ...(await import(href)) });
          return Object.entries(module).filter(([name]) => name.endsWith('Sheet'));
        }),
      )
    ).flat();
    expect(sheets.length).toBeGreaterThan(4);
    for (const [name, sheet] of sheets) {
      const { sources } = Sheet.parse(sheet);
      for (const key of sources) expect(known, `${name} names ${key}`).toContain(key);
    }
    const titles = sheets.map(([, sheet]) => Sheet.parse(sheet).title);
    expect(new Set(titles).size).toBe(titles.length);
  });

  it('and the docstrings beside them name no other source', async () => {
    let found = 0;
    for (const file of await filesOf(topic)) {
      const text = await readFile(file, 'utf8');
      for (const [, list = ''] of text.matchAll(/\(keys? ([A-Z][^);]*)/g)) {
        for (const key of list.split(/,| and /).flatMap((each) => KEY.exec(each)?.[1] ?? [])) {
          found += 1;
          expect(known, file.pathname).toContain(key);
        }
      }
    }
    expect(found).toBeGreaterThan(5);
  });
});
