import type { Migration } from '../migrate.ts';

/**
 * Who changed what, when, and every row it touched as it was before and after. The rows of `change_row` are written by
 * triggers alone (see `recorded-tables.ts`); images are JSON objects, one key per column.
 */
const migration: Migration = {
  name: '0001-change-log',
  sql: `
    CREATE TABLE change (
      id             INTEGER PRIMARY KEY AUTOINCREMENT,
      interaction_id TEXT    NOT NULL UNIQUE,
      person_id      TEXT    NOT NULL,
      person_name    TEXT    NOT NULL,
      at_ms          INTEGER NOT NULL,
      said           TEXT    NOT NULL,
      undoes         INTEGER REFERENCES change (id)
    ) STRICT;
    CREATE INDEX change_by_person ON change (person_id, id);
    CREATE INDEX change_by_undone ON change (undoes) WHERE undoes IS NOT NULL;

    CREATE TABLE change_row (
      id         INTEGER PRIMARY KEY,
      change_id  INTEGER NOT NULL REFERENCES change (id),
      table_name TEXT    NOT NULL,
      row_id     INTEGER NOT NULL,
      before     TEXT    CHECK (json_valid(before)),
      after      TEXT    CHECK (json_valid(after)),
      CHECK (before IS NOT NULL OR after IS NOT NULL)
    ) STRICT;
    CREATE INDEX change_row_by_change ON change_row (change_id);
    CREATE INDEX change_row_by_row    ON change_row (table_name, row_id, id);
  `,
};

export default migration;
