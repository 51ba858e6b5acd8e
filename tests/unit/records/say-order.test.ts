import { describe, expect, it } from 'vitest';
import { workingDays } from '../../../src/calendar/working-days.ts';
import { orderAnswer } from '../../../src/records/orders/order-answer.ts';
import { orderList } from '../../../src/records/orders/order-list.ts';
import { sayChase, sayLateness, sayOutstanding, sayWhat } from '../../../src/records/orders/say-order.ts';
import { anArrival, anOrder, TODAY } from '../../support/record.ts';

const days = workingDays('GB/ENG');

describe('how late', () => {
  // gov.uk/bank-holidays: 25 and 28 December 2026 and 1 January 2027 are bank holidays in England
  it.each([
    ['2026-11-20', '2026-11-23', 'late by 1 working day'],
    ['2026-11-20', '2026-11-21', 'late, no working day yet'],
    ['2026-11-20', '2026-11-22', 'late, no working day yet'],
    ['2026-11-20', '2026-11-24', 'late by 2 working days'],
    ['2026-11-16', '2026-11-23', 'late by 5 working days'],
    ['2026-12-24', '2026-12-28', 'late, no working day yet'],
    ['2026-12-24', '2026-12-29', 'late by 1 working day'],
    ['2026-12-24', '2027-01-04', 'late by 4 working days'],
  ])('promised for %s, on %s: %s', (promised, today, said) =>
    expect(sayLateness(promised, today, days)).toBe(said),
  );
});

describe('what', () => {
  it('names the number where there is more than one', () => {
    expect(sayWhat({ what: 'gasket', quantity: 1 })).toBe('gasket');
    expect(sayWhat({ what: 'gasket', quantity: 2 })).toBe('2 × gasket');
    expect(sayOutstanding(anOrder({ quantity: 3, arrivals: [anArrival()] }))).toBe('2 × head gasket');
  });
});

describe('whose chase', () => {
  it.each([
    [0, null, 'Ada’s chase, nobody has chased it yet'],
    [1, '2026-11-20', 'Ada’s chase, chased once, last on Fri 20 Nov'],
    [3, '2026-11-20', 'Ada’s chase, chased 3 times, last on Fri 20 Nov'],
  ])('chased %i times', (chasedTimes, chasedOn, said) => {
    expect(sayChase(anOrder({ chasedTimes, chasedOn }), TODAY)).toBe(said);
  });
});

describe('an order as a card', () => {
  const card = (changes: Parameters<typeof anOrder>[0]) =>
    orderAnswer({
      order: anOrder(changes),
      today: TODAY,
      days,
      extraButtons: [{ label: 'Undo', does: { command: 'undo', action: 'this', args: { change: 1 } } }],
    });

  it.each([
    ['late', {}, 'head gasket: late by 1 working day', 'late'],
    ['due', { promisedOn: '2026-12-04' }, 'head gasket: due Fri 4 Dec', 'plain'],
    ['all here', { arrivals: [anArrival()] }, 'head gasket: all here', 'done'],
    ['to sort out', { arrivals: [anArrival({ condition: 'wrong' })] }, 'head gasket: 1 to sort out', 'soon'],
    ['cancelled', { cancelled: true }, 'head gasket: cancelled', 'plain'],
    [
      'partly here',
      { quantity: 3, promisedOn: '2026-12-04', arrivals: [anArrival(), anArrival({ condition: 'wrong' })] },
      '3 × head gasket: 1 still to come, due Fri 4 Dec, 1 to sort out',
      'plain',
    ],
  ] as const)('%s', (_name, changes, result, tone) => {
    const answer = card(changes);
    expect(answer.result).toBe(result);
    expect(answer.tone).toBe(tone);
  });

  it('always keeps its undo, however many buttons there are', () => {
    const both = card({ quantity: 2, arrivals: [anArrival({ condition: 'wrong' })] });
    expect(both.buttons?.map(({ label }) => label)).toEqual([
      'Arrived',
      'Only some, or not right',
      'New date',
      'Chased',
      'Sort out',
      'Undo',
    ]);
  });

  it('gives scripts dates as ISO 8601 and money in the smallest unit', () => {
    expect(card({ price: { minor: 8450, currency: 'GBP' } }).data).toMatchObject({
      order: 1,
      state: 'open',
      outstanding: 1,
      dueOn: '2026-11-20',
      priceMinor: 8450,
      currency: 'GBP',
    });
  });
});

describe('the list', () => {
  it('says how many are open and how many of them late', () => {
    const late = anOrder({ id: 1 });
    const later = anOrder({ id: 2, promisedOn: '2026-12-04' });
    expect(orderList([late, later], { today: TODAY, daysOf: () => days })).toMatchObject({
      result: '2 open, 1 late',
      tone: 'late',
    });
    expect(orderList([later], { today: TODAY, daysOf: () => days, supplier: 'Norvale' }).result).toBe(
      '1 open from Norvale',
    );
    expect(orderList([], { today: TODAY, daysOf: () => days })).toMatchObject({
      result: 'Nothing is on order',
      tone: 'plain',
    });
    expect(orderList([], { today: TODAY, daysOf: () => days }).menu).toBeUndefined();
  });
});
