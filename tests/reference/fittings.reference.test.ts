import { readdir, readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { dashReply, mateReply } from '../../commands/fitting.ts';
import mating from '../../data/reference/threads/mating.json' with { type: 'json' };

const Row = z.object({
  n: z.number(),
  a: z.string(),
  b: z.string(),
  mates: z.enum(['yes', 'no']),
  seals: z.enum(['yes', 'no', 'n/a']),
  mates_detail: z.string().optional(),
  source: z.string().min(2),
});
const rows = z.array(Row).parse(mating);

const Data = z.object({
  mates: z.string(),
  seals: z.string(),
  engagement: z.string(),
  why: z.array(z.string()).min(1),
});
const verdict = (a: string, b: string) => Data.parse(mateReply(a, b).data);

/** What a row's own words about how far the threads go are called here. */
const ENGAGEMENT: readonly (readonly [RegExp, string])[] = [
  [/engages for some turns, then binds/, 'binds'],
  [/jams at the gauge plane/, 'jams'],
  [/engages loosely/, 'loose'],
];

/** Sources by row: seat makers' guides and the thread tables; see data/reference/threads/NOTES.md. */
describe('the fifty pairs of ends', () => {
  it('are all there', () => {
    expect(rows.map(({ n }) => n)).toEqual(Array.from({ length: 50 }, (_, index) => index + 1));
  });

  it.each(rows)('$n: $a on $b mates $mates, seals $seals ($source)', ({ a, b, mates, seals }) => {
    expect(verdict(a, b)).toMatchObject({ mates, seals });
    expect(verdict(b, a), 'the other way round').toMatchObject({ mates, seals });
  });

  const detailed = rows.filter(({ mates_detail }) => mates_detail !== undefined);
  it.each(detailed)('$n: $a in $b $mates_detail', ({ a, b, mates_detail = '' }) => {
    const [, engagement] = ENGAGEMENT.find(([words]) => words.test(mates_detail)) ?? [];
    expect(engagement, mates_detail).toBeDefined();
    expect(verdict(a, b).engagement).toBe(engagement);
  });
});

/** Source: J512NOTE: -2, -3, -4, -5, -8 and -10 of 37° and 45° flares share their thread, and none seals on the other. */
describe('37° on 45° flares', () => {
  it.each([2, 3, 4, 5, 8, 10])('-%i screws on and does not seal', (dash) => {
    expect(verdict(`JIC -${dash} male`, `SAE 45 -${dash} female`)).toMatchObject({
      mates: 'yes',
      seals: 'no',
    });
  });
  it.each([6, 12])('-%i does not go on', (dash) => {
    expect(verdict(`JIC -${dash} male`, `SAE 45 -${dash} female`)).toMatchObject({
      mates: 'no',
      seals: 'no',
    });
  });
});

/** Source: HOSEBORE, bores in inches by dash number, read from the published table; 13/16 in the table is a fraction. */
describe('hose bores', () => {
  const Sizes = z.object({
    sizes: z
      .array(z.object({ hoseBoreMm: z.number(), tubeSizedHoseBoreMm: z.number().nullable() }))
      .length(1),
  });
  it.each([
    [4, 6.4, 4.8],
    [5, 7.9, 6.4],
    [6, 9.5, 7.9],
    [8, 12.7, 10.3],
    [10, 15.9, 12.7],
    [12, 19.0, 15.9],
    [16, 25.4, 22.2],
    [20, 31.8, 28.6],
    [24, 38.1, 34.9],
    [32, 50.8, 46.0],
  ])('of -%i are %f and %f mm', (dash, byBore, byTube) => {
    const [size] = Sizes.parse(dashReply({ size: `-${dash}` }).data).sizes;
    // half of the last printed digit, and 0.01 for the table's own rounding of 19.05
    expect(Math.abs((size?.hoseBoreMm ?? 0) - byBore)).toBeLessThanOrEqual(0.06);
    expect(Math.abs((size?.tubeSizedHoseBoreMm ?? 0) - byTube)).toBeLessThanOrEqual(0.06);
  });
});

describe('every source of a verdict or a size is spelled out', () => {
  const root = new URL('../../', import.meta.url);
  const keysIn = (text: string): readonly string[] =>
    [...text.matchAll(/["']?sources?["']?: \[([^\]]*)\]/g)].flatMap(([, list = '']) =>
      [...list.matchAll(/["']([A-Z][A-Z0-9-]+)["']/g)].map(([, key = '']) => key),
    );

  it.each(['data/fittings/', 'src/calc/fittings/'])('in %s', async (folder) => {
    const document = await readFile(new URL('docs/sources.md', root), 'utf8');
    const known = new Set(
      [...document.matchAll(/^\| ([^|]+) \|/gm)].flatMap(([, keys = '']) =>
        keys.split(',').map((key) => key.trim()),
      ),
    );
    const texts = await Promise.all(
      (await readdir(new URL(folder, root))).map((file) => readFile(new URL(folder + file, root), 'utf8')),
    );
    const keys = new Set([
      ...texts.flatMap(keysIn),
      ...texts.flatMap((text) =>
        [...text.matchAll(/\(keys? ([A-Z][^);]*)/g)].flatMap(([, list = '']) =>
          list.split(',').map((key) => key.trim()),
        ),
      ),
    ]);
    expect(keys.size).toBeGreaterThan(2);
    for (const key of keys) expect(known, key).toContain(key);
  });
});
