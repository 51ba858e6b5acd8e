import type { Database } from 'better-sqlite3';

/** One entry of the log. */
export interface Change {
  readonly id: number;
  readonly personId: string;
  readonly personName: string;
  readonly atMs: number;
  /** What the person was told: "Order #3 moved to Fri 4 Dec". */
  readonly said: string;
  /** The change that this one takes back, if it is an undo. */
  readonly undoes: number | null;
}

/** What one change did to one row; images are JSON objects, null where the row did not exist. */
export interface RowChange extends Change {
  readonly before: string | null;
  readonly after: string | null;
}

/** A row as it was before and after, in the log's order. */
export interface Step {
  readonly table: string;
  readonly rowId: number;
  readonly before: string | null;
  readonly after: string | null;
}

const CHANGE = `c.id, c.person_id AS personId, c.person_name AS personName, c.at_ms AS atMs, c.said, c.undoes`;
const TOUCHED = 'EXISTS (SELECT 1 FROM change_row r WHERE r.change_id = c.id)';

/** What can be asked of the log. */
export interface History {
  find(changeId: number): Change | null;
  byInteraction(interactionId: string): Change | null;
  steps(changeId: number): readonly Step[];
  /** The newest change of a row after the change `after` and, when given, before the change `before`. */
  lastOfRow(table: string, rowId: number, after: number, before?: number): Change | null;
  /** The undo that holds at present, or null when the change itself does: an undone undo counts for nothing. */
  undoneBy(changeId: number): Change | null;
  /** The newest change of a person that is neither an undo nor undone. */
  lastBy(personId: string): Change | null;
  ofRow(table: string, rowId: number): readonly RowChange[];
  recent(limit: number): readonly Change[];
}

export function openHistory(db: Database): History {
  const byId = db.prepare<[number], Change>(`SELECT ${CHANGE} FROM change c WHERE c.id = ?`);
  const byInteraction = db.prepare<[string], Change>(
    `SELECT ${CHANGE} FROM change c WHERE c.interaction_id = ?`,
  );
  const steps = db.prepare<[number], Step>(
    'SELECT table_name AS "table", row_id AS rowId, before, after FROM change_row WHERE change_id = ? ORDER BY id',
  );
  const lastOfRow = db.prepare<[string, number, number, number], Change>(
    `SELECT ${CHANGE} FROM change_row r JOIN change c ON c.id = r.change_id
     WHERE r.table_name = ? AND r.row_id = ? AND r.change_id > ? AND r.change_id < ? ORDER BY r.id DESC LIMIT 1`,
  );
  const undosOf = db.prepare<[number], Change>(
    `SELECT ${CHANGE} FROM change c WHERE c.undoes = ? ORDER BY c.id DESC`,
  );
  const doneBy = db.prepare<[string], Change>(
    `SELECT ${CHANGE} FROM change c WHERE c.person_id = ? AND c.undoes IS NULL AND ${TOUCHED} ORDER BY c.id DESC`,
  );
  const ofRow = db.prepare<[string, number], RowChange>(
    `SELECT ${CHANGE}, r.before, r.after FROM change_row r JOIN change c ON c.id = r.change_id
     WHERE r.table_name = ? AND r.row_id = ? ORDER BY r.id`,
  );
  const recent = db.prepare<[number], Change>(
    `SELECT ${CHANGE} FROM change c WHERE ${TOUCHED} ORDER BY c.id DESC LIMIT ?`,
  );

  function undoneBy(changeId: number): Change | null {
    return undosOf.all(changeId).find((undo) => undoneBy(undo.id) === null) ?? null;
  }

  return {
    find: (changeId) => byId.get(changeId) ?? null,
    byInteraction: (interactionId) => byInteraction.get(interactionId) ?? null,
    steps: (changeId) => steps.all(changeId),
    lastOfRow: (table, rowId, after, before = Number.MAX_SAFE_INTEGER) =>
      lastOfRow.get(table, rowId, after, before) ?? null,
    undoneBy,
    lastBy(personId) {
      for (const change of doneBy.iterate(personId)) if (undoneBy(change.id) === null) return change;
      return null;
    },
    ofRow: (table, rowId) => ofRow.all(table, rowId),
    recent: (limit) => recent.all(limit),
  };
}
