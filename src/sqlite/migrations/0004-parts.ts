/**
 * Parts under all the names they go by, what was said of them beside their orders, orders of several lines, and what is
 * known of a supplier. An order from before this step names no part; it counts for the one of its name.
 */
export default {
  name: '0004-parts',
  sql: `
    ALTER TABLE supplier ADD COLUMN country TEXT;
    ALTER TABLE supplier ADD COLUMN lead_days INTEGER CHECK (lead_days BETWEEN 0 AND 400);
    ALTER TABLE supplier ADD COLUMN note TEXT;

    -- both ends are shut
    CREATE TABLE shutdown (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      supplier_id INTEGER NOT NULL REFERENCES supplier (id),
      from_on TEXT NOT NULL,
      to_on TEXT NOT NULL,
      reason TEXT NOT NULL,
      CHECK (from_on <= to_on)
    ) STRICT;
    CREATE INDEX shutdown_of_supplier ON shutdown (supplier_id);

    CREATE TABLE part (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
      origin TEXT NOT NULL DEFAULT 'new' CHECK (origin IN ('new', 'used', 'modified', 'made')),
      needed INTEGER NOT NULL DEFAULT 1 CHECK (needed BETWEEN 0 AND 10000),
      system TEXT,
      single_use INTEGER NOT NULL DEFAULT 0 CHECK (single_use IN (0, 1)),
      note TEXT,
      link TEXT,
      -- what one is likely to cost, where the crew gave a guess
      guess_minor INTEGER CHECK (guess_minor >= 0),
      guess_currency TEXT CHECK (guess_currency GLOB '[A-Z][A-Z][A-Z]'),
      CHECK ((guess_minor IS NULL) = (guess_currency IS NULL)),
      UNIQUE (build_id, name)
    ) STRICT;

    CREATE TABLE part_name (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      part_id INTEGER NOT NULL REFERENCES part (id),
      name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
      UNIQUE (part_id, name)
    ) STRICT;

    -- what was said of a part beside its orders; "counted" is what a count changed, and may be below nothing
    CREATE TABLE part_move (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      part_id INTEGER NOT NULL REFERENCES part (id),
      kind TEXT NOT NULL CHECK (kind IN ('counted', 'fitted', 'taken off', 'used up', 'sent back')),
      quantity INTEGER NOT NULL CHECK (quantity >= 0 OR kind = 'counted'),
      place TEXT CHECK (place IN ('shelf', 'box')),
      -- how many had come of orders by then: what comes later is still in its box
      had_come INTEGER NOT NULL DEFAULT 0,
      said_on TEXT NOT NULL,
      by_name TEXT NOT NULL,
      note TEXT
    ) STRICT;
    CREATE INDEX part_move_of_part ON part_move (part_id);

    -- several lines ordered together, with what they share
    CREATE TABLE purchase (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      build_id INTEGER NOT NULL REFERENCES build (id),
      supplier_id INTEGER NOT NULL REFERENCES supplier (id),
      ordered_on TEXT NOT NULL,
      carriage_minor INTEGER CHECK (carriage_minor >= 0),
      currency TEXT CHECK (currency GLOB '[A-Z][A-Z][A-Z]'),
      reference TEXT,
      link TEXT,
      CHECK (carriage_minor IS NULL OR currency IS NOT NULL)
    ) STRICT;
    CREATE INDEX purchase_of_build ON purchase (build_id);

    ALTER TABLE orders ADD COLUMN part_id INTEGER REFERENCES part (id);
    ALTER TABLE orders ADD COLUMN kind TEXT NOT NULL DEFAULT 'goods' CHECK (kind IN ('goods', 'work'));
    ALTER TABLE orders ADD COLUMN purchase_id INTEGER REFERENCES purchase (id);
    ALTER TABLE orders ADD COLUMN link TEXT;
    CREATE INDEX orders_of_part ON orders (part_id) WHERE part_id IS NOT NULL;
    CREATE INDEX orders_without_part ON orders (build_id) WHERE part_id IS NULL;
    CREATE INDEX orders_of_purchase ON orders (purchase_id) WHERE purchase_id IS NOT NULL;

    -- what one unit of a currency is worth in another, as the crew said
    CREATE TABLE rate (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      from_currency TEXT NOT NULL CHECK (from_currency GLOB '[A-Z][A-Z][A-Z]'),
      to_currency TEXT NOT NULL CHECK (to_currency GLOB '[A-Z][A-Z][A-Z]'),
      rate REAL NOT NULL CHECK (rate > 0),
      said_on TEXT NOT NULL,
      by_name TEXT NOT NULL,
      UNIQUE (from_currency, to_currency)
    ) STRICT;
  `,
} as const;
