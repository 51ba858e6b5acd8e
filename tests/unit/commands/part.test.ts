import { describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import type { Result } from '../../../src/bot/request.ts';
import { type CrewBot, cardIn, formIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';
import { contentsOf } from '../../support/crew-content.ts';

type Options = Record<string, string | number | boolean>;

const part = (bot: CrewBot, what: string, options: Options = {}) => bot.run(`part ${what}`, options);
const order = (bot: CrewBot, what: string, quantity = 1) =>
  bot.run('order place', { what, quantity, supplier: 'Norvale', due: '2026-12-04' });
const record = (bot: CrewBot) => bot.teams.at(TEAM).record;
const labels = (result: Result) => cardIn(result).buttons?.map(({ label }) => label) ?? [];

function press(bot: CrewBot, result: Result, label: string, fields: Record<string, string> = {}) {
  const button = cardIn(result).buttons?.find((one) => one.label === label);
  if (!button) throw new Error(`no button ${label}, only ${labels(result).join()}`);
  return bot.press(writeActionRef(button.does), fields);
}

/** Undoes what a card has reported, and makes sure that everything is as it was. */
async function undone(bot: CrewBot, before: unknown, done: Result): Promise<void> {
  expect(done.ok, cardIn(done).result).toBe(true);
  expect(contentsOf(bot)).not.toEqual(before);
  expect((await press(bot, done, 'Undo')).ok).toBe(true);
  expect(contentsOf(bot)).toEqual(before);
}

describe('a part', () => {
  it('is opened by its first order, with as many as were ordered', async () => {
    const bot = await openCrewBot();
    await order(bot, 'head stud', 10);
    await order(bot, 'Head  Stud', 2);
    expect(cardIn(await part(bot, 'show', { part: 'head stud' }))).toMatchObject({
      result: 'head stud: 12 on order, due Fri 4 Dec',
      data: { part: 1, needed: 10, missing: 0, whereabouts: 'on order' },
    });
    expect(record(bot).parts.ofBuild(1)).toHaveLength(1);
  });

  it('is found by any of its names', async () => {
    const bot = await openCrewBot();
    await part(bot, 'add', { name: 'harmonic damper', also: 'crank pulley, front pulley' });
    for (const typed of ['harmonic damper', 'CRANK PULLEY', 'front', '#1', 'damper']) {
      expect(cardIn(await part(bot, 'show', { part: typed })).data['name']).toBe('harmonic damper');
    }
    await order(bot, 'crank pulley');
    expect(record(bot).orders.find(1)).toMatchObject({ what: 'crank pulley', partId: 1 });
    for (const typed of ['crank pulley', 'front pulley', 'Harmonic damper']) {
      expect(cardIn(await bot.run('order show', { order: typed })).data['order']).toBe(1);
    }
  });

  it.each<[string, Options, string]>([
    ['out', { to: 'Tarn', work: 'line bore', due: '2026-12-04' }, 'block: line bore: due back Fri 4 Dec'],
    ['shelf', { quantity: 2 }, 'block: 2 on the shelf'],
    ['fitted', {}, 'block: 1 fitted'],
  ])(
    'that nobody has named yet is written down with /part %s %j, at a press',
    async (what, options, said) => {
      const bot = await openCrewBot();
      const asked = await part(bot, what, { part: 'block', ...options });
      expect(cardIn(asked).result).toBe('No part here is called "block" yet. Is it a new one?');
      expect(record(bot).builds.all()).toEqual([]);
      expect(cardIn(await press(bot, asked, 'New part: block')).result).toBe(said);
      expect(record(bot).parts.ofBuild(1)).toMatchObject([{ name: 'block' }]);
    },
  );

  it('goes out to whom a slip meant, whose usual time says when it is due back', async () => {
    const bot = await openCrewBot();
    await bot.run('supplier set', { supplier: 'Brackendale', lead: 3 });
    await part(bot, 'shelf', { part: '+block' });
    const asked = await part(bot, 'out', { part: 'block', to: 'Brackendal', work: 'line bore' });
    expect(labels(asked)).toEqual(['Brackendale', 'New: Brackendal']);
    expect(cardIn(await press(bot, asked, 'Brackendale')).data).toMatchObject({ dueOn: '2026-11-26' });
    expect(record(bot).suppliers.all()).toHaveLength(1);
  });

  it('is asked for when the name fits several, or is only nearly one', async () => {
    const bot = await openCrewBot();
    for (const name of ['upper hose', 'lower hose']) await part(bot, 'add', { name });
    const asked = await part(bot, 'show', { part: 'hose' });
    expect(labels(asked)).toEqual(['upper hose', 'lower hose']);
    expect(cardIn(await press(bot, asked, 'lower hose')).data['name']).toBe('lower hose');
    expect(labels(await part(bot, 'show', { part: 'uper hose' }))).toEqual(['upper hose']);
    const nearly = await order(bot, 'upper hoses');
    expect(labels(nearly)).toEqual(['upper hose', 'New: upper hoses']);
  });

  it.each(['stud a', 'stud b', 'stud M10', 'stud M12', 'left pipe', 'right pipe'])(
    'is not taken for another that differs in a figure, a letter of its own or a word: %s',
    async (name) => {
      const bot = await openCrewBot();
      for (const known of ['stud c', 'stud M8', 'front pipe'].filter((one) => one !== name)) {
        await part(bot, 'add', { name: known });
      }
      expect((await part(bot, 'add', { name })).ok).toBe(true);
    },
  );
});

describe('where a part is', () => {
  it('goes from missing to ordered, to the box, to the shelf, to the engine and off again', async () => {
    const bot = await openCrewBot();
    const where = async () => cardIn(await part(bot, 'show', { part: 'gasket' })).data['whereabouts'];
    await part(bot, 'add', { name: 'gasket', single_use: true });
    expect(await where()).toBe('not ordered');
    await order(bot, 'gasket');
    expect(await where()).toBe('on order');
    await bot.run('order arrived', { order: 'gasket' });
    expect(await where()).toBe('in the box');
    await part(bot, 'shelf', { part: 'gasket' });
    expect(await where()).toBe('on the shelf');
    await part(bot, 'fitted', { part: 'gasket' });
    expect(await where()).toBe('fitted');
    await part(bot, 'off', { part: 'gasket' });
    expect(cardIn(await part(bot, 'show', { part: 'gasket' })).data).toMatchObject({
      fitted: 0,
      inHand: 0,
      missing: 1,
    });
  });

  it('keeps what comes off unless it is used once', async () => {
    const bot = await openCrewBot();
    await part(bot, 'add', { name: 'pulley' });
    await part(bot, 'fitted', { part: 'pulley' });
    expect(cardIn(await part(bot, 'off', { part: 'pulley' })).data).toMatchObject({
      inHand: 1,
      fitted: 0,
      missing: 0,
    });
  });

  it('counts what is on the shelf anew each time it is said', async () => {
    const bot = await openCrewBot();
    await part(bot, 'add', { name: 'pin', needed: 4 });
    expect(cardIn(await part(bot, 'shelf', { part: 'pin', quantity: 3 })).data).toMatchObject({
      inHand: 3,
      missing: 1,
    });
    expect(cardIn(await part(bot, 'shelf', { part: 'pin', quantity: 1, where: 'box' })).data).toMatchObject({
      inHand: 1,
      whereabouts: 'in the box',
      said: 'pin: 1 in hand, in the box, was 3',
    });
    expect(cardIn(await part(bot, 'shelf', { part: 'pin', quantity: 0 })).data).toMatchObject({
      inHand: 0,
      missing: 4,
    });
  });

  it('asks whether what is fitted came of its order, and logs it if so', async () => {
    const bot = await openCrewBot();
    await order(bot, 'stud', 8);
    const asked = await part(bot, 'fitted', { part: 'stud', quantity: 8 });
    expect(cardIn(asked).result).toContain('#1 from Norvale is still to come. Has it come?');
    expect(cardIn(await press(bot, asked, 'Yes, it came')).data).toMatchObject({ fitted: 8, coming: [] });
    expect(record(bot).orders.find(1)?.arrivals).toMatchObject([{ quantity: 8, condition: 'good' }]);
  });

  it('takes what was here anyway for what it is, and leaves the order open', async () => {
    const bot = await openCrewBot();
    await order(bot, 'stud', 8);
    const asked = await part(bot, 'fitted', { part: 'stud', quantity: 2 });
    expect(cardIn(await press(bot, asked, 'No, this was here anyway')).data).toMatchObject({
      fitted: 2,
      coming: [{ order: 1, quantity: 8 }],
    });
  });

  it('logs what was sent back, and sends what is to sort out to its settlement', async () => {
    const bot = await openCrewBot();
    await order(bot, 'hose', 2);
    await bot.run('order arrived', { order: 'hose', quantity: 1, condition: 'wrong' });
    expect(refusalIn(await part(bot, 'sent-back', { part: 'hose' })).message).toContain('/order settle');
    await bot.run('order settle', { order: 'hose', outcome: 'refunded' });
    await bot.run('order arrived', { order: 'hose' });
    expect(cardIn(await part(bot, 'sent-back', { part: 'hose' })).data).toMatchObject({
      sentBack: 2,
      inHand: 0,
    });
  });
});

describe('out for work', () => {
  const out = (bot: CrewBot, options: Options = {}) =>
    part(bot, 'out', { part: 'block', to: 'Brackendale', work: 'line bore', due: '2026-12-01', ...options });

  it('is an order of work: due back, then back in hand', async () => {
    const bot = await openCrewBot();
    await part(bot, 'add', { name: 'block', origin: 'used' });
    const taken = await out(bot, { price: '180' });
    expect(cardIn(taken).result).toBe('block: line bore: due back Tue 1 Dec');
    expect(cardIn(taken).data).toMatchObject({
      kind: 'work',
      part: 1,
      supplier: 'Brackendale',
      priceMinor: 18000,
    });
    expect(labels(taken)[0]).toBe('It is back');
    expect(cardIn(await part(bot, 'show', { part: 'block' })).data).toMatchObject({
      whereabouts: 'out for work',
      inHand: 0,
      missing: 0,
      out: [{ order: 1, quantity: 1, promisedOn: '2026-12-01' }],
    });
    expect(cardIn(await part(bot, 'back', { part: 'block' })).result).toBe('block: line bore: back');
    expect(cardIn(await part(bot, 'show', { part: 'block' })).data).toMatchObject({
      whereabouts: 'on the shelf',
      inHand: 1,
      out: [],
    });
  });

  it('takes off what was fitted', async () => {
    const bot = await openCrewBot();
    await part(bot, 'add', { name: 'block' });
    await part(bot, 'fitted', { part: 'block' });
    await out(bot);
    expect(cardIn(await part(bot, 'show', { part: 'block' })).data).toMatchObject({
      fitted: 0,
      inHand: 0,
      missing: 0,
    });
  });

  it('comes back in hand when the work is cancelled', async () => {
    const bot = await openCrewBot();
    await part(bot, 'add', { name: 'block' });
    await out(bot);
    await bot.run('order cancel', { order: '1' });
    expect(cardIn(await part(bot, 'show', { part: 'block' })).data).toMatchObject({ inHand: 1, out: [] });
  });

  it('asks where it is back from when it is out at several places', async () => {
    const bot = await openCrewBot();
    await part(bot, 'add', { name: 'rod', needed: 4 });
    await part(bot, 'shelf', { part: 'rod', quantity: 4 });
    await part(bot, 'out', { part: 'rod', to: 'Brackendale', work: 'bush', quantity: 2, due: '2026-12-01' });
    await part(bot, 'out', { part: 'rod', to: 'Tarn', work: 'balance', quantity: 2, due: '2026-12-01' });
    const asked = await part(bot, 'back', { part: 'rod' });
    expect(labels(asked)).toEqual(['Brackendale: rod: bush', 'Tarn: rod: balance']);
    await press(bot, asked, 'Tarn: rod: balance');
    expect(cardIn(await part(bot, 'show', { part: 'rod' })).data).toMatchObject({
      inHand: 2,
      out: [{ order: 1 }],
    });
  });

  it('is reached from its card by two presses and a form', async () => {
    const bot = await openCrewBot();
    await part(bot, 'add', { name: 'block' });
    const here = await press(bot, await part(bot, 'show', { part: 'block' }), 'It is here');
    const form = formIn(await press(bot, here, 'Out for work'));
    const fields = { to: 'Brackendale', work: 'line bore', due: '2026-12-01', quantity: '1', price: '' };
    expect(cardIn(await bot.press(writeActionRef(form.does), fields)).result).toContain('due back Tue 1 Dec');
  });
});

describe('the list of parts', () => {
  it('shows what needs a hand first, filters, and turns pages', async () => {
    const bot = await openCrewBot();
    for (let index = 1; index <= 20; index++)
      await part(bot, 'add', { name: `stud M${index}`, system: 'head' });
    await part(bot, 'shelf', { part: 'stud M20' });
    await order(bot, 'pump');
    await bot.run('order arrived', { order: 'pump', condition: 'damaged' });
    const list = cardIn(await part(bot, 'list'));
    expect(list.result).toBe('21 parts: 1 to sort out, 19 not ordered, 1 on the shelf');
    expect(list.items?.[0]).toMatchObject({ text: 'pump', note: '1 to sort out' });
    expect(list.data).toMatchObject({ count: 21, page: 1, pages: 3 });
    const second = cardIn(await press(bot, await part(bot, 'list'), 'Next page'));
    expect(second.data).toMatchObject({ page: 2 });
    expect(cardIn(await part(bot, 'list', { where: 'missing' })).result).toBe('19 parts missing');
    expect(cardIn(await part(bot, 'list', { where: 'on the shelf' })).items).toMatchObject([
      { text: 'stud M20' },
    ]);
    expect(cardIn(await part(bot, 'list', { system: 'HEAD' })).data['count']).toBe(20);
  });
});

describe('every move', () => {
  const ready = async () => {
    const bot = await openCrewBot();
    await part(bot, 'add', { name: 'pin', needed: 4, also: 'dowel' });
    await part(bot, 'shelf', { part: 'pin', quantity: 3 });
    await part(bot, 'fitted', { part: 'pin', quantity: 1 });
    await part(bot, 'out', { part: 'pin', to: 'Brackendale', work: 'turn', due: '2026-12-01', quantity: 1 });
    return bot;
  };

  it.each<[string, Options]>([
    ['add', { name: 'block', also: 'engine block', guess: '120', needed: 1 }],
    [
      'set',
      {
        part: 'pin',
        needed: 6,
        origin: 'made',
        single_use: true,
        system: 'head',
        note: 'hard',
        guess: '1.80',
      },
    ],
    ['shelf', { part: 'pin', quantity: 5 }],
    ['fitted', { part: 'pin' }],
    ['off', { part: 'pin' }],
    ['out', { part: 'pin', to: 'Tarn', work: 'plate', due: '2026-12-02' }],
    ['back', { part: 'pin' }],
    ['sent-back', { part: 'pin' }],
    ['rename', { part: 'pin', to: 'locating pin' }],
    ['also', { part: 'pin', called: 'peg' }],
    ['also', { part: 'pin', called: 'dowel', drop: true }],
  ])('/part %s %j is undone', async (what, options) => {
    const bot = await ready();
    await undone(bot, contentsOf(bot), await part(bot, what, options));
  });

  it('/part remove is undone, with what was said of the part', async () => {
    const bot = await openCrewBot();
    await part(bot, 'add', { name: 'pin', also: 'dowel' });
    await part(bot, 'shelf', { part: 'pin', quantity: 3 });
    await undone(bot, contentsOf(bot), await part(bot, 'remove', { part: 'pin' }));
  });

  it.each<[string, Options, string]>([
    ['show', { part: 'radiator' }, 'No part here is called "radiator"'],
    ['show', { part: '#99' }, 'No part here is called "#99"'],
    ['add', { name: 'dowel' }, 'pin is known already'],
    ['add', { name: 'block', also: 'dowel' }, '"dowel" is what pin goes by'],
    ['add', { name: 'block', guess: 'a lot' }, '"a lot" is not a price'],
    ['add', { name: 'block', needed: -1 }, 'needed: must be at least 0'],
    ['add', { name: '   ' }, 'nothing was typed'],
    ['set', { part: 'pin' }, 'Say what to change of pin'],
    ['set', { part: 'pin', origin: 'stolen' }, 'origin: must be one of new, used, modified, made'],
    ['shelf', { part: 'pin', quantity: 10_001 }, 'must be at most 10000'],
    ['fitted', { part: 'pin', quantity: 0 }, 'must be at least 1'],
    ['off', { part: 'pin', quantity: 2 }, 'Only 1 of pin is fitted by the record'],
    ['out', { part: 'pin', to: 'Tarn', work: 'plate' }, 'When is it promised?'],
    ['out', { part: 'pin', to: 'Tarn', work: 'plate', due: 'whenever' }, 'does not name a day'],
    ['back', { part: 'pin', quantity: 2 }, 'Only 1 of #1 pin: turn is still to come'],
    ['back', { part: 'pin', at: '#7' }, 'pin is not out for work'],
    ['sent-back', { part: 'pin', quantity: 2 }, 'Only 1 of pin is in hand by the record'],
    ['rename', { part: 'pin', to: 'pin' }, 'It is called pin already'],
    ['also', { part: 'pin', called: 'dowel' }, 'pin goes by "dowel" already'],
    ['also', { part: 'pin', called: 'peg', drop: true }, 'pin has no other name "peg"'],
    ['remove', { part: 'pin' }, 'pin has been ordered (#1), so it stays'],
  ])('/part %s %j is refused, and nothing is changed', async (what, options, said) => {
    const bot = await ready();
    const before = contentsOf(bot);
    const { message } = refusalIn(await part(bot, what, options));
    expect(message).toContain(said);
    expect(contentsOf(bot)).toEqual(before);
  });

  it.each(['show', 'off', 'back', 'remove'])('/part %s says that nothing is known yet', async (what) => {
    const bot = await openCrewBot();
    expect(refusalIn(await part(bot, what, { part: 'pin' })).message).toContain(
      'No part of this build is known yet',
    );
  });
});

describe('two at once', () => {
  it('the second is told when both fit the last one', async () => {
    const bot = await openCrewBot();
    await part(bot, 'add', { name: 'pin' });
    await part(bot, 'shelf', { part: 'pin' });
    const card = await part(bot, 'show', { part: 'pin' });
    await press(bot, card, 'Fitted');
    const { code, message } = refusalIn(await press(bot, card, 'Fitted'));
    expect(code).toBe('already-done');
    expect(message).toContain('logged by Ada');
  });
});
