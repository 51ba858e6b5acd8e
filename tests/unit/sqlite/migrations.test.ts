import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Migration } from '../../../src/sqlite/migrate.ts';
import { migrations } from '../../../src/sqlite/migrations/list.ts';

/**
 * The seals of released steps: name and SHA-256 of the SQL text. At each release the steps that are new in it are added
 * here; nothing is ever taken away or changed. None is released so far.
 */
const RELEASED: readonly (readonly [name: string, sha256: string])[] = [];

const sealOf = ({ name, sql }: Migration) => [name, createHash('sha256').update(sql).digest('hex')] as const;

/** What of the released steps is no longer there as it was, in its place. */
function broken(steps: readonly Migration[], released: typeof RELEASED): readonly string[] {
  const seals = steps.map(sealOf);
  return released
    .filter(([name, sha256], index) => seals[index]?.[0] !== name || seals[index][1] !== sha256)
    .map(([name]) => name);
}

describe('the steps of the schema', () => {
  it('have never been edited, moved or removed once released', () => {
    expect(broken(migrations, RELEASED)).toEqual([]);
  });

  it.each([
    [
      'edited',
      [
        { name: 'a', sql: 'A!' },
        { name: 'b', sql: 'B' },
      ],
      ['a'],
    ],
    [
      'renamed',
      [
        { name: 'a', sql: 'A' },
        { name: 'c', sql: 'B' },
      ],
      ['b'],
    ],
    ['removed', [{ name: 'b', sql: 'B' }], ['a', 'b']],
    [
      'only added to',
      [
        { name: 'a', sql: 'A' },
        { name: 'b', sql: 'B' },
        { name: 'c', sql: 'C' },
      ],
      [],
    ],
  ])('are seen when they have been %s', (_, steps, found) => {
    const released = [
      { name: 'a', sql: 'A' },
      { name: 'b', sql: 'B' },
    ].map(sealOf);
    expect(broken(steps, released)).toEqual(found);
  });

  it('are the files of their folder, numbered in order, each under its own name', () => {
    const files = readdirSync(new URL('../../../src/sqlite/migrations/', import.meta.url))
      .filter((file) => file !== 'list.ts')
      .map((file) => file.replace(/\.ts$/, ''))
      .toSorted();
    expect(files).not.toEqual([]);
    expect(migrations.map(({ name }) => name)).toEqual(files);
    expect(files.map((file) => Number(file.slice(0, 4)))).toEqual(files.map((_, index) => index + 1));
  });
});
