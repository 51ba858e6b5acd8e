/** Builds, suppliers, orders and what came of them; then the bookkeeping of reminders and of unfinished requests. */
export default {
  name: '0002-orders',
  sql: `
    CREATE TABLE settings (
      id INTEGER PRIMARY KEY CHECK (id = 1),
      zone TEXT NOT NULL,
      country TEXT NOT NULL,
      morning TEXT NOT NULL CHECK (morning GLOB '[0-2][0-9]:[0-5][0-9]')
    ) STRICT;

    CREATE TABLE build (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      channel_id TEXT NOT NULL UNIQUE,
      name TEXT NOT NULL
    ) STRICT;

    CREATE TABLE supplier (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      name TEXT NOT NULL UNIQUE
    ) STRICT;

    CREATE TABLE orders (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      what TEXT NOT NULL CHECK (length(what) BETWEEN 1 AND 200),
      supplier_id INTEGER NOT NULL REFERENCES supplier (id),
      quantity INTEGER NOT NULL CHECK (quantity > 0),
      price_minor INTEGER CHECK (price_minor >= 0),
      currency TEXT CHECK (currency GLOB '[A-Z][A-Z][A-Z]'),
      ordered_on TEXT NOT NULL,
      promised_on TEXT NOT NULL,
      first_promised_on TEXT NOT NULL,
      chaser_id TEXT NOT NULL,
      chaser_name TEXT NOT NULL,
      chased_on TEXT,
      chased_times INTEGER NOT NULL DEFAULT 0,
      cancelled INTEGER NOT NULL DEFAULT 0 CHECK (cancelled IN (0, 1)),
      CHECK ((price_minor IS NULL) = (currency IS NULL))
    ) STRICT;
    CREATE INDEX orders_of_build ON orders (build_id, cancelled);

    CREATE TABLE arrival (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      order_id INTEGER NOT NULL REFERENCES orders (id),
      came_on TEXT NOT NULL,
      quantity INTEGER NOT NULL CHECK (quantity > 0),
      condition TEXT NOT NULL CHECK (condition IN ('good', 'wrong', 'damaged')),
      note TEXT,
      settlement TEXT CHECK (settlement IN ('kept', 'replaced', 'refunded')),
      by_name TEXT NOT NULL,
      CHECK (condition <> 'good' OR settlement IS NULL)
    ) STRICT;
    CREATE INDEX arrival_of_order ON arrival (order_id);

    CREATE TABLE morning (
      build_id INTEGER PRIMARY KEY REFERENCES build (id) ON DELETE CASCADE,
      day TEXT NOT NULL
    ) STRICT;

    CREATE TABLE outbox (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      key TEXT NOT NULL UNIQUE,
      nonce TEXT NOT NULL,
      channel_id TEXT NOT NULL,
      notice TEXT NOT NULL CHECK (json_valid(notice)),
      state TEXT NOT NULL CHECK (state IN ('pending', 'claimed', 'sent', 'dropped', 'dead')),
      created_at_ms INTEGER NOT NULL,
      next_try_at_ms INTEGER NOT NULL,
      first_try_at_ms INTEGER,
      tries INTEGER NOT NULL DEFAULT 0,
      message_id TEXT,
      shown TEXT,
      trouble TEXT
    ) STRICT;
    CREATE INDEX outbox_due ON outbox (next_try_at_ms) WHERE state IN ('pending', 'claimed');

    CREATE TABLE draft (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      person_id TEXT NOT NULL,
      request TEXT NOT NULL CHECK (json_valid(request)),
      field TEXT NOT NULL,
      choices TEXT NOT NULL CHECK (json_valid(choices)),
      at_ms INTEGER NOT NULL
    ) STRICT;
  `,
} as const;
