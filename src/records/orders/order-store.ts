import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Day } from '../../core/time.ts';
import type { Arrival, Condition, Money, Order, OrderId, OrderKind, Settlement } from './order.ts';

/** A row as the file's own types and checks have it; read by the thousand, so it is not checked over again. */
interface OrderRow {
  readonly id: OrderId;
  readonly build_id: number;
  readonly what: string;
  readonly part_id: number | null;
  readonly kind: OrderKind;
  readonly purchase_id: number | null;
  readonly supplier_id: number;
  readonly supplier: string;
  readonly quantity: number;
  readonly price_minor: number | null;
  readonly currency: string | null;
  readonly ordered_on: Day;
  readonly promised_on: Day;
  readonly first_promised_on: Day;
  readonly chaser_id: string;
  readonly chaser_name: string;
  readonly chased_on: Day | null;
  readonly chased_times: number;
  readonly cancelled: 0 | 1;
  readonly link: string | null;
}

interface ArrivalRow {
  readonly id: number;
  readonly order_id: number;
  readonly came_on: Day;
  readonly quantity: number;
  readonly condition: Condition;
  readonly note: string | null;
  readonly settlement: Settlement | null;
  readonly by_name: string;
}

/** When an order was promised and when the last of it came. */
export interface Timing {
  readonly supplierId: number;
  readonly firstPromisedOn: Day;
  readonly promisedOn: Day;
  readonly lastCameOn: Day | null;
  readonly outstanding: number;
}

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
  /** Every order of a part, cancelled ones too; those from before parts were kept by their name. */
  ofPart(part: { readonly id: number; readonly buildId: number; readonly name: string }): readonly Order[];
  /** The same with no more than it takes to count them: thousands of them in a few milliseconds. */
  countedOfBuild(buildId: number): readonly CountedOrder[];
  ofPurchase(purchaseId: number): readonly Order[];
  /** Of every order of the team that is not cancelled, for each supplier's lateness. */
  timings(): readonly Timing[];
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
  const byId = db.prepare<[number | bigint], OrderRow>(`${SELECT_ORDER} WHERE orders.id = ?`);
  const lists = {
    open: ordersWhere(db, 'orders.build_id = ? AND orders.cancelled = 0'),
    all: ordersWhere(db, 'orders.build_id = ?'),
    ofPurchase: ordersWhere(db, 'orders.purchase_id = ?'),
    ofPart: ordersWhere(db, 'orders.part_id = ?'),
    unnamed: ordersWhere(db, 'orders.build_id = ? AND orders.part_id IS NULL'),
  };
  const timings = db.prepare<[], Timing>(TIMINGS);
  const namesUsed = db
    .prepare('SELECT what FROM orders GROUP BY what ORDER BY max(id) DESC LIMIT 200')
    .pluck();
  const arrivalsOf = db.prepare<[number], ArrivalRow>('SELECT * FROM arrival WHERE order_id = ? ORDER BY id');
  const promise = db.prepare('UPDATE orders SET promised_on = ? WHERE id = ?');
  const chase = db.prepare('UPDATE orders SET chased_on = ?, chased_times = chased_times + 1 WHERE id = ?');
  const cancel = db.prepare('UPDATE orders SET cancelled = 1 WHERE id = ?');
  const receive = db.prepare(
    `INSERT INTO arrival (order_id, came_on, quantity, condition, note, by_name)
     VALUES (@orderId, @cameOn, @quantity, @condition, @note, @byName)`,
  );
  const settle = db.prepare('UPDATE arrival SET settlement = ? WHERE id = ?');

  const find = (id: number | bigint): Order | undefined => {
    const row = byId.get(id);
    return row && orderOf(row, arrivalsOf.all(row.id).map(arrivalOf));
  };
  const placed = (id: number | bigint): Order => {
    const order = find(id);
    if (!order) throw new Error(`order ${id} vanished as it was placed`);
    return order;
  };
  return {
    place({ price, ...order }) {
      const { lastInsertRowid } = insert.run({
        ...order,
        priceMinor: price?.minor ?? null,
        currency: price?.currency ?? null,
      });
      return placed(lastInsertRowid);
    },
    find,
    ofBuild: lists.open,
    allOfBuild: lists.all,
    countedOfBuild: openCounted(db),
    ofPurchase: lists.ofPurchase,
    ofPart: ({ id, buildId, name }) => [
      ...lists.unnamed(buildId).filter(({ what }) => what === name),
      ...lists.ofPart(id),
    ],
    timings: () => timings.all(),
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
  const orders = db.prepare<[number], OrderRow>(`${SELECT_ORDER} WHERE ${condition} ORDER BY orders.id`);
  const arrivals = db.prepare<[number], ArrivalRow>(
    `SELECT arrival.* FROM arrival JOIN orders ON orders.id = arrival.order_id WHERE ${condition} ORDER BY arrival.id`,
  );
  return (id) => {
    const came = new Map<number, Arrival[]>();
    for (const row of arrivals.all(id)) {
      const known = came.get(row.order_id);
      if (known) known.push(arrivalOf(row));
      else came.set(row.order_id, [arrivalOf(row)]);
    }
    return orders.all(id).map((row) => orderOf(row, came.get(row.id) ?? NONE));
  };
}

/** What it takes to count an order. */
export type CountedOrder = Pick<
  Order,
  'id' | 'partId' | 'what' | 'kind' | 'supplierId' | 'supplier' | 'promisedOn' | 'quantity' | 'cancelled'
> & { readonly arrivals: readonly CountedArrival[] };

type CountedArrival = Pick<Arrival, 'quantity' | 'condition' | 'settlement'>;

function openCounted(db: Database): (buildId: number) => readonly CountedOrder[] {
  const orders = db.prepare<
    [number],
    Omit<CountedOrder, 'cancelled' | 'arrivals'> & { readonly cancelled: 0 | 1 }
  >(
    `SELECT orders.id, part_id AS partId, what, kind, supplier_id AS supplierId, supplier.name AS supplier,
       promised_on AS promisedOn, quantity, cancelled
     FROM orders JOIN supplier ON supplier.id = supplier_id WHERE build_id = ? ORDER BY orders.id`,
  );
  const arrivals = db.prepare<[number], CountedArrival & { readonly orderId: number }>(
    `SELECT order_id AS orderId, arrival.quantity, condition, settlement FROM arrival
     JOIN orders ON orders.id = order_id WHERE build_id = ? ORDER BY arrival.id`,
  );
  return (buildId) => {
    const came = new Map<number, CountedArrival[]>();
    for (const arrival of arrivals.all(buildId)) {
      const known = came.get(arrival.orderId);
      if (known) known.push(arrival);
      else came.set(arrival.orderId, [arrival]);
    }
    return orders.all(buildId).map(
      ({ id, partId, what, kind, supplierId, supplier, promisedOn, quantity, cancelled }): CountedOrder => ({
        id,
        partId,
        what,
        kind,
        supplierId,
        supplier,
        promisedOn,
        quantity,
        cancelled: cancelled === 1,
        arrivals: came.get(id) ?? NONE,
      }),
    );
  };
}

const NONE: readonly Arrival[] = [];

const arrivalOf = (row: ArrivalRow): Arrival => ({
  id: row.id,
  cameOn: row.came_on,
  quantity: row.quantity,
  condition: row.condition,
  note: row.note,
  settlement: row.settlement,
  byName: row.by_name,
});

/** Still to come is everything that has not come, and what came but is to be replaced (`standing` in order.ts). */
const TIMINGS = `SELECT supplier_id AS supplierId, first_promised_on AS firstPromisedOn, promised_on AS promisedOn,
    max(arrival.came_on) AS lastCameOn,
    orders.quantity - coalesce(sum(iif(settlement IS 'replaced', 0, arrival.quantity)), 0) AS outstanding
  FROM orders LEFT JOIN arrival ON arrival.order_id = orders.id
  WHERE cancelled = 0 GROUP BY orders.id`;

function orderOf(row: OrderRow, arrivals: readonly Arrival[]): Order {
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
