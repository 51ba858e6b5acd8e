/**
 * What was done only for now, and the stages of a build with their conditions, their passes and what people said. Passes name their
 * stage by its key and a yes its condition by its number, both of which are the same before and after a build has stages of
 * its own written down.
 */
export default {
  name: '0006-measures-and-stages',
  sql: `
    CREATE TABLE measure (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      what TEXT NOT NULL CHECK (length(what) BETWEEN 1 AND 200),
      put_on TEXT NOT NULL,
      put_by TEXT NOT NULL,
      until TEXT,
      part_id INTEGER,
      job_id INTEGER,
      answers TEXT NOT NULL CHECK (json_valid(answers)),
      required_at TEXT,
      undone_before TEXT,
      undone_on TEXT,
      undone_by TEXT,
      note TEXT,
      CHECK ((undone_on IS NULL) = (undone_by IS NULL))
    ) STRICT;
    CREATE INDEX measure_of_build ON measure (build_id, undone_on);

    CREATE TABLE stage (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      key TEXT NOT NULL CHECK (length(key) BETWEEN 1 AND 40),
      name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 80),
      rank INTEGER NOT NULL,
      UNIQUE (build_id, key)
    ) STRICT;

    CREATE TABLE stage_condition (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      stage_id INTEGER NOT NULL REFERENCES stage (id),
      body TEXT NOT NULL CHECK (json_valid(body)),
      starting_number INTEGER,
      dropped INTEGER NOT NULL DEFAULT 0 CHECK (dropped IN (0, 1))
    ) STRICT;
    CREATE INDEX stage_condition_of_stage ON stage_condition (stage_id);

    CREATE TABLE stage_said (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      condition INTEGER NOT NULL,
      said_on TEXT NOT NULL,
      by_name TEXT NOT NULL,
      lapsed TEXT
    ) STRICT;
    CREATE INDEX stage_said_of_build ON stage_said (build_id, condition);

    CREATE TABLE stage_pass (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      stage TEXT NOT NULL,
      passed_on TEXT NOT NULL,
      by_name TEXT NOT NULL,
      reason TEXT,
      against TEXT NOT NULL CHECK (json_valid(against)),
      rests_on TEXT NOT NULL CHECK (json_valid(rests_on)),
      reopened_on TEXT,
      reopened_by TEXT,
      CHECK ((reopened_on IS NULL) = (reopened_by IS NULL))
    ) STRICT;
    CREATE INDEX stage_pass_of_build ON stage_pass (build_id, stage);
  `,
} as const;
