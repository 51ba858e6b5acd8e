import { describe, expect, it } from 'vitest';
import { UserError } from '../../../src/core/user-error.ts';
import { cancel, chase, promise, type Receipt, receive } from '../../../src/records/orders/moves.ts';
import { type Order, type Settlement, standing } from '../../../src/records/orders/order.ts';
import { settle } from '../../../src/records/orders/settle.ts';
import { type OpenRecord, openRecord, TODAY } from '../../support/record.ts';

const came = (changes: Partial<Receipt> = {}): Receipt => ({
  condition: 'good',
  cameOn: TODAY,
  byName: 'Bram',
  ...changes,
});

function refusal(work: () => unknown): { code: string; message: string } {
  try {
    work();
  } catch (error) {
    if (error instanceof UserError) return { code: error.code, message: error.message };
    throw error;
  }
  throw new Error('it was done');
}

const take = ({ change, record }: OpenRecord, order: Order, receipt: Receipt = came()) =>
  change(() => receive(record, order, receipt));

const settled = ({ change, record }: OpenRecord, order: Order, settlement: Settlement, due?: string) =>
  change(() => settle(record, order, settlement, due, TODAY));

describe('what came', () => {
  it('is all that was still to come when no number is given', () => {
    const open = openRecord();
    const { value, said } = take(open, open.place({ quantity: 3 }));
    expect(standing(value)).toMatchObject({ state: 'arrived', received: 3, outstanding: 0 });
    expect(said).toBe('#1 3 × head gasket arrived');
  });

  it('may be some of it, with a new day for the rest', () => {
    const open = openRecord();
    const order = open.place({ quantity: 3 });
    const { value } = take(open, order, came({ quantity: 1, rest: '2026-12-04', note: 'one box' }));
    expect(standing(value)).toMatchObject({ state: 'open', received: 1, outstanding: 2 });
    expect(value).toMatchObject({ promisedOn: '2026-12-04', firstPromisedOn: '2026-11-20' });
    expect(value.arrivals).toMatchObject([{ note: 'one box', byName: 'Bram', cameOn: TODAY }]);
  });

  it('leaves the promised day alone when nothing is left to come', () => {
    const open = openRecord();
    expect(take(open, open.place(), came({ rest: '2026-12-04' })).value.promisedOn).toBe('2026-11-20');
  });

  it.each(['wrong', 'damaged'] as const)('waits to be sorted out when it came %s', (condition) => {
    const open = openRecord();
    const { value, said } = take(open, open.place(), came({ condition }));
    expect(standing(value)).toMatchObject({ state: 'to sort out', toSortOut: 1 });
    expect(said).toBe(`#1 head gasket came ${condition}, to sort out`);
  });

  it('cannot be more than is still to come', () => {
    const open = openRecord();
    const order = open.place({ quantity: 2 });
    const { code, message } = refusal(() => take(open, order, came({ quantity: 3 })));
    expect(code).toBe('out-of-range');
    expect(message).toBe(
      'Only 2 of #1 head gasket are still to come, so 3 cannot have arrived. Nothing was changed.',
    );
    expect(open.record.orders.find(1)).toEqual(order);
  });

  it('cannot come twice, and the refusal says when and by whom it was logged', () => {
    const open = openRecord();
    const arrived = take(open, open.place()).value;
    const { code, message } = refusal(() => take(open, arrived));
    expect(code).toBe('already-done');
    expect(message).toContain('it arrived on Mon 23 Nov, logged by Bram. Nothing was changed.');
  });

  it('points at sorting out where that is what is left', () => {
    const open = openRecord();
    const wrong = take(open, open.place(), came({ condition: 'wrong' })).value;
    expect(refusal(() => take(open, wrong)).message).toContain('/order settle');
  });

  it('cannot be of an order that was cancelled', () => {
    const open = openRecord();
    const order = open.place();
    const gone = open.change(() => cancel(open.record, order, TODAY));
    expect(refusal(() => take(open, gone.value)).message).toContain('was cancelled. Nothing was changed.');
  });
});

describe('an order that is awaited', () => {
  it('gets a new day, and keeps the first one promised', () => {
    const open = openRecord();
    const order = open.place();
    const { value, said } = open.change(() => promise(open.record, order, '2026-12-04', TODAY));
    expect(value).toMatchObject({ promisedOn: '2026-12-04', firstPromisedOn: '2026-11-20' });
    expect(said).toBe('#1 head gasket now promised for Fri 4 Dec, was Fri 20 Nov');
  });

  it('is not promised again for the day it is promised for', () => {
    const open = openRecord();
    const order = open.place();
    expect(refusal(() => open.change(() => promise(open.record, order, order.promisedOn, TODAY)))).toEqual({
      code: 'already-done',
      message: '#1 head gasket is promised for Fri 20 Nov already. Nothing was changed.',
    });
  });

  it('counts how often and says when it was last chased', () => {
    const open = openRecord();
    const order = open.place();
    open.change(() => chase(open.record, order, '2026-11-22'));
    expect(open.change(() => chase(open.record, order, TODAY)).value).toMatchObject({
      chasedTimes: 2,
      chasedOn: TODAY,
    });
  });

  it('is off the list once cancelled, but found by its number', () => {
    const open = openRecord();
    const order = open.place();
    open.change(() => cancel(open.record, order, TODAY));
    expect(open.record.orders.ofBuild(open.buildId)).toEqual([]);
    expect(open.record.orders.find(order.id)?.cancelled).toBe(true);
  });

  it.each([
    ['promise', (open: OpenRecord, order: Order) => promise(open.record, order, '2026-12-04', TODAY)],
    ['chase', (open: OpenRecord, order: Order) => chase(open.record, order, TODAY)],
    ['cancel', (open: OpenRecord, order: Order) => cancel(open.record, order, TODAY)],
  ])('is past every move once it has come: %s', (_name, move) => {
    const open = openRecord();
    const arrived = take(open, open.place()).value;
    expect(refusal(() => open.change(() => move(open, arrived))).code).toBe('already-done');
  });
});

describe('what came wrong or damaged', () => {
  const wrongly = (open: OpenRecord): Order => {
    const order = open.place({ quantity: 4 });
    take(open, order, came({ quantity: 1, condition: 'damaged' }));
    const half = take(
      open,
      open.record.orders.find(order.id) ?? order,
      came({ quantity: 1, condition: 'wrong' }),
    );
    return take(open, half.value, came({ quantity: 2 })).value;
  };

  it.each([
    ['kept', undefined, { state: 'arrived', received: 4 }, '#1 2 × head gasket: kept as it is'],
    ['refunded', undefined, { state: 'arrived', refunded: 2 }, '#1 2 × head gasket: given back for a refund'],
    [
      'replaced',
      '2026-12-04',
      { state: 'open', outstanding: 2 },
      '#1 2 × head gasket: to be replaced by Fri 4 Dec',
    ],
  ] as const)('is %s, all of it at once', (settlement, due, expected, saying) => {
    const open = openRecord();
    const { value, said } = settled(open, wrongly(open), settlement, due);
    expect(standing(value)).toMatchObject({ toSortOut: 0, ...expected });
    expect(said).toBe(saying);
    if (due) expect(value.promisedOn).toBe(due);
  });

  it('is replaced only for a day', () => {
    const open = openRecord();
    const order = wrongly(open);
    expect(refusal(() => settled(open, order, 'replaced'))).toEqual({
      code: 'bad-input',
      message:
        'When is the replacement for #1 2 × head gasket due? Give it as due:"12 Dec". Nothing was changed.',
    });
  });

  it('is settled once', () => {
    const open = openRecord();
    const { value } = settled(open, wrongly(open), 'kept');
    expect(refusal(() => settled(open, value, 'kept')).code).toBe('already-done');
  });
});
