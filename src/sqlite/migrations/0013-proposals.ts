/** What somebody has been shown and may still say yes to: a list to bring in, a copy to put in the record's place. */
export default {
  name: '0013-proposals',
  sql: `
    CREATE TABLE proposal (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      person_id TEXT NOT NULL,
      kind TEXT NOT NULL,
      content TEXT NOT NULL CHECK (json_valid(content)),
      at_ms INTEGER NOT NULL
    ) STRICT;
  `,
} as const;
