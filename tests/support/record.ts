import type { Database } from 'better-sqlite3';
import { type Arrival, type Order, OrderId } from '../../src/records/orders/order.ts';
import { place, type Wanted } from '../../src/records/orders/place.ts';
import { BOOKKEEPING, openTeamRecord, STANDING, type TeamRecord } from '../../src/records/team-record.ts';
import { type Ledger, openLedger } from '../../src/sqlite/ledger.ts';
import { migrations } from '../../src/sqlite/migrations/list.ts';
import { openDatabase } from '../../src/sqlite/open.ts';

/** One team's real record in memory, with the log that every change goes through. */
export interface OpenRecord {
  readonly db: Database;
  readonly record: TeamRecord;
  readonly ledger: Ledger;
  readonly buildId: number;
  /** One change by Ada, through an interaction of its own. */
  change<Value>(work: () => { value: Value; said: string }): { value: Value; said: string; changeId: number };
  undo(changeId: number): { said: string; changeId: number };
  place(wanted?: Partial<Wanted>): Order;
}

export const TODAY = '2026-11-23';

export function openRecord(): OpenRecord {
  const db = openDatabase(':memory:', { migrations, nowMs: 0 });
  const ledger = openLedger(db, { unrecorded: BOOKKEEPING, standing: STANDING });
  const record = openTeamRecord(db);
  let asked = 0;
  const by = () => {
    asked += 1;
    return { interactionId: `i${asked}`, personId: 'ada', personName: 'Ada', atMs: asked };
  };
  const change: OpenRecord['change'] = (work) => ledger.change(by(), work);
  const { value: build } = change(() => ({ value: record.builds.open('600', 'Coupe'), said: 'a build' }));
  return {
    db,
    record,
    ledger,
    buildId: build.id,
    change,
    undo: (changeId) => ledger.undo(by(), changeId),
    place(wanted = {}) {
      const { value } = change(() =>
        place(record, {
          buildId: build.id,
          what: 'head gasket',
          supplier: 'Norvale',
          quantity: 1,
          price: null,
          orderedOn: '2026-11-16',
          due: '2026-11-20',
          chaser: { id: 'ada', name: 'Ada' },
          ...wanted,
        }),
      );
      return value.order;
    },
  };
}

/** Everything a team's file holds of the crew's record, row by row; bookkeeping and used-up numbers are left out. */
export function contentOf(db: Database): readonly string[] {
  return [
    'settings',
    'build',
    'supplier',
    'part',
    'part_name',
    'part_move',
    'shutdown',
    'purchase',
    'rate',
    'orders',
    'arrival',
  ].flatMap((table) =>
    db
      .prepare(`SELECT * FROM ${table} ORDER BY id`)
      .all()
      .map((row) => `${table} ${JSON.stringify(row)}`),
  );
}

/** An order that is in no database, for what only looks at one. */
export function anOrder(changes: Partial<Omit<Order, 'id'>> & { readonly id?: number } = {}): Order {
  const { id = 1, ...others } = changes;
  return {
    buildId: 1,
    what: 'head gasket',
    partId: null,
    kind: 'goods',
    purchaseId: null,
    link: null,
    supplierId: 1,
    supplier: 'Norvale',
    quantity: 1,
    price: null,
    orderedOn: '2026-11-16',
    promisedOn: '2026-11-20',
    firstPromisedOn: '2026-11-20',
    chaserId: 'ada',
    chaserName: 'Ada',
    chasedOn: null,
    chasedTimes: 0,
    cancelled: false,
    arrivals: [],
    ...others,
    id: OrderId.parse(id),
  };
}

export function anArrival(changes: Partial<Arrival> = {}): Arrival {
  return {
    id: 1,
    cameOn: TODAY,
    quantity: 1,
    condition: 'good',
    note: null,
    settlement: null,
    byName: 'Bram',
    ...changes,
  };
}
