const CONDITIONS = `
      place TEXT,
      speed_rpm REAL,
      temperature_c REAL,
      boost_kpa REAL,
      fuel TEXT,
      states TEXT NOT NULL DEFAULT '',`;

/** What was measured on a build and under which conditions, the crew's own kinds, and the limits the crew goes by. */
export default {
  name: '0008-readings',
  sql: `
    CREATE TABLE reading (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      kind TEXT NOT NULL CHECK (length(kind) BETWEEN 1 AND 60),
      value REAL NOT NULL,
      unit TEXT NOT NULL,
      shown_in TEXT NOT NULL,
      typed TEXT NOT NULL,${CONDITIONS}
      taken_at_ms INTEGER NOT NULL,
      by_name TEXT NOT NULL,
      note TEXT,
      link TEXT,
      first_value REAL,
      set_id INTEGER
    ) STRICT;
    CREATE INDEX reading_series ON reading
      (build_id, kind, taken_at_ms, id, value, place, speed_rpm, temperature_c, boost_kpa, fuel, states);
    CREATE INDEX reading_by_time ON reading (build_id, taken_at_ms, id);

    CREATE TABLE reading_kind (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
      unit TEXT NOT NULL CHECK (length(unit) BETWEEN 1 AND 20),
      UNIQUE (build_id, name)
    ) STRICT;

    CREATE TABLE reading_limit (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      kind TEXT NOT NULL,
      min REAL,
      max REAL,${CONDITIONS}
      origin TEXT NOT NULL CHECK (origin IN ('maker', 'crew')),
      typed TEXT NOT NULL,
      by_name TEXT NOT NULL,
      set_on TEXT NOT NULL,
      CHECK (min IS NOT NULL OR max IS NOT NULL)
    ) STRICT;
    CREATE INDEX reading_limit_of_build ON reading_limit (build_id, kind);
  `,
} as const;
