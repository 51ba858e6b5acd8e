import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { StoreTrouble } from '../../../src/core/store-problem.ts';
import { requireLocalDisk, unsafeFileSystem } from '../../../src/sqlite/local-disk.ts';
import { isAtLeast, openDatabase } from '../../../src/sqlite/open.ts';
import { RECORD_BOOK } from '../../support/record-book.ts';
import { scratchFolder } from '../../support/scratch-folder.ts';

const [CHANGE_LOG, ...LATER] = RECORD_BOOK;
if (CHANGE_LOG === undefined || LATER.length === 0) throw new Error('these tests need two steps');

function open(path: string, migrations = RECORD_BOOK) {
  const db = openDatabase(path, { migrations, nowMs: 5 });
  onTestFinished(() => {
    db.close();
  });
  return db;
}

const problem = (trouble: StoreTrouble, words: string): unknown =>
  expect.objectContaining({
    name: 'StoreProblem',
    trouble,
    message: expect.stringContaining(words) as unknown,
  });

describe('an opened file', () => {
  it.each([
    ['journal_mode', 'wal'],
    ['synchronous', 2],
    ['foreign_keys', 1],
    ['trusted_schema', 0],
    ['cell_size_check', 1],
    ['recursive_triggers', 1],
    ['busy_timeout', 250],
    ['user_version', RECORD_BOOK.length],
  ])('has %s = %s', (pragma, value) => {
    expect(open(join(scratchFolder(), 'new', 'team.sqlite')).pragma(pragma, { simple: true })).toBe(value);
  });

  it('syncs each commit still after it was opened a second time and written to', () => {
    const path = join(scratchFolder(), 'team.sqlite');
    open(path).close();
    const db = open(path);
    db.exec("INSERT INTO scrap (text) VALUES ('x')");
    expect(db.pragma('synchronous', { simple: true })).toBe(2);
  });

  it('uses an SQLite without the WAL-reset bug', () => {
    const version = open(':memory:').prepare<[], string>('SELECT sqlite_version()').pluck().get();
    expect(isAtLeast(version ?? '', [3, 51, 3])).toBe(true);
  });

  it('may be in memory, for tests', () => {
    expect(open(':memory:').pragma('journal_mode', { simple: true })).toBe('memory');
  });
});

describe('a version number', () => {
  it.each([
    ['3.51.3', true],
    ['3.51.10', true],
    ['3.54.0', true],
    ['4.0.0', true],
    ['3.51.2', false],
    ['3.9.9', false],
    ['2.99.99', false],
  ])('%s is new enough: %s', (version, enough) => {
    expect(isAtLeast(version, [3, 51, 3])).toBe(enough);
  });
});

describe('the disk', () => {
  // Source: Linux man-pages, statfs(2), table of f_type constants.
  it.each([
    ['NFS_SUPER_MAGIC', 0x6969, 'NFS'],
    ['SMB2_MAGIC_NUMBER', 0xfe534d42, 'SMB2'],
    ['FUSE_SUPER_MAGIC', 0x65735546, 'FUSE or virtiofs'],
    ['EXT4_SUPER_MAGIC', 0xef53, null],
    ['BTRFS_SUPER_MAGIC', 0x9123683e, null],
    ['XFS_SUPER_MAGIC', 0x58465342, null],
    ['OVERLAYFS_SUPER_MAGIC', 0x794c7630, null],
  ])('%s is told apart', (_, type, name) => {
    expect(unsafeFileSystem(type)).toBe(name);
  });

  it.runIf(process.platform === 'linux')(
    'is refused when it is on the network, saying which folder and what instead',
    () => {
      expect(() => requireLocalDisk('/srv/share', () => 0x6969)).toThrow(
        problem('network-disk', 'cannot live in /srv/share: it is on NFS'),
      );
    },
  );
});

describe('opening refuses', () => {
  it('a file that a newer version of the program has written', () => {
    const path = join(scratchFolder(), 'team.sqlite');
    open(path).close();
    expect(() => open(path, [CHANGE_LOG])).toThrow(problem('newer', 'step 2; this one knows 1'));
  });

  it('a file that is something else, and leaves it as it is', () => {
    const path = join(scratchFolder(), 'team.sqlite');
    writeFileSync(path, 'Dear crew, '.repeat(500));
    expect(() => open(path)).toThrow(problem('not-a-database', 'not a file of records'));
  });

  it('a path that is a folder', () => {
    const path = join(scratchFolder(), 'team.sqlite');
    mkdirSync(path);
    expect(() => open(path)).toThrow(problem('cannot-open', 'cannot be opened'));
  });
});

describe('migrating', () => {
  it('makes of an older file what a new one is', () => {
    const schemaOf = (db: Database.Database) =>
      db.prepare('SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY name').all();
    const path = join(scratchFolder(), 'team.sqlite');
    open(path, [CHANGE_LOG]).close();
    const [upgraded, fresh] = [open(path), open(':memory:')];
    expect(schemaOf(upgraded)).toEqual(schemaOf(fresh));
    expect(schemaOf(fresh)).not.toEqual([]);
  });

  it('does no harm the second time', () => {
    const path = join(scratchFolder(), 'team.sqlite');
    const db = open(path);
    db.exec("INSERT INTO scrap (text) VALUES ('kept')");
    db.close();
    expect(open(path).prepare('SELECT text FROM scrap').pluck().all()).toEqual(['kept']);
  });

  it('copies an older file first, whole, and a new or up-to-date one not', () => {
    const folder = scratchFolder();
    const path = join(folder, 'team.sqlite');
    open(path, [CHANGE_LOG]).close();
    expect(existsSync(join(folder, 'backups'))).toBe(false);
    open(path).close();
    open(path).close();
    expect(readdirSync(join(folder, 'backups'))).toEqual(['before-step-2-5.sqlite']);
    const copy = new Database(join(folder, 'backups', 'before-step-2-5.sqlite'), { readonly: true });
    onTestFinished(() => {
      copy.close();
    });
    expect(copy.pragma('user_version', { simple: true })).toBe(1);
    expect(copy.pragma('integrity_check', { simple: true })).toBe('ok');
  });

  it.each([
    ['a statement that fails half-way', 'CREATE TABLE half (id INTEGER PRIMARY KEY) STRICT; NOT SQL'],
    [
      'a foreign key left dangling',
      'CREATE TABLE half (id INTEGER PRIMARY KEY, up INTEGER REFERENCES half (id)) STRICT; INSERT INTO half VALUES (1, 9)',
    ],
  ])('takes a whole step back for %s, and keeps the steps before it', (_, sql) => {
    const path = join(scratchFolder(), 'team.sqlite');
    const broken = { name: '0003-broken', sql };
    expect(() => open(path, [...RECORD_BOOK, broken])).toThrow(
      problem('migration-failed', 'step 0003-broken failed'),
    );
    const db = open(path);
    expect(db.pragma('user_version', { simple: true })).toBe(RECORD_BOOK.length);
    expect(db.prepare("SELECT name FROM sqlite_schema WHERE name = 'half'").all()).toEqual([]);
  });

  it('lets a step rebuild a table that others refer to', () => {
    const rebuild = {
      name: '0003-rebuild',
      sql: `CREATE TABLE shelf_new (id INTEGER PRIMARY KEY AUTOINCREMENT, name TEXT NOT NULL UNIQUE, load REAL, place TEXT) STRICT;
            INSERT INTO shelf_new (id, name, load) SELECT id, name, load FROM shelf;
            DROP TABLE shelf;
            ALTER TABLE shelf_new RENAME TO shelf;`,
    };
    const path = join(scratchFolder(), 'team.sqlite');
    const before = open(path);
    before.exec("INSERT INTO shelf (name) VALUES ('left'); INSERT INTO item (shelf_id) VALUES (1)");
    before.close();
    const after = open(path, [...RECORD_BOOK, rebuild]);
    expect(after.prepare('SELECT shelf_id FROM item').pluck().all()).toEqual([1]);
    expect(after.pragma('foreign_keys', { simple: true })).toBe(1);
  });
});
