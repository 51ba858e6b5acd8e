import { describe, expect, it } from 'vitest';
import { crewAtWork, dataOf, labelsOn, messageOf, shownIn } from '../support/crew.ts';

const place = (what: string, supplier = 'Norvale Gaskets', due = '9 Dec'): string =>
  `/order place what:"${what}" supplier:"${supplier}" due:"${due}"`;

describe('a question instead of a guess', () => {
  it('is asked in private, and one press of its button does what was typed', async () => {
    await using crew = await crewAtWork();
    const asked = await crew.type(place('head gasket', 'Norvale Gaskets', 'next Friday'));
    expect(asked.outcome).toMatchObject({ kind: 'answered', private: true });
    expect(crew.record.orders.find(1)).toBeUndefined();
    const [first = ''] = labelsOn(messageOf(asked));
    const answered = await crew.press(messageOf(asked), first);
    expect(dataOf(answered)).toMatchObject({ order: 1, what: 'head gasket' });
    expect(answered.text).toContain(`due ${first}`);
    expect(answered.text).toContain(`${first}, as picked.`);
  });

  it('saves once when both of its buttons are pressed', async () => {
    await using crew = await crewAtWork();
    const question = messageOf(await crew.type(place('head gasket', 'Norvale Gaskets', 'next Friday')));
    const [one = '', other = ''] = labelsOn(question);
    await crew.press(question, one);
    const again = await crew.press(question, other);
    expect(again.text).toContain('That was saved the first time: order #1 placed: head gasket');
    expect(crew.record.orders.ofBuild(1)).toHaveLength(1);
  });

  it('saves once when both are pressed at the same moment', async () => {
    await using crew = await crewAtWork();
    const question = messageOf(await crew.type(place('head gasket', 'Norvale Gaskets', 'next Friday')));
    await Promise.all(labelsOn(question).map((label) => crew.press(question, label)));
    expect(crew.record.orders.ofBuild(1)).toHaveLength(1);
  });

  it('is put when a supplier’s name is nearly a known one, and offers the name as new', async () => {
    await using crew = await crewAtWork();
    await crew.type(place('head gasket'));
    const asked = await crew.type(place('sump gasket', 'Norvale Gasket'));
    expect(labelsOn(messageOf(asked))).toEqual(['Norvale Gaskets', 'New: Norvale Gasket']);
    await crew.press(messageOf(asked), 'Norvale Gaskets');
    expect(crew.record.suppliers.all().map(({ name }) => name)).toEqual(['Norvale Gaskets']);
    expect(crew.record.orders.find(2)).toMatchObject({ what: 'sump gasket', supplier: 'Norvale Gaskets' });
  });

  it('is put when a name fits several orders', async () => {
    await using crew = await crewAtWork();
    await crew.type(place('head gasket'));
    await crew.type(place('sump gasket'));
    const asked = await crew.type('/order arrived order:gasket');
    expect(labelsOn(messageOf(asked))).toEqual([
      '#1 head gasket (Norvale Gaskets)',
      '#2 sump gasket (Norvale Gaskets)',
    ]);
    await crew.press(messageOf(asked), '#2 sump gasket (Norvale Gaskets)');
    expect(crew.record.orders.find(1)?.arrivals).toEqual([]);
    expect(crew.record.orders.find(2)?.arrivals).toHaveLength(1);
  });

  it('is put when a name is only nearly that of an order, and nothing is taken for it', async () => {
    await using crew = await crewAtWork();
    await crew.type(place('stud M10'));
    await crew.type(place('stud M12'));
    await crew.type('/order arrived order:"stud M10"');
    const again = await crew.type('/order arrived order:"stud M10"');
    expect(again.text).toContain('Nothing of #1 stud M10 is still to come');
    const asked = await crew.type('/order arrived order:"stud M14"');
    expect(asked.text).toContain('No order here is called "stud M14". Is this the one?');
    expect(labelsOn(messageOf(asked))).toEqual(['#2 stud M12 (Norvale Gaskets)']);
    expect(crew.record.orders.find(2)?.arrivals).toEqual([]);
  });

  it('put by a form is answered by its button as well', async () => {
    await using crew = await crewAtWork();
    await crew.type(place('head gasket'));
    crew.at('2026-12-14T08:30');
    await crew.tick();
    const [morning] = crew.mornings();
    if (morning === undefined) throw new Error('no morning message');
    const asked = await crew.fill(await crew.press(morning, 'New date'), { due: 'next Friday' });
    const [first = ''] = labelsOn(messageOf(asked));
    const done = await crew.press(messageOf(asked), first);
    expect(done.text).toContain('Promised Fri 18 Dec, first Wed 9 Dec');
    expect(crew.record.orders.find(1)?.promisedOn).toBe('2026-12-18');
    await crew.tick();
    expect(crew.mornings().map(shownIn)).toEqual([expect.stringContaining('New date Fri 18 Dec')]);
  });
});

describe('taking back', () => {
  it('by the button under the answer, and bringing back by the one under that', async () => {
    await using crew = await crewAtWork();
    const placed = await crew.type(place('head gasket'));
    const undone = await crew.press(messageOf(placed), 'Undo');
    expect(undone.text).toContain('Undone: order #1 placed: head gasket from Norvale Gaskets');
    expect(crew.record.orders.find(1)).toBeUndefined();
    expect(crew.record.suppliers.all()).toEqual([]);
    await crew.press(messageOf(undone), 'Bring it back');
    expect(crew.record.orders.find(1)).toMatchObject({ what: 'head gasket', supplier: 'Norvale Gaskets' });
  });

  it('by /undo, which takes the asker’s own newest change', async () => {
    await using crew = await crewAtWork();
    await crew.type(place('head gasket'), { as: 'Bram' });
    await crew.type(place('sump gasket'));
    await crew.type(place('oil filter'), { as: 'Bram' });
    const undone = await crew.type('/undo');
    expect(undone.text).toContain('Undone: order #2 placed: sump gasket');
    expect(crew.record.orders.ofBuild(1).map(({ what }) => what)).toEqual(['head gasket', 'oil filter']);
    expect((await crew.type('/undo', { as: 'Cleo' })).text).toContain(
      'There is nothing of yours left to undo.',
    );
  });

  it('is refused for somebody else’s change', async () => {
    await using crew = await crewAtWork();
    const placed = await crew.type(place('head gasket'));
    const refused = await crew.press(messageOf(placed), 'Undo', { as: 'Bram' });
    expect(refused.outcome).toMatchObject({ kind: 'answered', private: true });
    expect(refused.text).toContain("is Ada's to undo.");
    expect(crew.record.orders.find(1)).toBeDefined();
  });

  it('is refused, naming who and what, when somebody has built on it since', async () => {
    await using crew = await crewAtWork();
    const placed = await crew.type(place('head gasket'));
    await crew.type('/order arrived order:1', { as: 'Bram' });
    const refused = await crew.press(messageOf(placed), 'Undo');
    expect(refused.text).toContain('Bram has changed this since: “#1 head gasket arrived”');
    expect(crew.record.orders.find(1)?.arrivals).toHaveLength(1);
  });
});

describe('what is offered while typing', () => {
  async function withOrders() {
    const crew = await crewAtWork();
    await crew.type(place('head gasket'));
    await crew.type(place('main bearing', 'Tarn Bearing Supply'));
    const offered = async (line: string) =>
      (await crew.channel.hands('Ada').suggest(line, line.length)).map(({ label }) => label);
    return { ...crew, offered };
  }

  it('are the open orders, wherever an order is meant', async () => {
    await using crew = await withOrders();
    const all = ['#1 head gasket (Norvale Gaskets)', '#2 main bearing (Tarn Bearing Supply)'];
    for (const command of ['arrived', 'show', 'date', 'chased', 'settle', 'cancel']) {
      expect(await crew.offered(`/order ${command} order:`), command).toEqual(all);
    }
    expect(await crew.offered('/order arrived order:bear')).toEqual(all.slice(1));
    await crew.type('/order arrived order:1');
    expect(await crew.offered('/order arrived order:')).toEqual(all.slice(1));
  });

  it('are the suppliers known', async () => {
    await using crew = await withOrders();
    expect(await crew.offered('/order place supplier:tarn')).toEqual(['Tarn Bearing Supply']);
    expect(await crew.offered('/order list supplier:')).toEqual(['Norvale Gaskets', 'Tarn Bearing Supply']);
  });

  it('are days said in full, with their weekday', async () => {
    await using crew = await withOrders();
    expect(await crew.offered('/order place due:"in 5 working days')).toEqual([
      'in 5 working days, as the supplier works',
    ]);
    const from = '/order place supplier:"Norvale Gaskets"';
    expect(await crew.offered(`${from} due:"in 5 working days`)).toEqual(['Mon 14 Dec (in 5 working days)']);
    expect(await crew.offered('/order date order:1 due:')).toEqual([
      'Tue 8 Dec (tomorrow)',
      'Thu 10 Dec (in 3 working days)',
      'Mon 14 Dec (in 5 working days)',
      'Mon 21 Dec (in 2 weeks)',
    ]);
  });

  it('can be taken as it stands', async () => {
    await using crew = await withOrders();
    const line = '/order arrived order:gask';
    const [first] = await crew.channel.hands('Ada').suggest(line, line.length);
    await crew.type(first?.line ?? '');
    expect(crew.record.orders.find(1)?.arrivals).toHaveLength(1);
  });
});
