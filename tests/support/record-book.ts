import { type By, type Ledger, openLedger } from '../../src/sqlite/ledger.ts';
import { migrations } from '../../src/sqlite/migrations/list.ts';
import { openDatabase } from '../../src/sqlite/open.ts';

type Database = ReturnType<typeof openDatabase>;

/** The change log's own schema and two small tables of no real record: enough to try every kind of value and key. */
const CHANGE_LOG = migrations.slice(0, 1);

export const RECORD_BOOK = [
  ...CHANGE_LOG,
  {
    name: '0002-record-book',
    sql: `
      CREATE TABLE shelf (
        id   INTEGER PRIMARY KEY AUTOINCREMENT,
        name TEXT NOT NULL UNIQUE,
        load REAL
      ) STRICT;
      CREATE TABLE item (
        id       INTEGER PRIMARY KEY AUTOINCREMENT,
        shelf_id INTEGER REFERENCES shelf (id) ON DELETE CASCADE,
        spare_of INTEGER REFERENCES item (id) ON DELETE SET NULL,
        label    TEXT,
        count    INTEGER,
        anything ANY
      ) STRICT;
      CREATE TABLE tag (
        id      INTEGER PRIMARY KEY AUTOINCREMENT,
        item_id INTEGER NOT NULL REFERENCES item (id),
        word    TEXT NOT NULL
      ) STRICT;
      CREATE TABLE scrap (id INTEGER PRIMARY KEY, text TEXT NOT NULL) STRICT;
    `,
  },
];

export interface RecordBook {
  readonly db: Database;
  readonly ledger: Ledger;
}

export function openRecordBook(path = ':memory:', standing: readonly string[] = []): RecordBook {
  const db = openDatabase(path, { migrations: RECORD_BOOK, nowMs: 0 });
  return { db, ledger: openLedger(db, { unrecorded: ['scrap'], standing }) };
}

/** Asks as one person, each time through a new interaction. */
export function asker(personName: string): () => By {
  let asked = 0;
  return () => {
    asked += 1;
    return {
      interactionId: `${personName}-${asked}`,
      personId: personName.toLowerCase(),
      personName,
      atMs: asked * 1000,
    };
  };
}

/** Every recorded value, exactly: `quote` tells 1 from 1.0 and text from BLOB. */
export function contentOf(db: Database): readonly string[] {
  return db
    .prepare<[], string>(
      `SELECT 'shelf ' || id || ' ' || quote(hex(name)) || ' ' || quote(load) AS line FROM shelf UNION ALL
       SELECT 'item ' || id || ' ' || quote(shelf_id) || ' ' || quote(spare_of) || ' ' || quote(hex(label)) || ' ' ||
         quote(count) || ' ' || typeof(anything) || ' ' || iif(typeof(anything) = 'text', hex(anything), quote(anything)) FROM item UNION ALL
       SELECT 'tag ' || id || ' ' || item_id || ' ' || quote(word) FROM tag ORDER BY line`,
    )
    .pluck()
    .all();
}
