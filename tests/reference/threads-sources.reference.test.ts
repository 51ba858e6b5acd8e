import { readdir, readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { threadCatalogue } from '../../src/calc/threads/catalogue.ts';
import { threadTables } from '../../src/tables/threads.ts';

const root = new URL('../../', import.meta.url);
const document = await readFile(new URL('docs/sources.md', root), 'utf8');
const section = document.split(/^## /m).find((part) => part.startsWith('Threads')) ?? '';
/** First column of the table; a row may hold several keys. */
const known = new Set(
  [...section.matchAll(/^\| ([^|]+) \|/gm)].flatMap(([, keys = '']) =>
    keys.split(',').map((key) => key.trim()),
  ),
);

function sourcesIn(value: unknown): readonly string[] {
  const keys = z.array(z.string());
  if (Array.isArray(value)) return value.flatMap(sourcesIn);
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([name, inner]: [string, unknown]) =>
    name === 'source' || name === 'washer_source' ? keys.parse(inner) : sourcesIn(inner),
  );
}

describe('every source named by the thread tables is spelled out', () => {
  it('has a table of sources', () => expect(known.size).toBeGreaterThan(40));

  it('in data/threads', async () => {
    const folder = new URL('data/threads/', root);
    const files = (await readdir(folder)).filter((file) => file.endsWith('.json'));
    expect(files.length).toBeGreaterThan(10);
    for (const file of files) {
      const keys = sourcesIn(JSON.parse(await readFile(new URL(file, folder), 'utf8')));
      for (const key of keys) expect(known, `${file} names ${key}`).toContain(key);
    }
  });

  it('in the catalogue', () => {
    const threads = threadCatalogue(threadTables);
    for (const { id, sources } of threads) {
      expect(sources.length, id).toBeGreaterThan(0);
      for (const key of sources) expect(known, id).toContain(key);
    }
  });

  it('in the docstrings of the sums', async () => {
    const folder = new URL('src/calc/threads/', root);
    for (const file of await readdir(folder)) {
      const text = await readFile(new URL(file, folder), 'utf8');
      for (const [, list = ''] of text.matchAll(/\(keys? ([A-Z][^);]*)/g)) {
        for (const key of list.split(',').map((each) => each.trim())) expect(known, file).toContain(key);
      }
    }
  });
});
