/**
 * Work to be done on a build, what each piece of it needs first, and when the crew works. Parts and fluids are named by
 * number alone: what is not there any more is told to the crew rather than refused by the file.
 */
export default {
  name: '0005-jobs',
  sql: `
    CREATE TABLE job (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
      -- the key it has in the starting set; null for the crew's own
      set_key TEXT,
      stage TEXT,
      system TEXT,
      minutes_least REAL,
      minutes_likely REAL,
      minutes_most REAL,
      people INTEGER NOT NULL DEFAULT 1 CHECK (people BETWEEN 1 AND 20),
      tools TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(tools)),
      note TEXT,
      done_on TEXT,
      done_by TEXT,
      dropped INTEGER NOT NULL DEFAULT 0 CHECK (dropped IN (0, 1)),
      CHECK (minutes_least IS NULL OR (0 < minutes_least AND minutes_least <= minutes_likely AND minutes_likely <= minutes_most)),
      CHECK ((minutes_least IS NULL) = (minutes_likely IS NULL) AND (minutes_least IS NULL) = (minutes_most IS NULL)),
      CHECK ((done_on IS NULL) = (done_by IS NULL)),
      UNIQUE (build_id, name),
      UNIQUE (build_id, set_key)
    ) STRICT;

    CREATE TABLE job_need (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      job_id INTEGER NOT NULL REFERENCES job (id),
      kind TEXT NOT NULL CHECK (kind IN ('part', 'job', 'fluid', 'stage')),
      part_id INTEGER,
      quantity INTEGER CHECK (quantity > 0),
      needed_job_id INTEGER REFERENCES job (id),
      case_id INTEGER,
      stage TEXT,
      CHECK ((kind = 'part') = (part_id IS NOT NULL) AND (kind = 'part') = (quantity IS NOT NULL)),
      CHECK ((kind = 'job') = (needed_job_id IS NOT NULL)),
      CHECK ((kind = 'fluid') = (case_id IS NOT NULL)),
      CHECK ((kind = 'stage') = (stage IS NOT NULL)),
      CHECK (needed_job_id IS NULL OR needed_job_id <> job_id)
    ) STRICT;
    CREATE INDEX job_need_of ON job_need (job_id);
    CREATE INDEX job_need_for ON job_need (needed_job_id);

    -- minutes of work on each weekday, Monday first, and how many hands there are
    CREATE TABLE work_week (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL UNIQUE REFERENCES build (id),
      minutes TEXT NOT NULL CHECK (json_valid(minutes) AND json_array_length(minutes) = 7),
      people INTEGER NOT NULL CHECK (people BETWEEN 1 AND 20)
    ) STRICT;

    CREATE TABLE days_away (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      from_on TEXT NOT NULL,
      to_on TEXT NOT NULL CHECK (to_on >= from_on),
      UNIQUE (build_id, from_on, to_on)
    ) STRICT;
  `,
} as const;
