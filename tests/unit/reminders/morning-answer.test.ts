import { describe, expect, it } from 'vitest';
import { workingDays } from '../../../src/calendar/working-days.ts';
import type { Order } from '../../../src/records/orders/order.ts';
import { morningAnswer, stillNeeded } from '../../../src/reminders/morning-answer.ts';
import { anArrival, anOrder, TODAY } from '../../support/record.ts';

const view = (orders: readonly Order[]) =>
  morningAnswer({
    buildName: 'Coupe',
    notice: { kind: 'morning', buildId: 1, day: TODAY, orderIds: orders.map(({ id }) => id) },
    noticeId: 9,
    orders,
    daysOf: () => workingDays('GB/ENG'),
  });

const late = anOrder({ id: 1, what: 'gasket', quantity: 2 });
const dueToday = anOrder({ id: 2, what: 'pump', promisedOn: TODAY, chaserId: 'bram', chaserName: 'Bram' });
const wrong = anOrder({ id: 3, what: 'hose', arrivals: [anArrival({ condition: 'wrong' })] });

describe('the morning message', () => {
  it('says at a glance what is late, due and to sort out', () => {
    const { subject, result, tone, certainty } = view([late, dueToday, wrong]);
    expect(subject).toBe('Morning, Mon 23 Nov');
    expect(result).toBe('1 late, 1 due today, 1 to sort out');
    expect(tone).toBe('late');
    expect(certainty).toBe('Coupe');
  });

  it('says by how long in working days, whose chase it is and what was done', () => {
    const chased = anOrder({ ...late, chasedOn: '2026-11-20', chasedTimes: 2 });
    expect(view([chased]).items).toMatchObject([
      {
        text: '#1 2 × gasket',
        note: 'from Norvale, late by 1 working day, promised Fri 20 Nov. Ada’s chase, chased 2 times, last on Fri 20 Nov.',
        tone: 'late',
      },
    ]);
  });

  it('pings those whose chase is late, each once, and nobody else', () => {
    const also = anOrder({ ...late, id: 4 });
    expect(view([late, also, dueToday, wrong]).notify).toEqual(['ada']);
    expect(view([dueToday, wrong]).notify).toEqual([]);
  });

  it('gives everything that can have happened a button', () => {
    const labels = (order: Order) => view([order]).items?.[0]?.buttons?.map(({ label }) => label) ?? [];
    expect(labels(late)).toEqual(['Arrived', 'Only some, or not right', 'New date', 'Chased']);
    expect(labels(wrong)).toEqual(['Sort out']);
    const both = anOrder({ ...late, arrivals: [anArrival({ condition: 'damaged' })] });
    expect(labels(both)).toContain('Sort out');
    expect(labels(anOrder({ ...both, promisedOn: '2026-12-04' }))).toEqual(['Sort out']);
  });

  it('keeps every order in its place whatever becomes of it', () => {
    const four = [1, 2, 3, 4].map((id) => anOrder({ id, what: `part ${id}` }));
    const names = (orders: readonly Order[]) => view(orders).items?.map(({ text }) => text.split(' ')[0]);
    const arrived = four.map((order) =>
      order.id === 2 ? anOrder({ ...order, arrivals: [anArrival()] }) : order,
    );
    const gone = four.map((order) => (order.id === 1 ? anOrder({ ...order, cancelled: true }) : order));
    expect(names(arrived)).toEqual(names(four));
    expect(names(gone)).toEqual(names(four));
    expect(view(arrived).items?.[1]).toMatchObject({
      note: 'Arrived, from Norvale. Logged by Bram.',
      tone: 'done',
    });
    expect(view(gone).items?.[0]).toMatchObject({ note: 'Cancelled.' });
  });

  it('puts what has no room for buttons into a menu, and only what still needs a hand', () => {
    const seven = Array.from({ length: 7 }, (_, index) =>
      anOrder({ id: index + 1, what: `part ${index + 1}` }),
    );
    expect(view(seven).items).toHaveLength(4);
    expect(view(seven).menu?.choices.map(({ value }) => value)).toEqual(['5', '6', '7']);
    const done = seven.map((order) =>
      order.id === 6 ? anOrder({ ...order, arrivals: [anArrival()] }) : order,
    );
    expect(view(done).menu?.choices.map(({ value }) => value)).toEqual(['5', '7']);
    expect(view(seven.slice(0, 4)).menu).toBeUndefined();
  });

  it('writes one message for each supplier, all of its late orders in it', () => {
    const orders = [
      late,
      anOrder({ id: 4, what: 'valve' }),
      anOrder({ id: 5, what: 'belt', supplier: 'Castwell' }),
      dueToday,
    ];
    const drafts = view(orders).drafts ?? [];
    expect(drafts.map(({ label }) => label)).toEqual(['To Norvale', 'To Castwell']);
    expect(drafts[0]?.text).toContain(
      '- 2 × gasket, ordered Mon 16 Nov, promised for Fri 20 Nov (our number 1)',
    );
    expect(drafts[0]?.text).toContain('valve');
    expect(drafts[0]?.text).not.toContain('belt');
    expect(drafts[1]?.text).toContain('Regards, Ada');
  });

  it('writes no message to a supplier who has been asked today', () => {
    expect(view([anOrder({ ...late, chasedOn: TODAY, chasedTimes: 1 })]).drafts).toEqual([]);
  });

  it('says so when all of it is dealt with, and is not sent then', () => {
    const orders = [
      anOrder({ ...late, arrivals: [anArrival({ quantity: 2 })] }),
      anOrder({ id: 2, cancelled: true }),
    ];
    expect(view(orders)).toMatchObject({ result: 'All of this is dealt with', tone: 'done', notify: [] });
    const notice = { kind: 'morning' as const, buildId: 1, day: TODAY, orderIds: [1, 2] };
    expect(stillNeeded(orders, notice)).toBe(false);
    expect(stillNeeded([late], notice)).toBe(true);
  });
});

describe('lines of one parcel', () => {
  const parcel = [1, 2, 3].map((id) => anOrder({ id, what: `part ${id}`, purchaseId: 7 }));

  it('stand together, with the buttons of the parcel', () => {
    const { items, result } = view([...parcel, dueToday]);
    expect(result).toBe('3 late, 1 due today');
    expect(items).toHaveLength(2);
    expect(items?.[0]).toMatchObject({
      text: 'Parcel from Norvale: #1 part 1, #2 part 2, #3 part 3',
      note: 'late by 1 working day, promised Fri 20 Nov. Ada’s chase, nobody has chased it yet.',
      tone: 'late',
    });
    expect(items?.[0]?.buttons?.map(({ label, does }) => [label, does.args['purchase']])).toEqual([
      ['All of it arrived', 7],
      ['All but some of it', 7],
      ['New date for all', 7],
      ['All chased', 7],
    ]);
  });

  it('take the room of one order, and are named up to four', () => {
    const six = Array.from({ length: 6 }, (_, index) =>
      anOrder({ id: index + 1, what: 'stud', purchaseId: 7 }),
    );
    const { items, menu } = view(
      [...six, late, dueToday, wrong].map((order, index) => ({
        ...order,
        id: anOrder({ id: index + 1 }).id,
      })),
    );
    expect(items).toHaveLength(4);
    expect(items?.[0]?.text).toContain('and 2 more');
    expect(menu).toBeUndefined();
  });

  it('stay together whatever becomes of them', () => {
    const [first, second, third] = parcel;
    const some = [
      { ...first, arrivals: [anArrival()] },
      second,
      { ...third, cancelled: true },
    ] as readonly Order[];
    expect(view(some).items?.map(({ text }) => text)).toEqual(['Parcel from Norvale: #2 part 2']);
    expect(view(some).items?.[0]?.note).toContain('1 of 3 arrived, logged by Bram.');
    const all = parcel.map((order) => ({ ...order, arrivals: [anArrival()] }));
    expect(view(all).items).toMatchObject([
      { note: '3 of 3 arrived, logged by Bram.', tone: 'done', buttons: [] },
    ]);
    const wrongOne = [
      { ...first, arrivals: [anArrival({ condition: 'wrong' })] },
      second,
    ] as readonly Order[];
    expect(view(wrongOne).items?.[0]?.buttons?.map(({ label }) => label)).toContain('Sort out');
    const gone = parcel.map((order) => ({ ...order, cancelled: true }));
    expect(view(gone).items).toMatchObject([{ note: 'Cancelled.' }]);
    const later = parcel.map((order) => ({ ...order, promisedOn: '2026-12-04' }));
    expect(view(later).items).toMatchObject([{ note: 'New date Fri 4 Dec.', tone: 'plain', buttons: [] }]);
  });

  it('a line alone in the message stands as an order', () => {
    expect(view(parcel.slice(0, 1)).items).toMatchObject([{ text: '#1 part 1' }]);
  });
});

describe('something out for work', () => {
  it('is at whom it was taken to, and due back', () => {
    const work = anOrder({ what: 'block: line bore', kind: 'work', supplier: 'Brackendale' });
    const { items, drafts } = view([work]);
    expect(items?.[0]?.note).toContain('at Brackendale, late by 1 working day, promised back Fri 20 Nov.');
    expect(drafts?.[0]?.text).toContain('brought to you');
    expect(view([{ ...work, promisedOn: TODAY }]).items?.[0]?.note).toContain('due back today');
    expect(view([{ ...work, arrivals: [anArrival()] }]).items).toMatchObject([
      { note: 'Back, from Brackendale. Logged by Bram.', tone: 'done' },
    ]);
  });
});
