import type { Database, Statement } from 'better-sqlite3';
import { z } from 'zod';
import type { Day } from '../../core/time.ts';
import { type Arrival, type Condition, type Money, type Order, OrderId, type Settlement } from './order.ts';

const OrderRow = z.object({
  id: OrderId,
  build_id: z.int(),
  what: z.string(),
  supplier_id: z.int(),
  supplier: z.string(),
  quantity: z.int(),
  price_minor: z.int().nullable(),
  currency: z.string().nullable(),
  ordered_on: z.string(),
  promised_on: z.string(),
  first_promised_on: z.string(),
  chaser_id: z.string(),
  chaser_name: z.string(),
  chased_on: z.string().nullable(),
  chased_times: z.int(),
  cancelled: z.int(),
});

const ArrivalRow = z
  .object({
    id: z.int(),
    came_on: z.string(),
    quantity: z.int(),
    condition: z.enum(['good', 'wrong', 'damaged']),
    note: z.string().nullable(),
    settlement: z.enum(['kept', 'replaced', 'refunded']).nullable(),
    by_name: z.string(),
  })
  .transform(({ came_on: cameOn, by_name: byName, ...same }): Arrival => ({ ...same, cameOn, byName }));

export interface NewOrder {
  readonly buildId: number;
  readonly what: string;
  readonly supplierId: number;
  readonly quantity: number;
  readonly price: Money | null;
  readonly orderedOn: Day;
  readonly promisedOn: Day;
  readonly chaserId: string;
  readonly chaserName: string;
}

export interface NewArrival {
  readonly orderId: OrderId;
  readonly cameOn: Day;
  readonly quantity: number;
  readonly condition: Condition;
  readonly note: string | null;
  readonly byName: string;
}

export interface OrderStore {
  place(order: NewOrder): Order;
  find(id: number): Order | undefined;
  /** Everything of a build that is not cancelled, in no promised order. */
  ofBuild(buildId: number): readonly Order[];
  /** Names of things ordered before, the newest first. */
  namesUsed(): readonly string[];
  promise(id: OrderId, on: Day): void;
  chase(id: OrderId, on: Day): void;
  cancel(id: OrderId): void;
  receive(arrival: NewArrival): void;
  settle(arrivalId: number, settlement: Settlement): void;
}

const SELECT_ORDER = `SELECT orders.*, supplier.name AS supplier
  FROM orders JOIN supplier ON supplier.id = orders.supplier_id`;

export function openOrderStore(db: Database): OrderStore {
  const insert = db.prepare(
    `INSERT INTO orders (build_id, what, supplier_id, quantity, price_minor, currency, ordered_on, promised_on,
       first_promised_on, chaser_id, chaser_name)
     VALUES (@buildId, @what, @supplierId, @quantity, @priceMinor, @currency, @orderedOn, @promisedOn, @promisedOn,
       @chaserId, @chaserName)`,
  );
  const byId = db.prepare(`${SELECT_ORDER} WHERE orders.id = ?`);
  const ofBuild = db.prepare(`${SELECT_ORDER} WHERE build_id = ? AND cancelled = 0`);
  const namesUsed = db
    .prepare('SELECT what FROM orders GROUP BY what ORDER BY max(id) DESC LIMIT 200')
    .pluck();
  const arrivalsOf = db.prepare('SELECT * FROM arrival WHERE order_id = ? ORDER BY id');
  const promise = db.prepare('UPDATE orders SET promised_on = ? WHERE id = ?');
  const chase = db.prepare('UPDATE orders SET chased_on = ?, chased_times = chased_times + 1 WHERE id = ?');
  const cancel = db.prepare('UPDATE orders SET cancelled = 1 WHERE id = ?');
  const receive = db.prepare(
    `INSERT INTO arrival (order_id, came_on, quantity, condition, note, by_name)
     VALUES (@orderId, @cameOn, @quantity, @condition, @note, @byName)`,
  );
  const settle = db.prepare('UPDATE arrival SET settlement = ? WHERE id = ?');

  const read = (row: unknown): Order => orderOf(OrderRow.parse(row), arrivalsOf);
  return {
    place({ price, ...order }) {
      const { lastInsertRowid } = insert.run({
        ...order,
        priceMinor: price?.minor ?? null,
        currency: price?.currency ?? null,
      });
      return read(byId.get(lastInsertRowid));
    },
    find(id) {
      const row = byId.get(id);
      return row === undefined ? undefined : read(row);
    },
    ofBuild: (buildId) => ofBuild.all(buildId).map(read),
    namesUsed: () => z.array(z.string()).parse(namesUsed.all()),
    promise: (id, on) => void promise.run(on, id),
    chase: (id, on) => void chase.run(on, id),
    cancel: (id) => void cancel.run(id),
    receive: (arrival) => void receive.run(arrival),
    settle: (arrivalId, settlement) => void settle.run(settlement, arrivalId),
  };
}

function orderOf(row: z.output<typeof OrderRow>, arrivalsOf: Statement): Order {
  return {
    id: row.id,
    buildId: row.build_id,
    what: row.what,
    supplierId: row.supplier_id,
    supplier: row.supplier,
    quantity: row.quantity,
    price:
      row.price_minor === null || row.currency === null
        ? null
        : { minor: row.price_minor, currency: row.currency },
    orderedOn: row.ordered_on,
    promisedOn: row.promised_on,
    firstPromisedOn: row.first_promised_on,
    chaserId: row.chaser_id,
    chaserName: row.chaser_name,
    chasedOn: row.chased_on,
    chasedTimes: row.chased_times,
    cancelled: row.cancelled === 1,
    arrivals: z.array(ArrivalRow).parse(arrivalsOf.all(row.id)),
  };
}
