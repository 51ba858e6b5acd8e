import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { threadCatalogue } from '../../../src/calc/threads/catalogue.ts';
import { threadTables } from '../../../src/tables/threads.ts';

const root = new URL('../../../', import.meta.url);

/** First column of the tables; a row may hold several keys. */
const known = [...readFileSync(new URL('docs/sources.md', root), 'utf8').matchAll(/^\| ([^|]+) \|/gm)]
  .flatMap(([, keys = '']) => keys.split(',').map((key) => key.trim()))
  .filter((key) => key !== 'key' && !/^-+$/.test(key));

function filesIn(folder: string, ending: string): readonly string[] {
  return readdirSync(new URL(folder, root), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith(ending))
    .map((path) => `${folder}${path}`);
}

const read = (path: string): string => readFileSync(new URL(path, root), 'utf8');

/** Keys in every member called `source` or ending in it, however deep. */
function keysIn(value: unknown): readonly string[] {
  if (Array.isArray(value)) return value.flatMap(keysIn);
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([name, inner]: [string, unknown]) =>
    /(^|_)source$/.test(name)
      ? z.union([z.array(z.string()), z.string().transform((key) => [key])]).parse(inner)
      : keysIn(inner),
  );
}

/** Every published table; what stands under reference is for the tests, and the demonstration is invented. */
const tables = filesIn('data/', '.json').filter((path) => !/^data\/(reference|demo|var)\//.test(path));
const code = [...filesIn('src/', '.ts'), ...filesIn('commands/', '.ts')];

describe('every source', () => {
  it('is spelled out once', () => {
    expect(known.length).toBeGreaterThan(40);
    expect(known.filter((key, index) => known.indexOf(key) !== index)).toEqual([]);
  });

  it('named by a table is in docs/sources.md', () => {
    const used = tables.flatMap((path) => keysIn(JSON.parse(read(path))));
    expect(used.length).toBeGreaterThan(100);
    expect([...new Set(used)].filter((key) => !known.includes(key))).toEqual([]);
  });

  it('named by a sum is in docs/sources.md', () => {
    const used = threadCatalogue(threadTables).flatMap(({ sources }) => sources);
    expect(used.length).toBeGreaterThan(100);
    expect([...new Set(used)].filter((key) => !known.includes(key))).toEqual([]);
  });

  it('in docs/sources.md is used by a table or by code', () => {
    const text = [...tables, ...filesIn('data/reference/', ''), ...code]
      .filter((path) => /\.(json|ts|md)$/.test(path))
      .map(read)
      .join('\n');
    const unused = known.filter((key) => {
      const literally = key.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
      return !new RegExp(`(?<![\\w-])${literally}(?![\\w-])`, 'i').test(text);
    });
    expect(unused).toEqual([]);
  });
});
