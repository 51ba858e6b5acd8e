import { existsSync, readFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { isAtLeast } from '../../../src/sqlite/open.ts';

const root = new URL('../../../', import.meta.url);
const readJson = (path: string): unknown => JSON.parse(readFileSync(new URL(path, root), 'utf8'));

const Manifest = z.looseObject({
  optionalDependencies: z.record(z.string(), z.string()),
  engines: z.object({ node: z.string() }),
});
const Installed = z.looseObject({
  scripts: z.record(z.string(), z.string()).default({}),
  gypfile: z.boolean().optional(),
});
const Lock = z.looseObject({
  packages: z.record(
    z.string(),
    z.looseObject({ integrity: z.string().optional(), link: z.boolean().optional() }),
  ),
});

const manifest = Manifest.parse(readJson('package.json'));
const { packages } = Lock.parse(readJson('package-lock.json'));
const installed = Object.keys(packages).filter(
  (path) => path !== '' && existsSync(new URL(`${path}/package.json`, root)),
);

describe('the runtime travels with the project', () => {
  const nodes = Object.entries(manifest.optionalDependencies).filter(([name]) => name.startsWith('node-'));

  it('for five platforms, in one exact version', () => {
    expect(nodes).toHaveLength(5);
    expect(new Set(nodes.map(([, version]) => version)).size).toBe(1);
    for (const [name, version] of nodes) expect(version, name).toMatch(/^\d+\.\d+\.\d+$/);
  });

  it('and is what scripts run on', () => {
    expect(process.version).toBe(`v${nodes[0]?.[1] ?? ''}`);
  });

  it('with an SQLite that loses nothing at a checkpoint', () => {
    // sqlite.org/wal.html, "WAL-reset bug": mended in 3.51.3
    const db = new Database(':memory:');
    const version = db.prepare<[], string>('SELECT sqlite_version()').pluck().get() ?? '';
    db.close();
    expect(isAtLeast(version, [3, 51, 3]), version).toBe(true);
  });

  it('and with the time zones and currencies that records name', () => {
    expect(Intl.supportedValuesOf('timeZone')).toContain('Australia/Lord_Howe');
    expect(Intl.supportedValuesOf('currency')).toContain('GBP');
  });
});

describe('what is installed', () => {
  it('is there to be looked at', () => expect(installed.length).toBeGreaterThan(50));

  it('runs no script of its own while it is installed', () => {
    const running = installed.filter((path) => {
      const { scripts, gypfile } = Installed.parse(readJson(`${path}/package.json`));
      const own = ['preinstall', 'install', 'postinstall'].some((name) => scripts[name] !== undefined);
      // npm compiles of itself where it finds this file, unless the package says it does not want that
      const compiles = gypfile !== false && existsSync(new URL(`${path}/binding.gyp`, root));
      return own || compiles;
    });
    expect(running).toEqual([]);
  });

  it('is what the lock file saw, by its digest', () => {
    const without = Object.entries(packages).filter(
      ([path, { integrity }]) => path !== '' && integrity === undefined,
    );
    expect(without).toEqual([]);
  });
});
