/** What a crew has said of its logger's columns, and the fuel table a build is driven on. */
export default {
  name: '0011-log-columns',
  sql: `
    CREATE TABLE log_header (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      fingerprint TEXT NOT NULL UNIQUE CHECK (length(fingerprint) BETWEEN 8 AND 64),
      roles TEXT NOT NULL CHECK (json_valid(roles)),
      told_by TEXT NOT NULL,
      told_on TEXT NOT NULL
    ) STRICT;

    CREATE TABLE fuel_table (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL UNIQUE REFERENCES build (id),
      load_axis_kpa TEXT CHECK (load_axis_kpa IS NULL OR json_valid(load_axis_kpa)),
      speed_axis_rpm TEXT CHECK (speed_axis_rpm IS NULL OR json_valid(speed_axis_rpm)),
      target TEXT,
      cap_ratio REAL CHECK (cap_ratio IS NULL OR cap_ratio > 0),
      fuel TEXT,
      scale TEXT CHECK (scale IN ('petrol', 'fuel'))
    ) STRICT;
  `,
} as const;
