import type { Database } from 'better-sqlite3';
import { AlreadyDone } from '../core/already-done.ts';
import { type Disagreement, disagreements } from './audit.ts';
import { type Change, type History, openHistory, type RowChange } from './history.ts';
import { inPlainWords } from './in-plain-words.ts';
import { type RecordedTable, recordedTables } from './recorded-tables.ts';
import { installTriggers } from './triggers.ts';
import { openUndo } from './undo.ts';

/** Who asks for a change, through which interaction, and when. What the program does of itself is by SYSTEM. */
export interface By {
  readonly interactionId: string;
  readonly personId: string;
  readonly personName: string;
  readonly atMs: number;
}

/** The person id of what the program does of itself, such as the scheduler's changes. */
export const SYSTEM = 'chargehand';

interface Done {
  readonly changeId: number;
  readonly said: string;
  /** How many writes to recorded rows the change holds; with 0 there is nothing to undo and no history shows it. */
  readonly writes: number;
}

/** The only way to write records: all of a change or nothing, once per interaction, logged by the database itself. */
export interface Ledger {
  /**
   * Runs `work` in one transaction and logs every row it touches. `work` is synchronous; a throw takes everything back.
   * @throws AlreadyDone without running `work`, when this interaction took effect before.
   * @throws StoreProblem when the disk is full, read-only or in use; nothing was saved.
   */
  change<T>(by: By, work: () => { value: T; said: string }): Done & { readonly value: T };
  /**
   * Puts back every row that a change touched, as a new change that can itself be undone. The person's own changes and
   * the program's; those of the whole crew with `reach` 'crew'.
   * @throws UserError 'not-found', 'not-yours', 'already-done', or 'changed-since' naming who changed what since.
   */
  undo(by: By, changeId: number, reach?: 'own' | 'crew'): Done;
  /** The newest change of a person that can still be undone; undos themselves do not count. */
  lastBy(personId: string): Change | null;
  /** Everything that happened to a row, oldest first. */
  history(table: string, rowId: number): readonly RowChange[];
  /** The newest changes, newest first. */
  recent(limit: number): readonly Change[];
  /** What is recorded: every table but the unrecorded ones. */
  readonly tables: readonly RecordedTable[];
  /** Every record that is not as the log left it; empty when all is well. Reads the whole file. */
  audit(): readonly Disagreement[];
}

export interface LedgerParts {
  /** Bookkeeping that is not the crew's record, is not restored by an undo, and may be written without a change. */
  readonly unrecorded: readonly string[];
  /** Tables whose rows outlive the change that opened them once others rest on them. */
  readonly standing?: readonly string[];
}

/** Starts logging on this connection. Every table is recorded but the `unrecorded` ones. */
export function openLedger(db: Database, { unrecorded, standing = [] }: LedgerParts): Ledger {
  const tables = recordedTables(db, unrecorded);
  installTriggers(db, tables);
  const history = openHistory(db);
  const record = openRecorder(db, history);
  const undoWork = openUndo(db, tables, history, standing);
  return {
    change: (by, work) => record(by, null, work),
    undo(by, changeId, reach = 'own') {
      const anyones = reach === 'crew' ? null : [by.personId, SYSTEM];
      const { changeId: id, said, writes } = record(by, changeId, () => undoWork(changeId, anyones));
      return { changeId: id, said, writes };
    },
    lastBy: history.lastBy,
    history: history.ofRow,
    recent: history.recent,
    tables,
    audit: () => disagreements(db, tables),
  };
}

type Recorder = <T>(
  by: By,
  undoes: number | null,
  work: () => { value: T; said: string },
) => Done & { value: T };

function openRecorder(db: Database, history: History): Recorder {
  const begin = db.prepare<[By]>(
    `INSERT INTO change (interaction_id, person_id, person_name, at_ms, said)
     VALUES (@interactionId, @personId, @personName, @atMs, '')`,
  );
  const openChange = db.prepare<[number]>('INSERT INTO temp.open_change (id) VALUES (?)');
  const closeChange = db.prepare('DELETE FROM temp.open_change');
  const finish = db.prepare<[string, number | null, number]>(
    'UPDATE change SET said = ?, undoes = ? WHERE id = ?',
  );
  const writes = db.prepare<[number], number>('SELECT count(*) FROM change_row WHERE change_id = ?').pluck();

  return (by, undoes, work) => {
    if (db.inTransaction) throw new Error('a change cannot be opened inside another transaction');
    const whole = db.transaction(() => {
      const first = history.byInteraction(by.interactionId);
      if (first !== null) throw new AlreadyDone(first.id, first.said);
      const changeId = Number(begin.run(by).lastInsertRowid);
      openChange.run(changeId);
      const { value, said } = work();
      closeChange.run();
      finish.run(said, undoes, changeId);
      return { value, said, changeId, writes: writes.get(changeId) ?? 0 };
    });
    try {
      return whole.immediate();
    } catch (error) {
      throw inPlainWords(error);
    }
  };
}
