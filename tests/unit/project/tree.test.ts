import { readdirSync, readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = new URL('../../../', import.meta.url);

const TOP = new Set([
  'README.md',
  'DEVELOPERS.md',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'src',
  'commands',
  'tests',
  'data',
  'docs',
]);
/** Made while working, and left out of the repository. */
const MADE = new Set(['node_modules', 'coverage']);

const TEXT = /\.(ts|json|md|css|html|sql|csv|txt)$|\/run$/;

/** Paths below the top level of every text that belongs to the project. */
function texts(folder = ''): readonly string[] {
  return readdirSync(new URL(folder, root), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}${entry.name}`;
    if (entry.isDirectory()) {
      const skipped = MADE.has(path) || path === '.git' || path === 'data/var';
      return skipped ? [] : texts(`${path}/`);
    }
    return TEXT.test(`/${path}`) && path !== '.env' ? [path] : [];
  });
}

describe('the tree', () => {
  it('shows at its top only what a newcomer looks for', () => {
    const shown = readdirSync(root).filter((name) => !name.startsWith('.') && !MADE.has(name));
    expect(shown.filter((name) => !TOP.has(name))).toEqual([]);
    expect(shown).toContain('README.md');
  });

  it('names no path of any one machine', () => {
    const all = texts();
    expect(all.length).toBeGreaterThan(200);
    const places = [
      /\/(?:home|Users)\/[a-z]/,
      /[A-Z]:\\Users/,
      /(?<![\w.])\/(?:work|root|mnt)\//,
      ...[homedir(), fileURLToPath(root)]
        .filter((path) => path.length > 5)
        .map((path) => new RegExp(path.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'))),
    ];
    const naming = all.filter((path) => {
      if (path === 'tests/unit/project/tree.test.ts' || path === 'package-lock.json') return false;
      const text = readFileSync(new URL(path, root), 'utf8');
      return places.some((place) => place.test(text));
    });
    expect(naming).toEqual([]);
  });
});
