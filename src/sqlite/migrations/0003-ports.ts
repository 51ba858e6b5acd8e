/** Ports and ends of a build that somebody measured once, so that nobody measures them twice. */
export default {
  name: '0003-ports',
  sql: `
    CREATE TABLE port (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 80),
      end_id TEXT NOT NULL,
      typed TEXT NOT NULL,
      note TEXT,
      link TEXT,
      noted_by TEXT NOT NULL,
      noted_on TEXT NOT NULL,
      UNIQUE (build_id, name)
    ) STRICT;
  `,
} as const;
