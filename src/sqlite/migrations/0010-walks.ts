/** Searches for a fault, and what was found at each step of them. */
export default {
  name: '0010-walks',
  sql: `
    CREATE TABLE walk (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      symptom TEXT NOT NULL,
      came_from INTEGER REFERENCES walk (id),
      state TEXT NOT NULL CHECK (state IN ('open', 'left', 'finished')),
      started_by TEXT NOT NULL,
      started_at_ms INTEGER NOT NULL,
      left_by TEXT,
      cause TEXT,
      ended_by TEXT,
      ended_at_ms INTEGER,
      note TEXT,
      CHECK ((state = 'left') = (left_by IS NOT NULL)),
      CHECK ((state = 'finished') = (ended_by IS NOT NULL)),
      CHECK ((ended_by IS NULL) = (ended_at_ms IS NULL))
    ) STRICT;
    CREATE INDEX walk_of_build ON walk (build_id, state);

    CREATE TABLE walk_finding (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      walk_id INTEGER NOT NULL REFERENCES walk (id),
      round INTEGER NOT NULL CHECK (round > 0),
      step TEXT NOT NULL,
      outcome TEXT NOT NULL,
      note TEXT,
      by_name TEXT NOT NULL,
      at_ms INTEGER NOT NULL,
      first_outcome TEXT,
      UNIQUE (walk_id, round, step)
    ) STRICT;
  `,
} as const;
