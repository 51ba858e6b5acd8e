import { asker, contentOf, openRecordBook, type RecordBook } from './record-book.ts';

/**
 * A fixed run of changes through the real ledger, of every kind: insert, update, delete with cascade, several rows at
 * once, undo. Change n is the same whenever and by whomever it is run, and gets the number n.
 */
export function makeChange({ db, ledger }: RecordBook, n: number): number {
  const by = { ...asker('Sam')(), interactionId: `interaction ${n}`, atMs: n };
  if (n % 7 === 0) return ledger.undo(by, n - 1).changeId;
  return ledger.change(by, () => {
    db.prepare('INSERT INTO shelf (name, load) VALUES (?, ?)').run(
      `shelf ${n} ${'x'.repeat((n * 37) % 900)}`,
      n / 8,
    );
    if (n % 3 === 0)
      db.prepare('INSERT INTO item (shelf_id, count) SELECT id, ? FROM shelf ORDER BY id LIMIT 3').run(n);
    if (n % 5 === 0) db.prepare('UPDATE item SET label = ? WHERE id % 3 = 0').run(`label ${n}`);
    if (n > 20) db.prepare('DELETE FROM shelf WHERE id IN (SELECT min(id) FROM shelf)').run();
    return { value: null, said: `change ${n}` };
  }).changeId;
}

/** What the records hold after change n; worked out in memory, as far as asked. */
export type Contents = (n: number) => readonly string[];

export function workedOutContents(): Contents {
  const book = openRecordBook();
  const contents = [contentOf(book.db)];
  return (n) => {
    while (contents.length <= n) {
      makeChange(book, contents.length);
      contents.push(contentOf(book.db));
    }
    return contents[n] ?? [];
  };
}

/**
 * Opens what a crash has left, as the program would, and checks all of it.
 * @returns the number of the last change it holds
 * @throws Error when it is damaged, or holds anything but what stood after exactly that many changes
 */
export function lastWholeChange(path: string, contents: Contents): number {
  const { db } = openRecordBook(path);
  try {
    const structure = db.pragma('integrity_check', { simple: true });
    if (structure !== 'ok') throw new Error(`damaged: ${String(structure)}`);
    if (JSON.stringify(db.pragma('foreign_key_check')) !== '[]') throw new Error('foreign keys dangle');
    const last = db.prepare<[], number>('SELECT coalesce(max(id), 0) FROM change').pluck().get() ?? 0;
    if (contentOf(db).join('\n') !== contents(last).join('\n'))
      throw new Error(`not as after change ${last}`);
    return last;
  } finally {
    db.close();
  }
}
