/** What the car and its engine are, in the crew's words: bore, compression ratio, injectors, the maker's figures. */
export default {
  name: '0014-specification',
  sql: `
    CREATE TABLE build_fact (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
      value TEXT NOT NULL CHECK (length(value) BETWEEN 1 AND 200),
      UNIQUE (build_id, name)
    ) STRICT;
  `,
} as const;
