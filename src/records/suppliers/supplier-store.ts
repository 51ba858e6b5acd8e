import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Day } from '../../core/time.ts';
import type { Shutdown, Supplier } from './supplier.ts';

const SupplierRow = z
  .object({
    id: z.int(),
    name: z.string(),
    country: z.string().nullable(),
    lead_days: z.int().nullable(),
    note: z.string().nullable(),
  })
  .transform(({ lead_days: leadDays, ...same }) => ({ ...same, leadDays }));

const ShutdownRow = z
  .object({
    id: z.int(),
    supplier_id: z.int(),
    from_on: z.string(),
    to_on: z.string(),
    reason: z.string(),
  })
  .transform(
    ({ id, supplier_id: supplierId, from_on: from, to_on: to, reason }): Shutdown => ({
      id,
      supplierId,
      from,
      to,
      reason,
    }),
  );

export interface SupplierStore {
  add(name: string): Supplier;
  find(id: number): Supplier | undefined;
  all(): readonly Supplier[];
  correct(supplier: Omit<Supplier, 'shutdowns'>): void;
  shut(supplierId: number, from: Day, to: Day, reason: string): void;
  /** Takes a shutdown off again. */
  open(shutdownId: number): void;
}

export function openSupplierStore(db: Database): SupplierStore {
  const insert = db.prepare('INSERT INTO supplier (name) VALUES (?)');
  const byId = db.prepare('SELECT id, name, country, lead_days, note FROM supplier WHERE id = ?');
  const all = db.prepare('SELECT id, name, country, lead_days, note FROM supplier ORDER BY name');
  const shutdowns = db.prepare('SELECT * FROM shutdown ORDER BY from_on, id');
  const update = db.prepare(
    'UPDATE supplier SET name = @name, country = @country, lead_days = @leadDays, note = @note WHERE id = @id',
  );
  const shut = db.prepare('INSERT INTO shutdown (supplier_id, from_on, to_on, reason) VALUES (?, ?, ?, ?)');
  const remove = db.prepare('DELETE FROM shutdown WHERE id = ?');

  const read = (rows: readonly unknown[]): readonly Supplier[] => {
    const shutOf = Map.groupBy(z.array(ShutdownRow).parse(shutdowns.all()), ({ supplierId }) => supplierId);
    return z
      .array(SupplierRow)
      .parse(rows)
      .map((row) => ({ ...row, shutdowns: shutOf.get(row.id) ?? [] }));
  };
  return {
    add(name) {
      const id = Number(insert.run(name).lastInsertRowid);
      return { id, name, country: null, leadDays: null, note: null, shutdowns: [] };
    },
    find: (id) => read(byId.all(id))[0],
    all: () => read(all.all()),
    correct: ({ id, name, country, leadDays, note }) =>
      void update.run({ id, name, country, leadDays, note }),
    shut: (supplierId, from, to, reason) => void shut.run(supplierId, from, to, reason),
    open: (shutdownId) => void remove.run(shutdownId),
  };
}
