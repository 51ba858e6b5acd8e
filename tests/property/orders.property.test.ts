import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { UserError } from '../../src/core/user-error.ts';
import { cancel, chase, promise, receive } from '../../src/records/orders/moves.ts';
import { type Order, standing } from '../../src/records/orders/order.ts';
import { settle } from '../../src/records/orders/settle.ts';
import { contentOf, type OpenRecord, openRecord, TODAY } from '../support/record.ts';

const parameters = {
  numRuns: Number(process.env['FC_RUNS'] ?? 60),
  seed: Number(process.env['FC_SEED'] ?? 20261124),
};

type Moved = { value: Order; said: string };
type Move = (open: OpenRecord, order: Order) => Moved;

const day = fc
  .integer({ min: 0, max: 60 })
  .map((days) => Temporal.PlainDate.from(TODAY).add({ days }).toString());

const move: fc.Arbitrary<Move> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc
      .record({
        quantity: fc.option(fc.integer({ min: 1, max: 4 }), { nil: undefined }),
        condition: fc.constantFrom('good', 'wrong', 'damaged'),
        rest: fc.option(day, { nil: undefined }),
      })
      .map(
        (given): Move =>
          ({ record }, order) =>
            receive(record, order, { ...given, cameOn: TODAY, byName: 'Bram' }),
      ),
  },
  {
    weight: 3,
    arbitrary: fc
      .tuple(fc.constantFrom('kept', 'replaced', 'refunded'), fc.option(day, { nil: undefined }))
      .map(
        ([how, due]): Move =>
          ({ record }, order) =>
            settle(record, order, how, due, TODAY),
      ),
  },
  {
    weight: 1,
    arbitrary: day.map(
      (on): Move =>
        ({ record }, order) =>
          promise(record, order, on, TODAY),
    ),
  },
  { weight: 1, arbitrary: fc.constant<Move>(({ record }, order) => chase(record, order, TODAY)) },
  { weight: 1, arbitrary: fc.constant<Move>(({ record }, order) => cancel(record, order, TODAY)) },
);

/** Makes the move as one change; null when it was refused, and then nothing may have changed. */
function attempt(open: OpenRecord, made: Move): number | null {
  const before = contentOf(open.db);
  try {
    return open.change(() => made(open, only(open))).changeId;
  } catch (error) {
    if (!(error instanceof UserError)) throw error;
    expect(contentOf(open.db)).toEqual(before);
    return null;
  }
}

function only({ record }: OpenRecord): Order {
  const order = record.orders.find(1);
  if (!order) throw new Error('the order is gone');
  return order;
}

const story = fc.tuple(fc.integer({ min: 1, max: 10 }), fc.array(move, { minLength: 1, maxLength: 14 }));

describe('whatever is done to an order', () => {
  it('received, to sort out, refunded and still to come add up to what was ordered, and none is below nothing', () => {
    let done = 0;
    fc.assert(
      fc.property(story, ([quantity, moves]) => {
        const open = openRecord();
        open.place({ quantity });
        for (const made of moves) {
          if (attempt(open, made) !== null) done += 1;
          const { received, toSortOut, refunded, outstanding } = standing(only(open));
          expect(received + toSortOut + refunded + outstanding).toBe(quantity);
          expect(Math.min(received, toSortOut, refunded, outstanding)).toBeGreaterThanOrEqual(0);
        }
        expect(open.ledger.audit()).toEqual([]);
        open.db.close();
      }),
      parameters,
    );
    expect(done).toBeGreaterThan(parameters.numRuns);
  });

  it('can be undone to the row, and the undo undone', () => {
    fc.assert(
      fc.property(story, ([quantity, moves]) => {
        const open = openRecord();
        open.place({ quantity });
        for (const made of moves) {
          const before = contentOf(open.db);
          const changeId = attempt(open, made);
          if (changeId === null) continue;
          const after = contentOf(open.db);
          const undone = open.undo(changeId);
          expect(contentOf(open.db)).toEqual(before);
          open.undo(undone.changeId);
          expect(contentOf(open.db)).toEqual(after);
        }
        open.db.close();
      }),
      parameters,
    );
  });

  it('can all be undone from the last to the first', () => {
    fc.assert(
      fc.property(story, ([quantity, moves]) => {
        const open = openRecord();
        open.place({ quantity });
        const before = contentOf(open.db);
        const changes = moves.flatMap((made) => attempt(open, made) ?? []);
        for (const changeId of changes.toReversed()) open.undo(changeId);
        expect(contentOf(open.db)).toEqual(before);
        open.db.close();
      }),
      parameters,
    );
  });
});
