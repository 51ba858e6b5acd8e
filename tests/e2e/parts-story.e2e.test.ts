import { describe, expect, it } from 'vitest';
import { standings } from '../../src/records/parts/standings.ts';
import { crewAtWork, dataOf, formOf, labelsOn, messageOf, shownIn } from '../support/crew.ts';

const SEVERAL =
  '/order several lines:"head gasket 84.50; M8 flange bolt x10 12.00; copper washer 14x18 x6 3.20" supplier:"Norvale Gaskets" due:"9 Dec" carriage:6.50';

describe('a parcel that is late', () => {
  it('stands in the morning message as one thing, arrives by one press there, and is undone', async () => {
    await using crew = await crewAtWork({ at: '2026-12-07T09:00' });
    const placed = await crew.type(SEVERAL);
    expect(placed.text).toContain('3 lines from Norvale Gaskets: due Wed 9 Dec');
    crew.at('2026-12-14T08:30');
    await crew.tick();
    const [morning] = crew.mornings();
    if (morning === undefined) throw new Error('no morning message');
    const text = shownIn(morning);
    expect(text).toContain('3 late');
    expect(text).toContain(
      'Parcel from Norvale Gaskets: #1 head gasket, #2 10 × M8 flange bolt, #3 6 × copper washer 14x18',
    );
    expect(text).toContain('late by 3 working days, promised Wed 9 Dec');
    expect(labelsOn(morning)).toEqual([
      'All of it arrived',
      'All but some of it',
      'New date for all',
      'All chased',
    ]);
    await crew.press(morning, 'All chased', { as: 'Bram' });
    expect(crew.record.orders.ofBuild(1).map(({ chasedTimes }) => chasedTimes)).toEqual([1, 1, 1]);
    const form = await crew.press(morning, 'All but some of it', { as: 'Cleo' });
    expect(formOf(form).title).toBe('What of it did not come right?');
    const some = await crew.fill(
      form,
      { missing: 'flange bolt x2', wrong: '', damaged: 'washer x1', rest: '18 Dec', note: '' },
      { as: 'Cleo' },
    );
    expect(some.outcome.kind).toBe('changed');
    const after = shownIn(crew.mornings()[0] ?? morning);
    expect(after).toContain('2 of 3 arrived, logged by Cleo');
    expect(after).toContain('New date Fri 18 Dec');
    expect(after).toContain('1 came wrong or damaged and must be sorted out');
    expect(crew.record.orders.find(2)?.arrivals).toMatchObject([{ quantity: 8, byName: 'Cleo' }]);
    const undone = await crew.type('/undo', { as: 'Cleo' });
    expect(undone.text).toContain('Undone');
    expect(crew.record.orders.ofBuild(1).flatMap(({ arrivals }) => arrivals)).toEqual([]);
    await crew.tick();
    await crew.press(crew.mornings()[0] ?? morning, 'All of it arrived', { as: 'Bram' });
    expect(shownIn(crew.mornings()[0] ?? morning)).toContain('All of this is dealt with');
    expect(standings(crew.record, 1, '2026-12-14').map(({ whereabouts }) => whereabouts)).toEqual([
      'in the box',
      'in the box',
      'in the box',
    ]);
  });
});

describe('a block at the machinist', () => {
  it('goes out in three taps, is chased when it is late, and comes back', async () => {
    await using crew = await crewAtWork({ at: '2026-12-07T09:00' });
    await crew.type('/part add name:block also:"engine block" origin:used');
    const card = await crew.type('/part show part:"engine block"');
    const here = await crew.press(messageOf(card), 'It is here');
    const form = await crew.press(messageOf(here), 'Out for work');
    const out = await crew.fill(form, {
      to: 'Brackendale Machining',
      work: 'line bore',
      due: 'in 2 working days',
      quantity: '1',
      price: '180',
    });
    expect(out.text).toContain('block: line bore: due back Wed 9 Dec');
    expect(out.text).toContain('Brackendale Machining is new here');
    crew.at('2026-12-10T08:30');
    await crew.tick();
    const [morning] = crew.mornings();
    if (morning === undefined) throw new Error('no morning message');
    expect(shownIn(morning)).toContain(
      'at Brackendale Machining, late by 1 working day, promised back Wed 9 Dec',
    );
    expect(shownIn(morning)).toContain('Is it ready? If so we will fetch it');
    expect(labelsOn(morning)).toEqual(['It is back', 'Not all, or not right', 'New date', 'Chased']);
    await crew.press(morning, 'Chased');
    await crew.press(morning, 'It is back', { as: 'Bram' });
    expect(shownIn(crew.mornings()[0] ?? morning)).toContain(
      'Back, from Brackendale Machining. Logged by Bram.',
    );
    const [standing] = standings(crew.record, 1, '2026-12-10');
    expect(standing).toMatchObject({ whereabouts: 'on the shelf', inHand: 1, missing: 0, out: [] });
    const fitted = await crew.type('/part fitted part:block', { as: 'Cleo' });
    expect(fitted.text).toContain('block: 1 fitted');
    expect(dataOf(await crew.type('/cost show by:supplier'))).toMatchObject({
      totals: [{ spentMinor: 18_000 }],
    });
  });
});

describe('a supplier abroad', () => {
  it('is counted by its own holidays and shutdown, in the order and in the morning message', async () => {
    await using crew = await crewAtWork({ at: '2026-12-17T09:00' });
    await crew.type('/supplier set supplier:"Ostwald Ladertechnik" country:DE lead:3');
    await crew.type(
      '/supplier shut supplier:"Ostwald Ladertechnik" from:"24 Dec" to:"3 Jan" reason:"works holidays"',
    );
    const placed = await crew.type('/order place what:"supercharger seal" supplier:"Ostwald Ladertechnik"');
    expect(placed.text).toContain('due Tue 22 Dec');
    crew.at('2027-01-05T08:30');
    await crew.tick();
    // Wed 23 Dec, Mon 4 and Tue 5 Jan: all between is shut
    expect(crew.mornings().map(shownIn).at(-1)).toContain('late by 3 working days, promised Tue 22 Dec 2026');
    const shown = await crew.type('/order show order:seal');
    expect(dataOf(shown)).toMatchObject({ restsOnOrders: 0, teamOrders: 0 });
    expect(shown.text).toContain('Expect it');
  });
});
