import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { UserError } from '../../src/core/user-error.ts';
import { costsOf, sumsOf } from '../../src/records/costs/costs.ts';
import { cancel, receive } from '../../src/records/orders/moves.ts';
import { type Order, standing } from '../../src/records/orders/order.ts';
import { settle } from '../../src/records/orders/settle.ts';
import { countIn, fit as fitPart, type Said, sendBack, takeOff } from '../../src/records/parts/part-moves.ts';
import type { KnownPart } from '../../src/records/parts/part-store.ts';
import { sendOut } from '../../src/records/parts/send-out.ts';
import { type KnownStanding, ordersOf, standings } from '../../src/records/parts/standings.ts';
import { contentOf, type OpenRecord, openRecord, TODAY } from '../support/record.ts';

const parameters = {
  seed: Number(process.env['FC_SEED'] ?? 20_261),
  numRuns: Number(process.env['FC_RUNS'] ?? 25),
};

type Work = (open: OpenRecord, part: KnownPart, nth: number) => { value: unknown; said: string };

const by: Said = { today: TODAY, byName: 'Bram' };
const quantity = fc.option(fc.integer({ min: 1, max: 5 }), { nil: undefined });
const came = fc.constantFrom('order', 'other', undefined);
const condition = fc.constantFrom('good', 'wrong', 'damaged');

/** The nth order of the part, counting round; a refusal where there is none. */
function orderOf({ record }: OpenRecord, part: KnownPart, nth: number): Order {
  const orders = ordersOf(record, part);
  const order = orders[nth % Math.max(1, orders.length)];
  if (order === undefined) throw new UserError('not-found', 'no order');
  return order;
}

const work: fc.Arbitrary<Work> = fc.oneof(
  fc.record({ count: fc.integer({ min: 1, max: 5 }), minor: fc.integer({ min: 1, max: 9_999 }) }).map(
    ({ count, minor }): Work =>
      (open, part) => {
        const price = { minor, currency: 'GBP' };
        return { value: open.record.orders.place(wanted(open, part, count, price)), said: 'ordered' };
      },
  ),
  fc.tuple(quantity, condition).map(
    ([count, how]): Work =>
      (open, part, nth) =>
        receive(open.record, orderOf(open, part, nth), {
          quantity: count,
          condition: how,
          cameOn: TODAY,
          byName: 'Bram',
        }),
  ),
  fc.constantFrom('kept', 'refunded', 'replaced').map(
    (how): Work =>
      (open, part, nth) =>
        settle(open.record, orderOf(open, part, nth), how, how === 'replaced' ? TODAY : undefined, TODAY),
  ),
  fc.constant<Work>((open, part, nth) => cancel(open.record, orderOf(open, part, nth), TODAY)),
  fc.tuple(fc.integer({ min: 0, max: 6 }), came).map(
    ([count, how]): Work =>
      ({ record }, part) =>
        countIn(record, part, { quantity: count, place: 'shelf', came: how }, by),
  ),
  fc.tuple(quantity, came).map(
    ([count, how]): Work =>
      ({ record }, part) =>
        fitPart(record, part, { quantity: count, came: how }, by),
  ),
  fc.tuple(quantity, fc.boolean()).map(
    ([count, keep]): Work =>
      ({ record }, part) =>
        takeOff(record, part, { quantity: count, keep }, by),
  ),
  quantity.map(
    (count): Work =>
      ({ record }, part) =>
        sendBack(record, part, { quantity: count }, by),
  ),
  fc.tuple(fc.integer({ min: 1, max: 3 }), came).map(
    ([count, how]): Work =>
      ({ record }, part) =>
        sendOut(record, part, { ...OUT, quantity: count, came: how }, by),
  ),
);

const OUT = {
  to: 'Brackendale',
  work: 'plating',
  price: null,
  due: '2026-12-01',
  chaser: { id: 'ada', name: 'Ada' },
  link: null,
};

const wanted = (
  open: OpenRecord,
  part: KnownPart,
  count: number,
  price: { minor: number; currency: string },
) => ({
  buildId: open.buildId,
  what: part.name,
  partId: part.id,
  kind: 'goods' as const,
  purchaseId: null,
  link: null,
  supplierId: 1,
  quantity: count,
  price,
  orderedOn: TODAY,
  promisedOn: TODAY,
  chaserId: 'ada',
  chaserName: 'Ada',
});

/** A build with one part that is not ordered yet, at a supplier that is known. */
function withPart(needed: number): { open: OpenRecord; part: () => KnownPart } {
  const open = openRecord();
  const { value } = open.change(() => {
    open.record.suppliers.add('Norvale');
    const details = {
      origin: 'new',
      system: null,
      singleUse: false,
      note: null,
      link: null,
      guess: null,
    } as const;
    return {
      value: open.record.parts.add({ buildId: open.buildId, name: 'pin', needed, ...details }),
      said: 'a part',
    };
  });
  return { open, part: () => open.record.parts.find(value.id) ?? value };
}

/** Makes the move as one change; null when it was refused, and then nothing may have changed. */
function attempt(open: OpenRecord, part: KnownPart, made: Work, nth: number): number | null {
  const before = contentOf(open.db);
  try {
    return open.change(() => made(open, part, nth)).changeId;
  } catch (error) {
    if (!(error instanceof UserError)) throw error;
    expect(contentOf(open.db)).toEqual(before);
    return null;
  }
}

const total = (some: readonly { readonly quantity: number }[]): number =>
  some.reduce((sum, one) => sum + one.quantity, 0);

function only(open: OpenRecord): KnownStanding {
  const [standing, ...more] = standings(open.record, open.buildId, TODAY);
  if (standing === undefined || more.length > 0) throw new Error('not one part');
  return standing;
}

const story = fc.tuple(
  fc.integer({ min: 0, max: 6 }),
  fc.array(fc.tuple(work, fc.nat(5)), { minLength: 1, maxLength: 16 }),
);

describe('whatever is done to a part', () => {
  it('no count is below nothing, and what is missing makes up what is needed', () => {
    let done = 0;
    fc.assert(
      fc.property(story, ([needed, moves]) => {
        const { open, part } = withPart(needed);
        for (const [made, nth] of moves) {
          if (attempt(open, part(), made, nth) !== null) done += 1;
          const { inHand, fitted, toSortOut, sentBack, missing, coming, out } = only(open);
          const have = inHand + fitted + toSortOut + total(coming) + total(out);
          expect(Math.min(inHand, fitted, toSortOut, sentBack, missing)).toBeGreaterThanOrEqual(0);
          expect(missing).toBe(Math.max(0, needed - have));
        }
        expect(open.ledger.audit()).toEqual([]);
        open.db.close();
      }),
      parameters,
    );
    expect(done).toBeGreaterThan(parameters.numRuns);
  });

  it('nothing comes from nowhere: what was ordered and counted is somewhere', () => {
    fc.assert(
      fc.property(story, ([needed, moves]) => {
        const { open, part } = withPart(needed);
        for (const [made, nth] of moves) attempt(open, part(), made, nth);
        const { inHand, fitted, toSortOut, sentBack, coming, out } = only(open);
        const orders = ordersOf(open.record, part());
        const goods = orders.filter(({ kind }) => kind === 'goods');
        const said = open.record.parts.movesOf(part().id);
        const ordered = goods.reduce((sum, order) => {
          const { outstanding } = standing(order);
          return sum + order.quantity - (order.cancelled ? outstanding : 0);
        }, 0);
        const counted = total(said.filter(({ kind }) => kind === 'counted'));
        const usedUp = total(said.filter(({ kind }) => kind === 'used up'));
        expect(inHand + fitted + toSortOut + sentBack + usedUp + total(coming) + total(out)).toBe(
          ordered + counted,
        );
        open.db.close();
      }),
      parameters,
    );
  });

  it('is undone to the row, from the last to the first', () => {
    fc.assert(
      fc.property(story, ([needed, moves]) => {
        const { open, part } = withPart(needed);
        const before = contentOf(open.db);
        const changes = moves.flatMap(([made, nth]) => attempt(open, part(), made, nth) ?? []);
        for (const changeId of changes.toReversed()) open.undo(changeId);
        expect(contentOf(open.db)).toEqual(before);
        open.db.close();
      }),
      parameters,
    );
  });

  it('its orders cost their price and no more: spent, committed and refunded add up to it', () => {
    fc.assert(
      fc.property(story, ([needed, moves]) => {
        const { open, part } = withPart(needed);
        for (const [made, nth] of moves) attempt(open, part(), made, nth);
        const orders = open.record.orders.allOfBuild(open.buildId);
        const costs = costsOf({ orders, purchases: [], standings: [only(open)] });
        const kept = orders.filter(({ cancelled }) => !cancelled);
        const price = kept.reduce((sum, order) => sum + (order.price?.minor ?? 0), 0);
        const ofKept = costsOf({ orders: kept, purchases: [], standings: [] });
        const [sums] = sumsOf(ofKept);
        expect((sums?.spent ?? 0) + (sums?.committed ?? 0) + (sums?.refunded ?? 0)).toBe(price);
        expect(costs.every(({ minor }) => minor >= 0)).toBe(true);
        open.db.close();
      }),
      parameters,
    );
  });
});
