/** What the crew counts in, a row for each choice that is not the built-in one. */
export default {
  name: '0012-units',
  sql: `
    CREATE TABLE own_unit (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      what TEXT NOT NULL UNIQUE,
      unit TEXT NOT NULL
    ) STRICT;
  `,
} as const;
