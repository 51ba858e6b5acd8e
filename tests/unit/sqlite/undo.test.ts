import { describe, expect, it } from 'vitest';
import type { RefusalCode } from '../../../src/core/user-error.ts';
import { type By, SYSTEM } from '../../../src/sqlite/ledger.ts';
import { asker, contentOf, openRecordBook } from '../../support/record-book.ts';

function start(standing: readonly string[] = []) {
  const { db, ledger } = openRecordBook(':memory:', standing);
  const write = (by: By, sql: string, said = sql) =>
    ledger.change(by, () => {
      db.exec(sql);
      return { value: null, said };
    }).changeId;
  return { db, ledger, write, sam: asker('Sam'), kim: asker('Kim') };
}

const refusal = (code: RefusalCode, words: string | RegExp): unknown =>
  expect.objectContaining({ name: 'UserError', code, message: expect.stringMatching(words) as unknown });

describe('undo', () => {
  it('takes back exactly what the change did', () => {
    const { db, ledger, write, sam } = start();
    write(sam(), "INSERT INTO shelf (name) VALUES ('left')");
    const before = contentOf(db);
    const moved = write(sam(), "UPDATE shelf SET name = 'top', load = 2.5", 'Shelf moved');
    expect(ledger.undo(sam(), moved)).toMatchObject({ said: 'Undone: Shelf moved', writes: 1 });
    expect(contentOf(db)).toEqual(before);
  });

  it('brings a deleted row back under its own number, with all that hung on it', () => {
    const { db, ledger, write, sam } = start();
    write(sam(), "INSERT INTO shelf (name) VALUES ('left'), ('right')");
    write(sam(), 'INSERT INTO item (shelf_id) VALUES (1), (1); INSERT INTO item (spare_of) VALUES (2)');
    const before = contentOf(db);
    const cleared = write(sam(), 'DELETE FROM shelf WHERE id = 1');
    ledger.undo(sam(), cleared);
    expect(contentOf(db)).toEqual(before);
  });

  it('can itself be undone, and so on', () => {
    const { db, ledger, write, sam } = start();
    const added = write(sam(), "INSERT INTO shelf (name) VALUES ('left')", 'Shelf put up');
    const after = contentOf(db);
    const undo = ledger.undo(sam(), added);
    const redo = ledger.undo(sam(), undo.changeId);
    expect(redo.said).toBe('Put back: Shelf put up');
    expect(contentOf(db)).toEqual(after);
    expect(ledger.undo(sam(), redo.changeId).said).toBe('Undone: Shelf put up');
    expect(contentOf(db)).toEqual([]);
  });

  it('is refused when somebody has changed a row since, and says who and what', () => {
    const { ledger, write, sam, kim } = start();
    const added = write(sam(), "INSERT INTO shelf (name) VALUES ('left')");
    write(kim(), "UPDATE shelf SET name = 'top'", 'Shelf renamed');
    expect(() => ledger.undo(sam(), added)).toThrow(refusal('changed-since', /Kim .*“Shelf renamed”/));
  });

  it('is possible again when the later change has been undone', () => {
    const { db, ledger, write, sam, kim } = start();
    const added = write(sam(), "INSERT INTO shelf (name) VALUES ('left')");
    ledger.undo(kim(), write(kim(), "UPDATE shelf SET name = 'top'"));
    ledger.undo(sam(), added);
    expect(contentOf(db)).toEqual([]);
  });

  it.each([
    [
      'a cascade would take it away',
      'INSERT INTO item (shelf_id) VALUES (1)',
      "INSERT INTO shelf (name) VALUES ('left')",
    ],
    [
      'a cascade would unhook it',
      'INSERT INTO item (spare_of) VALUES (1)',
      'INSERT INTO item (label) VALUES (NULL)',
    ],
    [
      'it would be left dangling',
      "INSERT INTO tag (item_id, word) VALUES (1, 'x')",
      'INSERT INTO item (label) VALUES (NULL)',
    ],
  ])('is refused when something hangs on the row since: %s', (_, later, first) => {
    const { db, ledger, write, sam, kim } = start();
    const added = write(sam(), first);
    write(kim(), later, 'Something hung on it');
    const before = contentOf(db);
    expect(() => ledger.undo(sam(), added)).toThrow(refusal('changed-since', /Kim .*“Something hung on it”/));
    expect(contentOf(db)).toEqual(before);
  });

  it('is refused when what the row needs is gone', () => {
    const { ledger, write, sam, kim } = start();
    write(sam(), "INSERT INTO shelf (name) VALUES ('left'); INSERT INTO item (shelf_id) VALUES (1)");
    const removed = write(sam(), 'DELETE FROM item');
    write(kim(), 'DELETE FROM shelf', 'Shelf taken down');
    expect(() => ledger.undo(sam(), removed)).toThrow(refusal('changed-since', /Kim .*“Shelf taken down”/));
  });

  it('is refused when a name that only one may have has been taken since', () => {
    const { ledger, write, sam, kim } = start();
    write(sam(), "INSERT INTO shelf (name) VALUES ('left')");
    const removed = write(sam(), 'DELETE FROM shelf');
    write(kim(), "INSERT INTO shelf (name) VALUES ('left')", 'Another left shelf');
    expect(() => ledger.undo(sam(), removed)).toThrow(refusal('changed-since', /Kim .*“Another left shelf”/));
  });

  it('restores names that were swapped, though only one row may have each', () => {
    const { db, ledger, write, sam } = start();
    write(sam(), "INSERT INTO shelf (name) VALUES ('a'), ('b')");
    const before = contentOf(db);
    const swapped = write(
      sam(),
      "UPDATE shelf SET name = '-' WHERE id = 1; UPDATE shelf SET name = 'a' WHERE id = 2; UPDATE shelf SET name = 'b' WHERE id = 1",
    );
    ledger.undo(sam(), swapped);
    expect(contentOf(db)).toEqual(before);
  });

  it('is refused a second time, naming who undid it', () => {
    const { ledger, write, sam } = start();
    const added = write(sam(), "INSERT INTO shelf (name) VALUES ('left')");
    ledger.undo(sam(), added);
    expect(() => ledger.undo(sam(), added)).toThrow(refusal('already-done', 'Sam has undone this already'));
  });

  it('refuses what another did, unless the caller lets the whole crew', () => {
    const { db, ledger, write, sam, kim } = start();
    const added = write(sam(), "INSERT INTO shelf (name) VALUES ('left')");
    expect(() => ledger.undo(kim(), added)).toThrow(refusal('not-yours', "Sam's to undo"));
    ledger.undo(kim(), added, 'crew');
    expect(contentOf(db)).toEqual([]);
  });

  it('lets anybody take back what the program did of itself', () => {
    const { db, ledger, write, kim } = start();
    const system = { interactionId: 'tick-1', personId: SYSTEM, personName: 'Chargehand', atMs: 0 };
    ledger.undo(kim(), write(system, "INSERT INTO shelf (name) VALUES ('left')"));
    expect(contentOf(db)).toEqual([]);
  });

  it.each([99, 1])('refuses a change that is not there or touched nothing: #%i', (changeId) => {
    const { ledger, write, sam } = start();
    write(sam(), 'SELECT 1');
    expect(() => ledger.undo(sam(), changeId)).toThrow(refusal('not-found', `no change #${changeId}`));
  });

  it('notices a row that was edited past the log, by another tool', () => {
    const { db, ledger, write, sam } = start();
    const added = write(sam(), "INSERT INTO shelf (name) VALUES ('left')");
    db.exec('DROP TRIGGER temp."log UPDATE shelf"');
    db.exec("UPDATE shelf SET name = 'top'");
    expect(() => ledger.undo(sam(), added)).toThrow(refusal('changed-since', 'the log does not say who'));
  });

  it('takes effect once when its own interaction is delivered twice', () => {
    const { ledger, write, sam } = start();
    const added = write(sam(), "INSERT INTO shelf (name) VALUES ('left')");
    const by = sam();
    const { changeId } = ledger.undo(by, added);
    expect(() => ledger.undo(by, added)).toThrow(expect.objectContaining({ name: 'AlreadyDone', changeId }));
  });

  it('offers the newest change of a person that is neither an undo nor undone', () => {
    const { ledger, write, sam, kim } = start();
    const first = write(sam(), "INSERT INTO shelf (name) VALUES ('left')");
    const second = write(sam(), "INSERT INTO shelf (name) VALUES ('right')");
    write(kim(), "INSERT INTO shelf (name) VALUES ('top')");
    expect(ledger.lastBy('sam')?.id).toBe(second);
    const undo = ledger.undo(sam(), second);
    expect(ledger.lastBy('sam')?.id).toBe(first);
    ledger.undo(sam(), undo.changeId);
    expect(ledger.lastBy('sam')?.id).toBe(second);
    expect(ledger.lastBy('nobody')).toBeNull();
  });
});

describe('a row of a standing table that a change opened on its way', () => {
  const FIRST =
    "INSERT INTO shelf (name) VALUES ('left'); INSERT INTO item (shelf_id, label) VALUES (1, 'first')";

  it('goes with the change while nothing else rests on it', () => {
    const { db, ledger, write, sam } = start(['shelf']);
    const first = write(sam(), FIRST);
    ledger.undo(sam(), first);
    expect(contentOf(db)).toEqual([]);
  });

  it('stays when somebody else has come to rest on it, and the rest is taken back and brought again', () => {
    const { db, ledger, write, sam, kim } = start(['shelf']);
    const first = write(sam(), FIRST, 'First put up');
    write(kim(), "INSERT INTO item (shelf_id, label) VALUES (1, 'second')");
    const before = contentOf(db);
    const undone = ledger.undo(sam(), first);
    expect(db.prepare('SELECT label FROM item').pluck().all()).toEqual(['second']);
    expect(db.prepare('SELECT name FROM shelf').pluck().all()).toEqual(['left']);
    ledger.undo(sam(), undone.changeId);
    expect(contentOf(db)).toEqual(before);
  });

  it('stays as somebody else has made it', () => {
    const { db, ledger, write, sam, kim } = start(['shelf']);
    const first = write(sam(), FIRST);
    write(kim(), "UPDATE shelf SET name = 'top'");
    ledger.undo(sam(), first);
    expect(db.prepare('SELECT name FROM shelf').pluck().all()).toEqual(['top']);
    expect(db.prepare('SELECT label FROM item').pluck().all()).toEqual([]);
  });

  it('keeps what it rests on itself', () => {
    const { db, ledger, write, sam, kim } = start(['shelf', 'item']);
    const first = write(sam(), `${FIRST}; INSERT INTO tag (item_id, word) VALUES (1, 'mine')`);
    write(kim(), "INSERT INTO tag (item_id, word) VALUES (1, 'theirs')");
    ledger.undo(sam(), first);
    expect(db.prepare('SELECT word FROM tag').pluck().all()).toEqual(['theirs']);
    expect(db.prepare('SELECT name FROM shelf').pluck().all()).toEqual(['left']);
  });

  it('is not undone by itself once others rest on it', () => {
    const { ledger, write, sam, kim } = start(['shelf']);
    const opened = write(sam(), "INSERT INTO shelf (name) VALUES ('left')");
    write(kim(), 'INSERT INTO item (shelf_id) VALUES (1)', 'Item laid there');
    expect(() => ledger.undo(sam(), opened)).toThrow(refusal('changed-since', /Kim .*“Item laid there”/));
  });
});
