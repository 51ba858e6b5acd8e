import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { backupName, makeBackup, removeExpired } from '../../../src/sqlite/backup.ts';
import { checkCopy } from '../../../src/sqlite/check-copy.ts';
import { asker, contentOf, openRecordBook } from '../../support/record-book.ts';
import { scratchFolder } from '../../support/scratch-folder.ts';

const NOW_MS = Temporal.Instant.from('2026-11-24T08:15:00.250Z').epochMilliseconds;

function filledBook(shelves: number) {
  const folder = scratchFolder();
  const book = openRecordBook(join(folder, 'team.sqlite'));
  onTestFinished(() => {
    book.db.close();
  });
  const sam = asker('Sam');
  const add = (name: string) =>
    book.ledger.change(sam(), () => {
      book.db.prepare('INSERT INTO shelf (name) VALUES (?)').run(name);
      return { value: null, said: name };
    });
  for (let shelf = 0; shelf < shelves; shelf += 1) add(`shelf ${shelf} ${'x'.repeat(2000)}`);
  return { ...book, add, backups: join(folder, 'backups') };
}

describe('a backup', () => {
  it('is one file that opens as the records did, named by its time, with its SHA-256 beside it', async () => {
    const { db, backups } = filledBook(3);
    const backup = await makeBackup(db, backups, NOW_MS);
    expect(readdirSync(backups)).toEqual(['2026-11-24T081500Z.sqlite', '2026-11-24T081500Z.sqlite.sha256']);
    expect(backup.rows).toMatchObject({ shelf: 3, change: 3, change_row: 3 });
    const sha256 = createHash('sha256').update(readFileSync(backup.path)).digest('hex');
    expect(readFileSync(`${backup.path}.sha256`, 'utf8')).toBe(`${sha256}  2026-11-24T081500Z.sqlite\n`);
    const restored = new Database(backup.path, { readonly: true });
    expect(contentOf(restored)).toEqual(contentOf(db));
    restored.close();
  });

  it('holds what was written while it was being made', async () => {
    const { db, add, backups } = filledBook(400); // several hundred pages: more than one turn
    const making = makeBackup(db, backups, NOW_MS);
    const { promise, resolve } = Promise.withResolvers<void>();
    setImmediate(resolve);
    await promise;
    add('meanwhile');
    expect((await making).rows['shelf']).toBe(401);
  });

  it('that fails its check is not kept, and the records go on', async () => {
    const { db, add, backups } = filledBook(1);
    db.pragma('foreign_keys = OFF');
    db.exec('DROP TRIGGER temp."log INSERT tag"; INSERT INTO tag (item_id, word) VALUES (99, \'dangling\')');
    await expect(makeBackup(db, backups, NOW_MS)).rejects.toMatchObject({
      name: 'StoreProblem',
      trouble: 'damaged',
      message: expect.stringContaining('was not sound and has been thrown away') as unknown,
    });
    expect(readdirSync(backups)).toEqual([]);
    expect(add('after').writes).toBe(1);
  });

  it('with a byte turned over anywhere in a page of records does not pass the check', async () => {
    const { db, backups } = filledBook(20);
    const { path } = await makeBackup(db, backups, NOW_MS);
    const bytes = readFileSync(path);
    bytes.fill(0xff, 4096, 4096 + 64); // the header of the second page
    writeFileSync(path, bytes);
    expect(checkCopy(path)).toHaveProperty('fault');
  });
});

describe('the shelf of backups', () => {
  it('loses what has had its time, with its SHA-256, and nothing else', () => {
    const folder = scratchFolder();
    const [old, recent] = [backupName(NOW_MS - 60_000), backupName(NOW_MS)];
    for (const name of [old, `${old}.sha256`, recent, 'before-step-2-5.sqlite', 'notes.txt']) {
      writeFileSync(join(folder, name), '');
    }
    expect(removeExpired(folder)).toEqual([old]);
    expect(readdirSync(folder).toSorted()).toEqual(
      [recent, 'before-step-2-5.sqlite', 'notes.txt'].toSorted(),
    );
  });
});
