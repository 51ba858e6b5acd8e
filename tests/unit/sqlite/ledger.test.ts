import { describe, expect, it } from 'vitest';
import { AlreadyDone } from '../../../src/core/already-done.ts';
import { asker, contentOf, openRecordBook } from '../../support/record-book.ts';

function start() {
  const { db, ledger } = openRecordBook();
  const addShelf = (name: string) => () => {
    const id = Number(db.prepare('INSERT INTO shelf (name) VALUES (?)').run(name).lastInsertRowid);
    return { value: id, said: `Shelf ${name} put up` };
  };
  return { db, ledger, addShelf, sam: asker('Sam'), kim: asker('Kim') };
}

describe('a change', () => {
  it('returns its value, what was said and the number of its log entry', () => {
    const { ledger, addShelf, sam } = start();
    expect(ledger.change(sam(), addShelf('left'))).toEqual({
      value: 1,
      said: 'Shelf left put up',
      changeId: 1,
      writes: 1,
    });
  });

  it('takes effect once when its interaction is delivered twice, and says again what it said', () => {
    const { db, ledger, addShelf, sam } = start();
    const by = sam();
    ledger.change(by, addShelf('left'));
    const again = () => ledger.change(by, addShelf('right'));
    expect(again).toThrow(AlreadyDone);
    expect(again).toThrow(expect.objectContaining({ changeId: 1, said: 'Shelf left put up' }));
    expect(contentOf(db)).toHaveLength(1);
  });

  it('leaves nothing behind when its work throws, so that the interaction may be tried again', () => {
    const { db, ledger, addShelf, sam } = start();
    const by = sam();
    const failing = () =>
      ledger.change(by, () => {
        addShelf('left')();
        throw new Error('second thoughts');
      });
    expect(failing).toThrow('second thoughts');
    expect(contentOf(db)).toEqual([]);
    expect(ledger.recent(10)).toEqual([]);
    expect(ledger.change(by, addShelf('left')).writes).toBe(1);
  });

  it('counts no writes and shows in no history when it leaves every row as it was', () => {
    const { db, ledger, addShelf, sam } = start();
    ledger.change(sam(), addShelf('left'));
    const idle = ledger.change(sam(), () => {
      db.exec("UPDATE shelf SET name = 'left'");
      db.exec("INSERT INTO scrap (text) VALUES ('bookkeeping')");
      return { value: null, said: 'Nothing to change' };
    });
    expect(idle.writes).toBe(0);
    expect(ledger.recent(10).map((change) => change.id)).toEqual([1]);
    expect(ledger.lastBy('sam')?.id).toBe(1);
  });

  it('cannot be opened inside another', () => {
    const { ledger, addShelf, sam } = start();
    const nested = () =>
      ledger.change(sam(), () => ({ value: ledger.change(sam(), addShelf('left')), said: 'nested' }));
    expect(nested).toThrow('a change cannot be opened inside another transaction');
  });
});

describe('the log', () => {
  it.each(["INSERT INTO shelf (name) VALUES ('x')", "UPDATE shelf SET name = 'x'", 'DELETE FROM shelf'])(
    'refuses a write outside a change: %s',
    (sql) => {
      const { db, ledger, addShelf, sam } = start();
      ledger.change(sam(), addShelf('left'));
      expect(() => db.exec(sql)).toThrow('shelf was written outside a change');
      expect(contentOf(db)).toHaveLength(1);
    },
  );

  it('lets unrecorded tables be written outside a change', () => {
    const { db } = start();
    expect(db.prepare("INSERT INTO scrap (text) VALUES ('x')").run().changes).toBe(1);
  });

  it('sees the row that a REPLACE removes', () => {
    const { db, ledger, addShelf, sam } = start();
    ledger.change(sam(), addShelf('left'));
    const replaced = ledger.change(sam(), () => {
      db.exec("INSERT OR REPLACE INTO shelf (name, load) VALUES ('left', 5)");
      return { value: null, said: 'replaced' };
    });
    expect(replaced.writes).toBe(2);
    expect(ledger.history('shelf', 1).at(-1)).toMatchObject({ said: 'replaced', after: null });
  });

  it('sees the rows that a cascade removes and unhooks', () => {
    const { db, ledger, addShelf, sam } = start();
    ledger.change(sam(), addShelf('left'));
    ledger.change(sam(), () => {
      db.exec('INSERT INTO item (shelf_id) VALUES (1); INSERT INTO item (spare_of) VALUES (1)');
      return { value: null, said: 'two items' };
    });
    const cleared = ledger.change(sam(), () => {
      db.exec('DELETE FROM shelf');
      return { value: null, said: 'cleared' };
    });
    expect(cleared.writes).toBe(3);
    expect(ledger.history('item', 2).at(-1)?.after).toContain('"spare_of":null');
  });

  it('refuses to change the id of a row', () => {
    const { db, ledger, addShelf, sam } = start();
    ledger.change(sam(), addShelf('left'));
    const renumber = () =>
      ledger.change(sam(), () => {
        db.exec('UPDATE shelf SET id = 7');
        return { value: null, said: 'renumbered' };
      });
    expect(renumber).toThrow('the id of a row of shelf never changes');
  });

  it('tells the history of a row, oldest first, with who and what it was', () => {
    const { db, ledger, addShelf, sam, kim } = start();
    ledger.change(sam(), addShelf('left'));
    ledger.change(kim(), () => {
      db.exec("UPDATE shelf SET name = 'top'");
      return { value: null, said: 'Shelf renamed' };
    });
    expect(ledger.history('shelf', 1)).toEqual([
      expect.objectContaining({
        personName: 'Sam',
        before: null,
        after: '{"id":1,"name":"left","load":null}',
      }),
      expect.objectContaining({
        personName: 'Kim',
        said: 'Shelf renamed',
        after: '{"id":1,"name":"top","load":null}',
      }),
    ]);
  });
});
