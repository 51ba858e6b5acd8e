import { chmodSync, readFileSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { StoreTrouble } from '../../../src/core/store-problem.ts';
import { makeBackup } from '../../../src/sqlite/backup.ts';
import { startChild } from '../../support/child.ts';
import { contentOf, openRecordBook } from '../../support/record-book.ts';
import { scratchFolder } from '../../support/scratch-folder.ts';
import { makeChange } from '../../support/workload.ts';

const FLIPS = Number(process.env['FLIPS'] ?? 600);
const OPENER = new URL('../../support/read-only-opener.ts', import.meta.url);

function fullBook(changes: number) {
  const path = join(scratchFolder(), 'records', 'team.sqlite');
  const book = openRecordBook(path);
  onTestFinished(() => {
    book.db.close();
  });
  for (let n = 1; n <= changes; n += 1) makeChange(book, n);
  return { ...book, path };
}

const problem = (trouble: StoreTrouble, words: string): unknown =>
  expect.objectContaining({
    name: 'StoreProblem',
    trouble,
    message: expect.stringContaining(words) as unknown,
  });

describe('a full disk', () => {
  it('is told in plain words, leaves nothing half-written, still reads, and saves again once there is space', () => {
    const book = fullBook(20);
    const pages = Number(book.db.pragma('page_count', { simple: true }));
    book.db.pragma(`max_page_count = ${pages}`);
    let next = 21;
    let before = contentOf(book.db);
    const fill = () => {
      for (; next < 200; next += 1) {
        before = contentOf(book.db);
        makeChange(book, next);
      }
    };
    expect(fill).toThrow(problem('full', 'Not saved: the disk is full. Everything saved before is kept.'));
    expect(contentOf(book.db)).toEqual(before);
    expect(book.ledger.recent(1)[0]?.id).toBe(next - 1);
    expect(book.db.inTransaction).toBe(false);
    expect(book.db.pragma('integrity_check', { simple: true })).toBe('ok');
    book.db.pragma(`max_page_count = ${pages * 100}`);
    expect(makeChange(book, next)).toBe(next);
  });
});

describe('another program that writes to the records', () => {
  it('is waited for only briefly, then told of; nothing is saved and the next try works', () => {
    const book = fullBook(3);
    const other = new Database(book.path);
    onTestFinished(() => {
      other.close();
    });
    other.exec('BEGIN IMMEDIATE');
    const before = contentOf(book.db);
    expect(() => makeChange(book, 4)).toThrow(problem('busy', 'Not saved: another program is writing'));
    expect(contentOf(book.db)).toEqual(before);
    other.exec('ROLLBACK');
    expect(makeChange(book, 4)).toBe(4);
  });
});

describe('a folder that cannot be used', () => {
  it('is told in plain words when records are opened and when a backup is made', async () => {
    const { db, path } = fullBook(1);
    const inAFile = join(path, 'not-a-folder');
    expect(() => openRecordBook(join(inAFile, 'team.sqlite'))).toThrow(
      problem('cannot-open', 'Check that its folder'),
    );
    await expect(makeBackup(db, inAFile, 0)).rejects.toThrow(problem('cannot-open', 'Check that its folder'));
  });
});

describe('a file that may not be written', () => {
  it.each([
    ['the file', 0o444, 0o777],
    ['the file and its folder', 0o444, 0o555],
  ])('is refused at once, not at the first change: %s', async (_, fileMode, folderMode) => {
    const { db, path } = fullBook(3);
    db.close();
    chmodSync(dirname(dirname(path)), 0o755);
    chmodSync(path, fileMode);
    chmodSync(dirname(path), folderMode);
    const before = readFileSync(path);
    expect(await startChild(OPENER, [path]).nextLine()).toMatch(
      /^StoreProblem: (Nothing was saved: the file of records may not be written to|The file of records cannot be opened)/,
    );
    expect(readFileSync(path)).toEqual(before);
    chmodSync(dirname(path), 0o755);
  });
});

describe('a damaged file', () => {
  function damaged(spoil: (path: string) => void) {
    const { db, path } = fullBook(40);
    db.close();
    spoil(path);
    return path;
  }
  const overwrite = (from: number, bytes: number) => (path: string) => {
    const content = readFileSync(path);
    content.fill(0xa5, from, from + bytes);
    writeFileSync(path, content);
  };

  it.each([
    ['garbage from the first byte', overwrite(0, 4096), 'not-a-database'],
    ['garbage in a later page', overwrite(3 * 4096, 4096), 'damaged'],
    [
      'cut off at half its length',
      (path: string) => truncateSync(path, Math.floor(statSync(path).size / 8192) * 4096),
      'damaged',
    ],
  ] as const)('is refused and left as it is: %s', (_, spoil, trouble) => {
    const path = damaged(spoil);
    const before = readFileSync(path);
    expect(() => openRecordBook(path)).toThrow(problem(trouble, 'restore the newest backup'));
    expect(readFileSync(path)).toEqual(before);
  });

  it('never shows a value that a flipped bit has changed without SQLite’s checks or the audit finding it', () => {
    const { db, path } = fullBook(40);
    const sound = contentOf(db);
    db.close();
    const content = readFileSync(path);
    const outcome = { refused: 0, checked: 0, audited: 0, harmless: 0, silent: 0 };
    for (let flip = 0; flip < FLIPS; flip += 1) {
      const spoiled = Buffer.from(content);
      const bit = Math.floor((flip + 0.5) * ((content.length * 8) / FLIPS)) + (flip % 8); // spread over file and byte
      spoiled[bit >> 3] = (spoiled[bit >> 3] ?? 0) ^ (1 << (bit & 7));
      writeFileSync(path, spoiled);
      outcome[whatBecomesOf(path, sound)] += 1;
    }
    expect(outcome.silent).toBe(0);
    expect(outcome.audited).toBeGreaterThan(0);
  });
});

/** Who notices a spoiled file: opening it, the full check, the audit, nobody because nothing is changed, or nobody. */
function whatBecomesOf(path: string, sound: readonly string[]) {
  let book: ReturnType<typeof openRecordBook>;
  try {
    book = openRecordBook(path);
  } catch {
    return 'refused';
  }
  try {
    if (book.db.pragma('integrity_check(1)', { simple: true }) !== 'ok') return 'checked';
    if (book.ledger.audit().length > 0) return 'audited';
    return contentOf(book.db).join() === sound.join() ? 'harmless' : 'silent';
  } catch {
    return 'refused';
  } finally {
    book.db.close();
  }
}
