import { describe, expect, it } from 'vitest';
import { UserError } from '../../../src/core/user-error.ts';
import { findOrder, suggestOrders } from '../../../src/records/orders/find-order.ts';
import { receive } from '../../../src/records/orders/moves.ts';
import {
  knownSupplier,
  suggestSuppliers,
  supplierOrNew,
} from '../../../src/records/suppliers/find-supplier.ts';
import { editDistance, likeNames, plain } from '../../../src/records/suppliers/supplier.ts';
import { type OpenRecord, openRecord, TODAY } from '../../support/record.ts';

function refusal(work: () => unknown): UserError {
  try {
    work();
  } catch (error) {
    if (error instanceof UserError) return error;
    throw error;
  }
  throw new Error('it was found');
}

function stocked(): OpenRecord {
  const open = openRecord();
  open.place({ what: 'Head gasket', due: '2026-12-01' });
  open.place({ what: 'oil pump', supplier: 'Bramley Spares', due: '2026-11-20' });
  open.place({ what: 'exhaust gasket', due: '2026-11-25' });
  open.place({ what: 'Kühlerschlauch 3' });
  const here = open.place({ what: 'water pump' });
  open.change(() => receive(open.record, here, { condition: 'good', cameOn: TODAY, byName: 'Bram' }));
  return open;
}

describe('an order', () => {
  it.each([
    ['2', 2],
    ['#2', 2],
    [' # 2 ', 2],
    ['oil pump', 2],
    ['OIL  PUMP', 2],
    ['oil', 2],
    ['pump', 2],
    ['water pump', 5],
    ['kuhlerschlauch', 4],
    ['head gasket', 1],
  ])('is found by %j', (typed, id) => {
    const { record, buildId } = stocked();
    expect(findOrder(record, buildId, typed).id).toBe(id);
  });

  it('is asked about when several open ones fit, the most urgent first', () => {
    const { record, buildId } = stocked();
    const { code, question } = refusal(() => findOrder(record, buildId, 'gasket'));
    expect(code).toBe('which-one');
    expect(question).toEqual({
      field: 'order',
      choices: [
        { label: '#3 exhaust gasket (Norvale)', value: '3' },
        { label: '#1 Head gasket (Norvale)', value: '1' },
      ],
    });
  });

  it.each(['oilpump', 'oil pmup'])('is not guessed from the slip %j, but offered', (typed) => {
    const { record, buildId } = stocked();
    const { code, question } = refusal(() => findOrder(record, buildId, typed));
    expect(code).toBe('which-one');
    expect(question?.choices.map(({ value }) => value)).toContain('2');
  });

  it.each(['99', '#99', 'turbocharger', '0'])('that is not there is said not to be: %j', (typed) => {
    const { record, buildId } = stocked();
    const { code, message } = refusal(() => findOrder(record, buildId, typed));
    expect(code).toBe('not-found');
    expect(message).toContain('/order list');
  });

  it('of another build is not found by its number', () => {
    const open = stocked();
    const other = open.change(() => ({ value: open.record.builds.open('601', 'Other'), said: 'a build' }));
    expect(refusal(() => findOrder(open.record, other.value.id, '1')).code).toBe('not-found');
  });

  it('is suggested while it is open, the most urgent first', () => {
    const { record, buildId } = stocked();
    const values = (typed: string) => suggestOrders(record, buildId, typed).map(({ value }) => value);
    expect(values('')).toEqual(['2', '4', '3', '1']);
    expect(values('gask')).toEqual(['3', '1']);
    expect(values('#2')).toEqual(['2']);
    expect(values('bramley')).toEqual(['2']);
    expect(values('water')).toEqual([]);
  });
});

describe('a supplier', () => {
  it.each(['Bramley Spares', 'bramley spares', ' BRAMLEY  SPARES '])('is the known one: %j', (typed) => {
    const { record } = stocked();
    expect(supplierOrNew(record, typed).known?.name).toBe('Bramley Spares');
  });

  it('is new when nothing known is like it', () => {
    const { record } = stocked();
    expect(supplierOrNew(record, 'Castwell')).toEqual({ name: 'Castwell' });
  });

  it.each(['Bramly Spares', 'Bramley', 'bramley spares ltd', 'Norvalle'])(
    'is asked about when it is nearly known: %j',
    (typed) => {
      const { record } = stocked();
      const { code, question } = refusal(() => supplierOrNew(record, typed));
      expect(code).toBe('which-one');
      expect(question?.field).toBe('supplier');
      expect(question?.choices.at(-1)).toEqual({ label: `New: ${typed}`, value: `+${typed}` });
    },
  );

  it('is new all the same when that was picked', () => {
    const { record } = stocked();
    expect(supplierOrNew(record, '+Norvalle')).toEqual({ name: 'Norvalle' });
    expect(supplierOrNew(record, '+Norvale').known?.name).toBe('Norvale');
  });

  it('is looked for by what begins or nearly is its name, and the known ones are named otherwise', () => {
    const { record } = stocked();
    expect(knownSupplier(record, 'norv').name).toBe('Norvale');
    const { message } = refusal(() => knownSupplier(record, 'Castwell'));
    expect(message).toBe('There is no supplier "Castwell". Known: Bramley Spares, Norvale.');
    expect(refusal(() => knownSupplier(openRecord().record, 'x')).message).toContain(
      'Nobody has been ordered from',
    );
  });

  it('is suggested by any part of its name', () => {
    const { record } = stocked();
    expect(suggestSuppliers(record, 'spar').map(({ value }) => value)).toEqual(['Bramley Spares']);
    expect(suggestSuppliers(record, '')).toHaveLength(2);
  });
});

describe('likeness of names', () => {
  /** Published examples of the Levenshtein distance: NIST Dictionary of Algorithms and Data Structures; textbooks. */
  it.each([
    ['kitten', 'sitting', 3],
    ['saturday', 'sunday', 3],
    ['flaw', 'lawn', 2],
    ['', 'abc', 3],
    ['same', 'same', 0],
  ])('from %j to %j are %i edits', (a, b, edits) => {
    expect(editDistance(a, b)).toBe(edits);
    expect(editDistance(b, a)).toBe(edits);
  });

  it('takes names apart from case, accents and spaces', () => {
    expect(plain('  Kühler\tSCHLAUCH ')).toBe('kuhler schlauch');
  });

  it('is not seen in fewer than three letters', () => {
    expect(likeNames('ab', ['abc'])).toEqual([]);
    expect(likeNames('ab', ['AB'])).toEqual(['AB']);
  });
});
