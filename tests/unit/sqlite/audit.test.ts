import { describe, expect, it } from 'vitest';
import { openRecordBook } from '../../support/record-book.ts';
import { makeChange } from '../../support/workload.ts';

function bookOf(changes: number) {
  const book = openRecordBook();
  for (let n = 1; n <= changes; n += 1) makeChange(book, n);
  return book;
}

describe('the audit', () => {
  it('finds nothing where every write went through the log, undos and cascades too', () => {
    expect(bookOf(60).ledger.audit()).toEqual([]);
  });

  it('finds a value changed, a row removed and a row added past the log', () => {
    const { db, ledger } = bookOf(5);
    for (const event of ['INSERT', 'UPDATE', 'DELETE']) db.exec(`DROP TRIGGER temp."log ${event} shelf"`);
    db.exec(
      "UPDATE shelf SET load = load + 1e-9 WHERE id = 2; DELETE FROM shelf WHERE id = 4; INSERT INTO shelf (name) VALUES ('new')",
    );
    expect(ledger.audit()).toEqual([
      { table: 'shelf', rowId: 2, how: 'differs' },
      { table: 'shelf', rowId: 4, how: 'gone' },
      { table: 'shelf', rowId: 6, how: 'unknown' },
    ]);
  });
});
