import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { UserError } from '../../src/core/user-error.ts';
import { asker, contentOf, openRecordBook, type RecordBook } from '../support/record-book.ts';

/** Runs per law; `FC_RUNS` and `FC_SEED` explore further. */
const parameters = {
  numRuns: Number(process.env['FC_RUNS'] ?? 200),
  seed: Number(process.env['FC_SEED'] ?? 20261124),
};

const wholeNumber = fc.bigInt({ min: -(2n ** 63n), max: 2n ** 63n - 1n });
const real = fc.double({ noNaN: true });
const text = fc.string({
  unit: fc.oneof(fc.constantFrom('\u0000', '"', "'", '\\', '{', '\u2028', '𝛌'), fc.string({ maxLength: 1 })),
});
const blob = fc.uint8Array({ maxLength: 8 }).map((bytes) => Buffer.from(bytes));
const anything = fc.oneof(fc.constant(null), wholeNumber, real, text, blob);
const anId = fc.integer({ min: 1, max: 6 });
const orNull = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });

/** One statement with its values. Some break a constraint when run: then the whole change is taken back. */
type Statement = readonly [sql: string, ...values: readonly unknown[]];

const statement: fc.Arbitrary<Statement> = fc.oneof(
  fc.tuple(fc.constant('INSERT INTO shelf (name, load) VALUES (?, ?)'), text, orNull(real)),
  fc.tuple(
    fc.constant('INSERT OR REPLACE INTO shelf (name, load) VALUES (?, ?)'),
    fc.constantFrom('a', 'b'),
    real,
  ),
  fc.tuple(fc.constant('UPDATE shelf SET name = ? WHERE id = ?'), text, anId),
  fc.tuple(fc.constant('UPDATE shelf SET load = ? WHERE id <> ?'), orNull(real), anId),
  fc.tuple(fc.constant('DELETE FROM shelf WHERE id = ?'), anId),
  fc.tuple(
    fc.constant('INSERT INTO item (shelf_id, spare_of, label, count, anything) VALUES (?, ?, ?, ?, ?)'),
    orNull(anId),
    orNull(anId),
    orNull(text),
    orNull(wholeNumber),
    anything,
  ),
  fc.tuple(fc.constant('UPDATE item SET anything = ?, count = ? WHERE id >= ?'), anything, wholeNumber, anId),
  fc.tuple(
    fc.constant('UPDATE item SET shelf_id = ?, spare_of = ? WHERE id = ?'),
    orNull(anId),
    orNull(anId),
    anId,
  ),
  fc.tuple(fc.constant('DELETE FROM item WHERE id = ?'), anId),
  fc.tuple(fc.constant('INSERT INTO tag (item_id, word) VALUES (?, ?)'), anId, fc.constantFrom('x', 'y')),
  fc.tuple(fc.constant('DELETE FROM tag WHERE item_id = ?'), anId),
);
const work = fc.array(statement, { minLength: 1, maxLength: 6 });
const past = fc.array(work, { maxLength: 8 });

const sam = asker('Sam');

/** Runs the statements as one change; null when a constraint refused one, or when they changed nothing. */
function attempt({ db, ledger }: RecordBook, statements: readonly Statement[]): number | null {
  try {
    const done = ledger.change(sam(), () => {
      for (const [sql, ...values] of statements) db.prepare(sql).run(...values);
      return { value: null, said: `${statements.length} statements` };
    });
    return done.writes === 0 ? null : done.changeId;
  } catch (error) {
    if (error instanceof Error && /constraint failed/.test(error.message)) return null;
    throw error;
  }
}

function bookWith(changes: readonly (readonly Statement[])[]): { book: RecordBook; made: readonly number[] } {
  const book = openRecordBook();
  const made = changes.map((statements) => attempt(book, statements)).filter((id) => id !== null);
  return { book, made };
}

/** The beginnings of the lines that `contentOf` has for the rows a change touched. */
function rowsOf({ db }: RecordBook, changeId: number): readonly string[] {
  return db
    .prepare<[number], string>(
      "SELECT DISTINCT table_name || ' ' || row_id || ' ' FROM change_row WHERE change_id = ?",
    )
    .pluck()
    .all(changeId);
}

function linesAbout(rows: readonly string[], content: readonly string[], not?: 'not'): readonly string[] {
  return content.filter((line) => rows.some((row) => line.startsWith(row)) === (not === undefined));
}

describe('the change log, whatever is written', () => {
  it('takes a change back to the letter, and puts it back to the letter', () => {
    let tried = 0;
    fc.assert(
      fc.property(past, work, (earlier, statements) => {
        const { book } = bookWith(earlier);
        const before = contentOf(book.db);
        const changeId = attempt(book, statements);
        const after = contentOf(book.db);
        if (changeId === null) {
          expect(after).toEqual(before);
          return;
        }
        tried += 1;
        const undo = book.ledger.undo(sam(), changeId);
        expect(contentOf(book.db)).toEqual(before);
        book.ledger.undo(sam(), undo.changeId);
        expect(contentOf(book.db)).toEqual(after);
      }),
      parameters,
    );
    expect(tried).toBeGreaterThan(parameters.numRuns / 4);
  });

  it('can be walked back to the empty book, newest first', () => {
    fc.assert(
      fc.property(past, (changes) => {
        const { book, made } = bookWith(changes);
        for (const changeId of made.toReversed()) book.ledger.undo(sam(), changeId);
        expect(contentOf(book.db)).toEqual([]);
      }),
      parameters,
    );
  });

  it('undoes an older change only while every row it touched is as it left it, and else changes nothing', () => {
    let refused = 0;
    let done = 0;
    fc.assert(
      fc.property(fc.array(work, { minLength: 4, maxLength: 8 }), fc.nat(), (changes, pick) => {
        const book = openRecordBook();
        const made = changes.flatMap((statements) => {
          const id = attempt(book, statements);
          return id === null ? [] : [{ id, content: contentOf(book.db) }];
        });
        const chosen = made[pick % Math.max(made.length, 1)];
        if (chosen === undefined) return;
        const before = contentOf(book.db);
        const touched = rowsOf(book, chosen.id);
        try {
          book.ledger.undo(sam(), chosen.id);
          done += 1;
          expect(linesAbout(touched, before)).toEqual(linesAbout(touched, chosen.content));
          expect(linesAbout(touched, contentOf(book.db), 'not')).toEqual(linesAbout(touched, before, 'not'));
        } catch (error) {
          if (!(error instanceof UserError)) throw error;
          refused += 1;
          expect(error).toMatchObject({
            code: 'changed-since',
            message: expect.stringContaining('Sam') as unknown,
          });
          expect(chosen.id).not.toBe(made.at(-1)?.id);
          expect(contentOf(book.db)).toEqual(before);
        }
      }),
      parameters,
    );
    expect(Math.min(refused, done)).toBeGreaterThan(parameters.numRuns / 20);
  });

  it('lets every row be told from its history alone', () => {
    fc.assert(
      fc.property(past, (changes) => {
        const { book } = bookWith(changes);
        for (const table of ['shelf', 'item', 'tag']) {
          const live = book.db.prepare<[], number>(`SELECT id FROM ${table} ORDER BY id`).pluck().all();
          const told = book.db
            .prepare<[string], number>(
              `SELECT row_id FROM change_row r WHERE table_name = ? AND after IS NOT NULL
                 AND id = (SELECT max(id) FROM change_row s WHERE s.table_name = r.table_name AND s.row_id = r.row_id)
               ORDER BY row_id`,
            )
            .pluck()
            .all(table);
          expect(told).toEqual(live);
        }
      }),
      parameters,
    );
  });
});
