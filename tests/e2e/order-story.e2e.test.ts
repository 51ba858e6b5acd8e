import { describe, expect, it } from 'vitest';
import { type Crew, crewAtWork, dataOf, formOf, labelsOn, shownIn } from '../support/crew.ts';
import { publishedApi } from '../support/published-api.ts';

const GASKET = '/order place what:"head gasket" supplier:"Norvale Gaskets" due:"9 Dec"';

/** A gasket promised for Wednesday, not come by the Monday after: three working days late. */
async function overdue(): Promise<Crew & { readonly morning: () => ReturnType<typeof onlyMorning> }> {
  const crew = await crewAtWork({ at: '2026-12-07T09:00' });
  await crew.type(GASKET);
  crew.at('2026-12-14T08:30');
  await crew.tick();
  return { ...crew, morning: () => onlyMorning(crew) };
}

function onlyMorning(crew: Crew) {
  const mornings = crew.mornings();
  expect(mornings).toHaveLength(1);
  const [morning] = mornings;
  if (morning === undefined) throw new Error('no morning message');
  return morning;
}

describe('an order that goes overdue', () => {
  it('is said back when it is placed, with the day as it was read', async () => {
    await using crew = await crewAtWork();
    const placed = await crew.type(`${GASKET} quantity:2 price:"84.50"`);
    expect(placed.text).toContain('2 × head gasket: due Wed 9 Dec');
    expect(placed.text).toContain('“9 Dec” read as Wed 9 Dec');
    expect(placed.text).toContain('Norvale Gaskets is a new supplier here');
    expect(dataOf(placed)).toMatchObject({
      order: 1,
      quantity: 2,
      dueOn: '2026-12-09',
      priceMinor: 8450,
      currency: 'GBP',
      chaser: 'Ada',
    });
  });

  it('gets exactly one message that says what, how late, whose chase and what to write', async () => {
    await using crew = await overdue();
    const text = shownIn(crew.morning());
    expect(text).toContain('Morning, Mon 14 Dec');
    expect(text).toContain('1 late');
    expect(text).toContain('#1 head gasket');
    expect(text).toContain('late by 3 working days, promised Wed 9 Dec');
    expect(text).toContain('Ada’s chase, nobody has chased it yet');
    expect(text).toContain('To Norvale Gaskets');
    expect(text).toContain('- head gasket, ordered Mon 7 Dec, promised for Wed 9 Dec (our number 1)');
    expect(labelsOn(crew.morning())).toEqual(['Arrived', 'Only some, or not right', 'New date', 'Chased']);
  });

  it('is not told of a second time however often the reminders look', async () => {
    await using crew = await overdue();
    for (const time of ['08:30', '08:31', '12:00', '19:59', '20:00', '23:59']) {
      crew.at(`2026-12-14T${time}`);
      expect(await crew.tick()).toEqual([]);
    }
    expect(crew.mornings()).toHaveLength(1);
  });

  it('is told of again on the next working day only', async () => {
    await using crew = await overdue();
    crew.at('2026-12-15T08:29');
    expect(await crew.tick()).toEqual([]);
    crew.at('2026-12-15T08:30');
    expect(await crew.tick()).toHaveLength(1);
    expect(shownIn(crew.mornings()[1] ?? crew.morning())).toContain('late by 4 working days');
  });

  it('pings the one whose chase it is, and nobody else', async () => {
    await using crew = await overdue();
    const post = crew.wire.exchanges.find(
      ({ method, path }) => method === 'POST' && path.endsWith('/messages'),
    );
    expect(post?.request).toMatchObject({
      allowed_mentions: { parse: [], users: [crew.channel.hands('Ada').id] },
      enforce_nonce: true,
    });
    expect(JSON.stringify(post?.request)).toMatch(/"nonce":"[\w-]{25}"/);
  });
});

describe('the buttons of the morning message', () => {
  it('"Arrived" updates the message in place and the record with it', async () => {
    await using crew = await overdue();
    const before = crew.morning();
    const pressed = await crew.press(before, 'Arrived', { as: 'Bram' });
    expect(pressed.outcome.kind).toBe('changed');
    expect(crew.morning().id).toBe(before.id);
    expect(shownIn(crew.morning())).toContain('All of this is dealt with');
    expect(shownIn(crew.morning())).toContain('Arrived, from Norvale Gaskets. Logged by Bram.');
    expect(labelsOn(crew.morning())).toEqual([]);
    expect(crew.record.orders.find(1)?.arrivals).toMatchObject([
      { cameOn: '2026-12-14', quantity: 1, condition: 'good', byName: 'Bram' },
    ]);
    expect(crew.channel.messages(before.channel_id)).toHaveLength(2);
    crew.at('2026-12-15T08:30');
    expect(await crew.tick()).toEqual([]);
  });

  it('"New date" opens a form, and the order keeps quiet until that day has passed', async () => {
    await using crew = await overdue();
    const form = await crew.press(crew.morning(), 'New date');
    expect(formOf(form).title).toBe('New date for #1');
    const done = await crew.fill(form, { due: '18 Dec' });
    expect(done.outcome.kind).toBe('changed');
    expect(crew.record.orders.find(1)).toMatchObject({
      promisedOn: '2026-12-18',
      firstPromisedOn: '2026-12-09',
    });
    expect(shownIn(crew.morning())).toContain('New date Fri 18 Dec');
    crew.at('2026-12-17T08:30');
    expect(await crew.tick()).toEqual([]);
    crew.at('2026-12-18T08:30');
    await crew.tick();
    expect(shownIn(crew.mornings()[1] ?? crew.morning())).toContain('1 due today');
  });

  it('"Chased" logs the chase, shows it in place and takes the draft away', async () => {
    await using crew = await overdue();
    await crew.press(crew.morning(), 'Chased');
    expect(crew.record.orders.find(1)).toMatchObject({ chasedTimes: 1, chasedOn: '2026-12-14' });
    const text = shownIn(crew.morning());
    expect(text).toContain('Ada’s chase, chased once, last on Mon 14 Dec');
    expect(text).not.toContain('we are still waiting for');
    expect(labelsOn(crew.morning())).toContain('Arrived');
  });

  it('work from yesterday’s message too, and redraw that one', async () => {
    await using crew = await overdue();
    const yesterday = crew.morning();
    crew.at('2026-12-15T08:30');
    await crew.tick();
    const pressed = await crew.press(yesterday, 'Arrived');
    expect(pressed.outcome).toMatchObject({ kind: 'changed', message: { id: yesterday.id } });
    expect(crew.record.orders.find(1)?.arrivals).toHaveLength(1);
  });

  it('refuse what somebody else has done meanwhile, in private', async () => {
    await using crew = await overdue();
    await crew.type('/order arrived order:1', { as: 'Bram' });
    const late = await crew.press(crew.morning(), 'Arrived', { as: 'Cleo' });
    expect(late.outcome).toMatchObject({ kind: 'answered', private: true });
    expect(late.text).toContain('it arrived on Mon 14 Dec, logged by Bram. Nothing was changed.');
    expect(crew.record.orders.find(1)?.arrivals).toHaveLength(1);
  });
});

describe('an arrival that is not all of it, or not right', () => {
  /** Five bearings, a week late. */
  async function bearings() {
    const crew = await crewAtWork({ at: '2026-12-07T09:00' });
    await crew.type('/order place what:"main bearing" supplier:"Tarn Bearing Supply" due:"9 Dec" quantity:5');
    crew.at('2026-12-14T08:30');
    await crew.tick();
    return crew;
  }

  it('leaves the rest open under a date of its own', async () => {
    await using crew = await bearings();
    const form = await crew.press(onlyMorning(crew), 'Only some, or not right');
    expect(form.text).toContain('quantity: How many came, of 5 × main bearing [5]');
    await crew.fill(form, { quantity: '3', rest: '18 Dec' });
    expect(crew.record.orders.find(1)).toMatchObject({
      promisedOn: '2026-12-18',
      arrivals: [{ quantity: 3 }],
    });
    expect(shownIn(onlyMorning(crew))).toContain('#1 2 × main bearing');
  });

  it('goes to "to sort out" when it is wrong, until it is settled by the button', async () => {
    await using crew = await bearings();
    const form = await crew.press(onlyMorning(crew), 'Only some, or not right');
    await crew.fill(form, { quantity: '5', condition: 'wrong', note: 'oversize' });
    const text = shownIn(onlyMorning(crew));
    expect(text).toContain('1 to sort out');
    expect(text).toContain('5 came wrong or damaged and must be sorted out');
    const settling = await crew.press(onlyMorning(crew), 'Sort out');
    const noDay = await crew.fill(settling, { outcome: 'replaced' });
    expect(noDay.text).toContain('When is the replacement for #1 5 × main bearing due?');
    const again = await crew.press(onlyMorning(crew), 'Sort out');
    await crew.fill(again, { outcome: 'replaced', due: '21 Dec' });
    expect(crew.record.orders.find(1)).toMatchObject({
      promisedOn: '2026-12-21',
      arrivals: [{ quantity: 5, condition: 'wrong', settlement: 'replaced', note: 'oversize' }],
    });
  });

  it('refuses more than is still to come, and a number that is none', async () => {
    await using crew = await bearings();
    const form = await crew.press(onlyMorning(crew), 'Only some, or not right');
    const tooMany = await crew.fill(form, { quantity: '6' });
    expect(tooMany.text).toContain('Only 5 of #1 main bearing are still to come, so 6 cannot have arrived.');
    const again = await crew.press(onlyMorning(crew), 'Only some, or not right');
    const none = await crew.fill(again, { quantity: 'a few' });
    expect(none.text).toMatch(/quantity: .*must be a number.*Nothing was changed\./s);
    expect(crew.record.orders.find(1)?.arrivals).toEqual([]);
  });
});

describe('all of it on the wire', () => {
  const api = publishedApi();
  it.skipIf(api === undefined)('is as the published API describes it', async () => {
    await using crew = await overdue();
    await crew.fill(await crew.press(crew.morning(), 'Only some, or not right'), { condition: 'damaged' });
    await crew.fill(await crew.press(crew.morning(), 'Sort out'), { outcome: 'kept' });
    await crew.type('/order list');
    await crew.type('/undo');
    await crew.type('/help');
    await crew.type('/team');
    await crew.type('/thread size:"21.9 x 1.5"');
    expect(crew.wire.exchanges.length).toBeGreaterThan(10);
    expect(crew.wire.exchanges.flatMap((exchange) => api?.problemsOf(exchange) ?? [])).toEqual([]);
  });
});
