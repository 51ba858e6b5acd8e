/** What is filled with what, the bottles on the shelf, and every litre poured in or drained out. */
export default {
  name: '0007-fluids',
  sql: `
    CREATE TABLE fluid_case (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 80),
      grade TEXT NOT NULL CHECK (length(grade) BETWEEN 1 AND 80),
      capacity_l REAL NOT NULL CHECK (capacity_l > 0),
      note TEXT,
      UNIQUE (build_id, name)
    ) STRICT;

    CREATE TABLE bottle (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      grade TEXT NOT NULL CHECK (length(grade) BETWEEN 1 AND 80),
      size_l REAL NOT NULL CHECK (size_l > 0),
      left_l REAL NOT NULL CHECK (left_l >= 0 AND left_l <= size_l),
      bought_on TEXT NOT NULL,
      opened_on TEXT
    ) STRICT;
    CREATE INDEX bottle_of_build ON bottle (build_id, grade);

    CREATE TABLE fluid_move (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      case_id INTEGER NOT NULL REFERENCES fluid_case (id),
      kind TEXT NOT NULL CHECK (kind IN ('poured', 'drained')),
      grade TEXT NOT NULL,
      volume_l REAL NOT NULL CHECK (volume_l >= 0),
      from_shelf_l REAL NOT NULL CHECK (from_shelf_l BETWEEN 0 AND volume_l),
      in_after_l REAL NOT NULL CHECK (in_after_l >= 0),
      moved_on TEXT NOT NULL,
      by_name TEXT NOT NULL,
      distance_km REAL,
      note TEXT,
      CHECK (kind = 'poured' OR from_shelf_l = 0)
    ) STRICT;
    CREATE INDEX fluid_move_of_case ON fluid_move (case_id);
  `,
} as const;
