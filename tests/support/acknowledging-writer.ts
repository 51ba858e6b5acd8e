import { writeSync } from 'node:fs';
import { openRecordBook } from './record-book.ts';
import { makeChange } from './workload.ts';

/**
 * Makes changes one after the other and prints `ack n` when the ledger has said that change n is saved. Small
 * checkpoints and a second opening half-way bring every kind of write of the file about.
 */
const [path = '', count = '0', synchronous = 'FULL'] = process.argv.slice(2);
const total = Number(count);

let next = 1;
for (const until of [Math.ceil(total / 2), total]) {
  const book = openRecordBook(path);
  book.db.pragma('wal_autocheckpoint = 20');
  book.db.pragma(`synchronous = ${synchronous}`);
  next = 1 + (book.db.prepare<[], number>('SELECT coalesce(max(id), 0) FROM change').pluck().get() ?? 0);
  for (; next <= until; next += 1) writeSync(1, `ack ${makeChange(book, next)}\n`);
  book.db.close();
}
