/** How a rebuilt engine is run in: steps that fall due, ceilings that rise, what was found, and what was put off. */
export default {
  name: '0009-running-in',
  sql: `
    CREATE TABLE run_in_plan (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL UNIQUE REFERENCES build (id),
      name TEXT NOT NULL,
      origin TEXT NOT NULL CHECK (origin IN ('common practice', 'builder')),
      measure TEXT NOT NULL CHECK (measure IN ('km', 'h', 'days')),
      started_on TEXT NOT NULL,
      start_km REAL NOT NULL CHECK (start_km >= 0),
      start_h REAL NOT NULL CHECK (start_h >= 0),
      limit_rpm REAL CHECK (limit_rpm > 0),
      boost_kpa REAL CHECK (boost_kpa > 0)
    ) STRICT;

    CREATE TABLE run_in_step (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      plan_id INTEGER NOT NULL REFERENCES run_in_plan (id),
      what TEXT NOT NULL CHECK (length(what) BETWEEN 1 AND 200),
      hint TEXT,
      origin TEXT NOT NULL CHECK (origin IN ('common practice', 'builder')),
      due_km REAL CHECK (due_km >= 0),
      due_h REAL CHECK (due_h >= 0),
      due_days INTEGER CHECK (due_days >= 0),
      done_on TEXT,
      done_by_name TEXT,
      done_km REAL,
      done_h REAL,
      found TEXT,
      link TEXT,
      dropped INTEGER NOT NULL DEFAULT 0 CHECK (dropped IN (0, 1)),
      CHECK (due_km IS NOT NULL OR due_h IS NOT NULL OR due_days IS NOT NULL)
    ) STRICT;
    CREATE INDEX run_in_step_of_plan ON run_in_step (plan_id);

    CREATE TABLE run_in_snooze (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      step_id INTEGER NOT NULL REFERENCES run_in_step (id),
      due_km REAL,
      due_h REAL,
      due_days INTEGER,
      reason TEXT NOT NULL CHECK (length(reason) BETWEEN 1 AND 200),
      on_day TEXT NOT NULL,
      by_name TEXT NOT NULL,
      CHECK (due_km IS NOT NULL OR due_h IS NOT NULL OR due_days IS NOT NULL)
    ) STRICT;
    CREATE INDEX run_in_snooze_of_step ON run_in_snooze (step_id);

    CREATE TABLE run_in_ceiling (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      plan_id INTEGER NOT NULL REFERENCES run_in_plan (id),
      at REAL NOT NULL CHECK (at >= 0),
      speed_ratio REAL CHECK (speed_ratio > 0 AND speed_ratio <= 1),
      speed_rpm REAL CHECK (speed_rpm > 0),
      boost_ratio REAL CHECK (boost_ratio >= 0 AND boost_ratio <= 1),
      load TEXT NOT NULL,
      UNIQUE (plan_id, at)
    ) STRICT;
  `,
} as const;
