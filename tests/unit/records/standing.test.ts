import { describe, expect, it } from 'vitest';
import { byUrgency, isLate, needsAHand, type Order, standing } from '../../../src/records/orders/order.ts';
import { anArrival, anOrder, TODAY } from '../../support/record.ts';

const good = (quantity: number) => anArrival({ quantity });
const wrong = (quantity: number, settlement: 'kept' | 'replaced' | 'refunded' | null = null) =>
  anArrival({ quantity, condition: 'wrong', settlement });

describe('where an order stands', () => {
  it.each([
    ['nothing has come', [], 'open', 0, 0, 0, 4],
    ['some has come', [good(1)], 'open', 1, 0, 0, 3],
    ['all has come', [good(4)], 'arrived', 4, 0, 0, 0],
    ['all has come in parts', [good(1), good(3)], 'arrived', 4, 0, 0, 0],
    ['all came wrong', [wrong(4)], 'to sort out', 0, 4, 0, 0],
    ['some came wrong, the rest is to come', [wrong(1)], 'open', 0, 1, 0, 3],
    ['some came wrong, the rest is here', [good(3), wrong(1)], 'to sort out', 3, 1, 0, 0],
    ['what came wrong is kept', [good(3), wrong(1, 'kept')], 'arrived', 4, 0, 0, 0],
    ['what came wrong goes back', [good(3), wrong(1, 'refunded')], 'arrived', 3, 0, 1, 0],
    ['what came wrong is replaced', [good(3), wrong(1, 'replaced')], 'open', 3, 0, 0, 1],
    ['the replacement came', [good(3), wrong(1, 'replaced'), good(1)], 'arrived', 4, 0, 0, 0],
    ['the replacement came wrong too', [wrong(4, 'replaced'), wrong(4)], 'to sort out', 0, 4, 0, 0],
    ['all of it goes back', [wrong(4, 'refunded')], 'arrived', 0, 0, 4, 0],
  ] as const)('%s', (_name, arrivals, state, received, toSortOut, refunded, outstanding) => {
    expect(standing(anOrder({ quantity: 4, arrivals }))).toEqual({
      state,
      received,
      toSortOut,
      refunded,
      outstanding,
    });
  });

  it('is cancelled whatever has come', () => {
    expect(standing(anOrder({ cancelled: true, quantity: 2, arrivals: [good(1)] })).state).toBe('cancelled');
  });
});

describe('on a day', () => {
  const cases: readonly (readonly [string, Partial<Order>, boolean, boolean])[] = [
    ['promised yesterday', { promisedOn: '2026-11-22' }, true, true],
    ['promised today', { promisedOn: TODAY }, false, true],
    ['promised tomorrow', { promisedOn: '2026-11-24' }, false, false],
    ['promised last year', { promisedOn: '2025-12-31' }, true, true],
    ['arrived', { promisedOn: '2026-11-22', arrivals: [good(1)] }, false, false],
    ['cancelled', { promisedOn: '2026-11-22', cancelled: true }, false, false],
    ['wrong, promised tomorrow', { promisedOn: '2026-11-24', arrivals: [wrong(1)] }, false, true],
    ['refunded', { promisedOn: '2026-11-22', arrivals: [wrong(1, 'refunded')] }, false, false],
  ];

  it.each(cases)('what is %s', (_name, changes, late, needs) => {
    expect(isLate(anOrder(changes), TODAY)).toBe(late);
    expect(needsAHand(anOrder(changes), TODAY)).toBe(needs);
  });

  it('the longest late comes first, then the older number', () => {
    const orders = [
      anOrder({ id: 1, promisedOn: '2026-12-01' }),
      anOrder({ id: 3, promisedOn: '2026-11-20' }),
      anOrder({ id: 2, promisedOn: '2026-11-20' }),
      anOrder({ id: 4, promisedOn: '2025-11-20' }),
    ];
    expect(orders.toSorted(byUrgency).map(({ id }) => id)).toEqual([4, 2, 3, 1]);
  });
});
