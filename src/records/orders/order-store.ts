import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Day } from '../../core/time.ts';
import {
  type Arrival,
  type Condition,
  type Money,
  ORDER_KINDS,
  type Order,
  OrderId,
  type OrderKind,
  type Settlement,
} from './order.ts';

const OrderRow = z.object({
  id: OrderId,
  build_id: z.int(),
  what: z.string(),
  part_id: z.int().nullable(),
  kind: z.enum(ORDER_KINDS),
  purchase_id: z.int().nullable(),
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
  link: z.string().nullable(),
});

const ArrivalRow = z
  .object({
    id: z.int(),
    order_id: z.int(),
    came_on: z.string(),
    quantity: z.int(),
    condition: z.enum(['good', 'wrong', 'damaged']),
    note: z.string().nullable(),
    settlement: z.enum(['kept', 'replaced', 'refunded']).nullable(),
    by_name: z.string(),
  })
  .transform(({ order_id: orderId, came_on: cameOn, by_name: byName, ...same }) => ({
    orderId,
    arrival: { ...same, cameOn, byName } satisfies Arrival,
  }));

/** When an order was promised and when the last of it came. */
const TimingRow = z.object({
  supplierId: z.int(),
  firstPromisedOn: z.string(),
  promisedOn: z.string(),
  lastCameOn: z.string().nullable(),
  outstanding: z.int(),
});
export type Timing = z.output<typeof TimingRow>;

export interface NewOrder {
  readonly buildId: number;
  readonly what: string;
  readonly partId: number;
  readonly kind: OrderKind;
  readonly purchaseId: number | null;
  readonly link: string | null;
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
  /** Everything of a build, cancelled orders too: some of those may have come before. */
  allOfBuild(buildId: number): readonly Order[];
  ofPart(partId: number): readonly Order[];
  ofPurchase(purchaseId: number): readonly Order[];
  /** Of every order of the team that is not cancelled, for each supplier's lateness. */
  timings(): readonly Timing[];
  /** Lets an order count for another part. */
  assign(id: OrderId, partId: number): void;
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
    `INSERT INTO orders (build_id, what, part_id, kind, purchase_id, link, supplier_id, quantity, price_minor,
       currency, ordered_on, promised_on, first_promised_on, chaser_id, chaser_name)
     VALUES (@buildId, @what, @partId, @kind, @purchaseId, @link, @supplierId, @quantity, @priceMinor,
       @currency, @orderedOn, @promisedOn, @promisedOn, @chaserId, @chaserName)`,
  );
  const byId = db.prepare(`${SELECT_ORDER} WHERE orders.id = ?`);
  const lists = {
    open: ordersWhere(db, 'orders.build_id = ? AND orders.cancelled = 0'),
    all: ordersWhere(db, 'orders.build_id = ?'),
    ofPart: ordersWhere(db, 'orders.part_id = ?'),
    ofPurchase: ordersWhere(db, 'orders.purchase_id = ?'),
  };
  const timings = db.prepare(TIMINGS);
  const assign = db.prepare('UPDATE orders SET part_id = ? WHERE id = ?');
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

  const read = (row: unknown): Order => {
    const parsed = OrderRow.parse(row);
    return orderOf(
      parsed,
      Arrivals.parse(arrivalsOf.all(parsed.id)).map(({ arrival }) => arrival),
    );
  };
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
    ofBuild: lists.open,
    allOfBuild: lists.all,
    ofPart: lists.ofPart,
    ofPurchase: lists.ofPurchase,
    timings: () => z.array(TimingRow).parse(timings.all()),
    assign: (id, partId) => void assign.run(partId, id),
    namesUsed: () => z.array(z.string()).parse(namesUsed.all()),
    promise: (id, on) => void promise.run(on, id),
    chase: (id, on) => void chase.run(on, id),
    cancel: (id) => void cancel.run(id),
    receive: (arrival) => void receive.run(arrival),
    settle: (arrivalId, settlement) => void settle.run(settlement, arrivalId),
  };
}

/** Orders by one condition, with all their arrivals in one more query, however many there are. */
function ordersWhere(db: Database, condition: string): (id: number) => readonly Order[] {
  const orders = db.prepare(`${SELECT_ORDER} WHERE ${condition} ORDER BY orders.id`);
  const arrivals = db.prepare(
    `SELECT arrival.* FROM arrival JOIN orders ON orders.id = arrival.order_id WHERE ${condition} ORDER BY arrival.id`,
  );
  return (id) => {
    const came = Map.groupBy(Arrivals.parse(arrivals.all(id)), ({ orderId }) => orderId);
    return z
      .array(OrderRow)
      .parse(orders.all(id))
      .map((row) =>
        orderOf(
          row,
          (came.get(row.id) ?? []).map(({ arrival }) => arrival),
        ),
      );
  };
}

/** Still to come is everything that has not come, and what came but is to be replaced (`standing` in order.ts). */
const TIMINGS = `SELECT supplier_id AS supplierId, first_promised_on AS firstPromisedOn, promised_on AS promisedOn,
    max(arrival.came_on) AS lastCameOn,
    orders.quantity - coalesce(sum(iif(settlement IS 'replaced', 0, arrival.quantity)), 0) AS outstanding
  FROM orders LEFT JOIN arrival ON arrival.order_id = orders.id
  WHERE cancelled = 0 GROUP BY orders.id`;

const Arrivals = z.array(ArrivalRow);

function orderOf(row: z.output<typeof OrderRow>, arrivals: readonly Arrival[]): Order {
  return {
    id: row.id,
    buildId: row.build_id,
    what: row.what,
    partId: row.part_id,
    kind: row.kind,
    purchaseId: row.purchase_id,
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
    link: row.link,
    arrivals,
  };
}
