import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Supplier } from './supplier.ts';

const SupplierRow = z.object({ id: z.int(), name: z.string() });

export interface SupplierStore {
  add(name: string): Supplier;
  all(): readonly Supplier[];
}

export function openSupplierStore(db: Database): SupplierStore {
  const insert = db.prepare('INSERT INTO supplier (name) VALUES (?)');
  const all = db.prepare('SELECT id, name FROM supplier ORDER BY name');
  return {
    add: (name) => ({ id: Number(insert.run(name).lastInsertRowid), name }),
    all: () => z.array(SupplierRow).parse(all.all()),
  };
}
