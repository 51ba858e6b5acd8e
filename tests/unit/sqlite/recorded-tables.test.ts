import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../src/sqlite/ledger.ts';
import { openDatabase } from '../../../src/sqlite/open.ts';
import { asker, RECORD_BOOK } from '../../support/record-book.ts';

function bookWith(sql: string, unrecorded: readonly string[] = []) {
  const migrations = [...RECORD_BOOK, { name: '0003-more', sql }];
  const db = openDatabase(':memory:', { migrations, nowMs: 0 });
  return { db, start: () => openLedger(db, { unrecorded }) };
}

describe('the change log refuses to start, for the developer to see,', () => {
  it.each([
    ['without an id', 'CREATE TABLE odd (word TEXT PRIMARY KEY) STRICT', 'has no INTEGER PRIMARY KEY'],
    [
      'with an id of two columns',
      'CREATE TABLE odd (a INTEGER, b INTEGER, PRIMARY KEY (a, b)) STRICT',
      'has no INTEGER PRIMARY KEY',
    ],
    [
      'without row ids',
      'CREATE TABLE odd (id INTEGER PRIMARY KEY) STRICT, WITHOUT ROWID',
      'is virtual or WITHOUT ROWID',
    ],
    ['that is virtual', 'CREATE VIRTUAL TABLE odd USING fts5 (word)', 'is virtual or WITHOUT ROWID'],
    [
      'with a name that would need quoting',
      'CREATE TABLE odd (id INTEGER PRIMARY KEY, "it\'s" TEXT) STRICT',
      "has a name that is not a plain word: it's",
    ],
    [
      'with a foreign key of two columns',
      `CREATE TABLE pair (id INTEGER PRIMARY KEY, a TEXT, b TEXT, UNIQUE (a, b)) STRICT;
       CREATE TABLE odd (id INTEGER PRIMARY KEY, a TEXT, b TEXT, FOREIGN KEY (a, b) REFERENCES pair (a, b)) STRICT`,
      'has a foreign key of several columns',
    ],
  ])('over a table %s', (_, sql, why) => {
    expect(bookWith(sql).start).toThrow(`table odd ${why}`);
  });

  it('over an unrecorded table that does not exist', () => {
    expect(bookWith('', ['scrap', 'outbxo']).start).toThrow('no such table to leave unrecorded: outbxo');
  });
});

describe('a table that the log could not record', () => {
  it('may be left unrecorded', () => {
    const { db, start } = bookWith('CREATE TABLE odd (word TEXT PRIMARY KEY) STRICT', ['odd']);
    start();
    expect(db.prepare("INSERT INTO odd VALUES ('x')").run().changes).toBe(1);
  });
});

describe('a change made before the schema changed', () => {
  /** Adds a shelf and takes it away again, then migrates the same file, as the next version of the program would. */
  function acrossMigration(sql: string) {
    const before = openDatabase(':memory:', { migrations: RECORD_BOOK, nowMs: 0 });
    const ledger = openLedger(before, { unrecorded: ['scrap'] });
    const sam = asker('Sam');
    const run = (statement: string) =>
      ledger.change(sam(), () => {
        before.exec(statement);
        return { value: null, said: statement };
      }).changeId;
    run("INSERT INTO shelf (name, load) VALUES ('left', 2), ('right', 3)");
    const renamed = run("UPDATE shelf SET name = 'top' WHERE id = 2");
    const removed = run('DELETE FROM shelf WHERE id = 1');
    const db = new Database(before.serialize());
    db.exec(sql);
    return { db, ledger: openLedger(db, { unrecorded: ['scrap'] }), sam: asker('Later'), renamed, removed };
  }

  it('can be undone when columns were only added; they keep their value or take their default', () => {
    const { db, ledger, sam, renamed, removed } = acrossMigration(
      "ALTER TABLE shelf ADD COLUMN place TEXT DEFAULT 'wall'; UPDATE shelf SET place = 'floor' WHERE id = 2",
    );
    ledger.undo(sam(), removed, 'crew');
    ledger.undo(sam(), renamed, 'crew');
    expect(db.prepare('SELECT id, name, load, place FROM shelf ORDER BY id').raw().all()).toEqual([
      [1, 'left', 2, 'wall'],
      [2, 'right', 3, 'floor'],
    ]);
    expect(ledger.audit()).toEqual([]);
  });

  it.each(['ALTER TABLE shelf DROP COLUMN load', 'ALTER TABLE shelf RENAME TO board'])(
    'is not undone when something of it has gone: %s',
    (sql) => {
      const { ledger, sam, removed } = acrossMigration(sql);
      expect(() => ledger.undo(sam(), removed, 'crew')).toThrow(
        'an update of the program has rebuilt these records',
      );
    },
  );
});

describe('a parent’s column that children follow', () => {
  it('is not set back when a child of later date would follow it', () => {
    const { db, start } = bookWith(
      `CREATE TABLE kind (id INTEGER PRIMARY KEY AUTOINCREMENT, word TEXT NOT NULL UNIQUE) STRICT;
       CREATE TABLE part (id INTEGER PRIMARY KEY AUTOINCREMENT, word TEXT REFERENCES kind (word) ON UPDATE CASCADE) STRICT`,
      ['scrap'],
    );
    const ledger = start();
    const [sam, kim] = [asker('Sam'), asker('Kim')];
    const run = (by: ReturnType<typeof sam>, sql: string) =>
      ledger.change(by, () => {
        db.exec(sql);
        return { value: null, said: sql };
      }).changeId;
    run(sam(), "INSERT INTO kind (word) VALUES ('a')");
    const reworded = run(sam(), "UPDATE kind SET word = 'b'");
    run(kim(), "INSERT INTO part (word) VALUES ('b')");
    expect(() => ledger.undo(sam(), reworded)).toThrow('Kim has changed this since: “INSERT INTO part');
    expect(db.prepare('SELECT word FROM part').pluck().all()).toEqual(['b']);
  });
});
