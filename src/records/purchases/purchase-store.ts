import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Purchase } from './purchase.ts';

const PurchaseRow = z
  .object({
    id: z.int(),
    build_id: z.int(),
    supplier_id: z.int(),
    ordered_on: z.string(),
    carriage_minor: z.int().nullable(),
    currency: z.string().nullable(),
    reference: z.string().nullable(),
    link: z.string().nullable(),
  })
  .transform(
    (row): Purchase => ({
      id: row.id,
      buildId: row.build_id,
      supplierId: row.supplier_id,
      orderedOn: row.ordered_on,
      carriage:
        row.carriage_minor === null || row.currency === null
          ? null
          : { minor: row.carriage_minor, currency: row.currency },
      reference: row.reference,
      link: row.link,
    }),
  );

export interface PurchaseStore {
  open(purchase: Omit<Purchase, 'id'>): Purchase;
  find(id: number): Purchase | undefined;
  ofBuild(buildId: number): readonly Purchase[];
}

export function openPurchaseStore(db: Database): PurchaseStore {
  const insert = db.prepare(
    `INSERT INTO purchase (build_id, supplier_id, ordered_on, carriage_minor, currency, reference, link)
     VALUES (@buildId, @supplierId, @orderedOn, @carriageMinor, @currency, @reference, @link)`,
  );
  const byId = db.prepare('SELECT * FROM purchase WHERE id = ?');
  const ofBuild = db.prepare('SELECT * FROM purchase WHERE build_id = ? ORDER BY id');
  return {
    open({ carriage, ...purchase }) {
      const columns = { carriageMinor: carriage?.minor ?? null, currency: carriage?.currency ?? null };
      const { lastInsertRowid } = insert.run({ ...purchase, ...columns });
      return { ...purchase, carriage, id: Number(lastInsertRowid) };
    },
    find: (id) => PurchaseRow.optional().parse(byId.get(id)),
    ofBuild: (buildId) => z.array(PurchaseRow).parse(ofBuild.all(buildId)),
  };
}
