import { describe, expect, it } from 'vitest';
import { type CrewBot, cardIn, formIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';
import { buttonsOf, pressed } from '../../support/pressed.ts';

/** A sump and a gearbox that both take oil, one of them of the same grade as the other's. */
async function withCases(): Promise<CrewBot> {
  const bot = await openCrewBot();
  await bot.run('fluid case', { name: 'sump', grade: '10W-40', capacity: '5.6 L' });
  await bot.run('fluid case', { name: 'supercharger', grade: '10w40', capacity: '0.4 L' });
  await bot.run('fluid case', { name: 'gearbox', grade: '75W-90 GL-5', capacity: '2.5 L' });
  return bot;
}

const poured = (bot: CrewBot, what: string, options = {}) => bot.run('fluid poured', { what, ...options });
const changes = (bot: CrewBot) => bot.teams.at(TEAM).ledger.recent(50).length;

describe('/fluid case', () => {
  it('reads the capacity in the unit it is typed in', async () => {
    const bot = await openCrewBot();
    // exact: 1 US quart = 0.946352946 L (NIST SP 811, B.8)
    const { data } = cardIn(
      await bot.run('fluid case', { name: 'sump', grade: '10W-40', capacity: '6 US qt' }),
    );
    expect(data['capacityL']).toBeCloseTo(5.678, 3);
  });

  it('asks which quart is meant, and notes it with a tap', async () => {
    const bot = await openCrewBot();
    const asked = await bot.run('fluid case', { name: 'sump', grade: '10W-40', capacity: '6 qt' });
    expect(refusalIn(asked).code).toBe('which-one');
    const [us] = cardIn(asked).buttons ?? [];
    expect(cardIn(await pressed(bot, cardIn(asked), us?.label ?? '')).data['capacityL']).toBeCloseTo(
      5.678,
      3,
    );
  });

  it('shows a case by its name alone, and corrects what is given', async () => {
    const bot = await withCases();
    expect(cardIn(await bot.run('fluid case', { name: 'Sump' })).result).toBe(
      'Sump: empty, takes 5.6 L 10W-40',
    );
    const corrected = cardIn(await bot.run('fluid case', { name: 'sump', capacity: '5.8 L' }));
    expect(corrected.data).toMatchObject({ case: 1, capacityL: 5.8, grade: '10W-40' });
  });

  it('writes a grade as it is written already', async () => {
    const bot = await withCases();
    expect(cardIn(await bot.run('fluid case', { name: 'supercharger' })).data['grade']).toBe('10W-40');
  });

  it('is taken off while nothing was poured into it, and not after', async () => {
    const bot = await withCases();
    await bot.run('fluid remove', { case: 'gearbox' });
    await poured(bot, '1 L into sump');
    expect(refusalIn(await bot.run('fluid remove', { case: 'sump' })).code).toBe('not-now');
    expect(cardIn(await bot.run('fluid list')).data['cases']).toHaveLength(2);
  });
});

describe('/fluid bought and /fluid poured', () => {
  it('pours off the shelf, opened bottles first, and keeps what it really took', async () => {
    const bot = await withCases();
    await bot.run('fluid bought', { what: '2 x 5 L 10W-40' });
    await poured(bot, '0.4 L into supercharger');
    const card = cardIn(await poured(bot, '5.6 L 10w40 into the sump'));
    expect(card.data).toMatchObject({ inL: 5.6, lackingL: 0 });
    expect(card.certainty).toBe('Off the shelf; left of 10W-40: 4 L left of 5 L.');
    const shelf = bot.teams.at(TEAM).record.fluids.shelf(1);
    expect(shelf.map(({ leftL }) => leftL)).toEqual([4]);
  });

  it('says when the shelf did not hold as much', async () => {
    const bot = await withCases();
    await bot.run('fluid bought', { what: '1 L 10W-40' });
    expect(cardIn(await poured(bot, '1.5 L into sump')).certainty).toBe(
      '0.5 L more than the shelf held by the record.',
    );
    expect(cardIn(await poured(bot, '1 L into sump')).certainty).toBe(
      'Nothing of 10W-40 was on the shelf by the record.',
    );
  });

  it.each([
    ['It was drained first', { inL: 3, capacityL: 5.6 }],
    ['It takes 8.6 L', { inL: 8.6, capacityL: 8.6 }],
    ['It is overfilled with 8.6 L', { inL: 8.6, capacityL: 5.6 }],
  ])('asks when it is more than fits: %s', async (answer, wanted) => {
    const bot = await withCases();
    await poured(bot, '5.6 L into sump');
    const asked = await poured(bot, '3 L into sump');
    expect(refusalIn(asked).message).toContain('3 L more makes 8.6 L');
    expect(cardIn(await pressed(bot, cardIn(asked), answer)).data).toMatchObject(wanted);
  });

  it('takes two hundredths over what it takes for full', async () => {
    const bot = await withCases();
    expect(cardIn(await poured(bot, '5.7 L into sump')).data['inL']).toBe(5.7);
  });

  it.each([
    ['5W-30, all the same', '5W-30'],
    ['It was 10W-40', '10W-40'],
  ])('asks when it is another grade: %s', async (answer, grade) => {
    const bot = await withCases();
    const asked = await poured(bot, '1 L 5W-30 into sump');
    expect(refusalIn(asked).message).toContain('sump takes 10W-40, and 5W-30 was said');
    await pressed(bot, cardIn(asked), answer);
    expect(bot.teams.at(TEAM).record.fluids.movesOf(1)).toMatchObject([
      { grade, volumeL: 1, kind: 'poured' },
    ]);
  });

  it('finds the case by what is said of it, and asks when it cannot tell', async () => {
    const bot = await withCases();
    expect(cardIn(await poured(bot, '75W-90 GL-5 1 L')).data['name']).toBe('gearbox');
    expect(cardIn(await poured(bot, 'gearbox 0.5 L')).data['inL']).toBe(1.5);
    const asked = await poured(bot, '1 L');
    expect(refusalIn(asked).message).toBe('Into which case was it poured?');
    const over = await pressed(bot, cardIn(asked), 'supercharger (10W-40)');
    expect(refusalIn(over).message).toContain('supercharger takes 0.4 L');
  });

  it('asks about a grade that says more or less than a known one', async () => {
    const bot = await withCases();
    const asked = await bot.run('fluid bought', { what: '1 L 75W-90' });
    expect(refusalIn(asked).message).toContain('Which is it?');
    const card = cardIn(await pressed(bot, cardIn(asked), '75W-90 GL-5'));
    expect(card.data['grade']).toBe('75W-90 GL-5');
    const other = cardIn(await bot.run('fluid bought', { what: '1 L 75W-90', grade: '75W-90' }));
    expect(other.certainty).toContain('No case takes it yet.');
  });

  it('does not take 15W-40 for 5W-40', async () => {
    const bot = await withCases();
    expect(cardIn(await bot.run('fluid bought', { what: '5 L 15W-40' })).data['grade']).toBe('15W-40');
  });
});

describe('/fluid drained and /fluid changed', () => {
  it('drains all of it or so much, and keeps the history that drain intervals are read from', async () => {
    const bot = await withCases();
    await poured(bot, '5 L into sump');
    expect(cardIn(await bot.run('fluid drained', { what: '1.5 L from sump' })).data['inL']).toBe(3.5);
    bot.clock.set(bot.clock.nowMs() + 24 * 3_600_000);
    expect(cardIn(await bot.run('fluid drained', { what: 'sump', distance: '812 km' })).data).toMatchObject({
      inL: 0,
      filledOn: null,
    });
    await poured(bot, '5.6 L into sump');
    expect(bot.teams.at(TEAM).record.fluids.movesOf(1)).toMatchObject([
      { kind: 'poured', volumeL: 5, inAfterL: 5 },
      { kind: 'drained', volumeL: 1.5, inAfterL: 3.5, distanceKm: null },
      { kind: 'drained', volumeL: 3.5, inAfterL: 0, distanceKm: 812, movedOn: '2026-11-24' },
      { kind: 'poured', volumeL: 5.6, inAfterL: 5.6 },
    ]);
    expect(cardIn(await bot.run('fluid case', { name: 'sump' })).data['filledOn']).toBe('2026-11-24');
  });

  it('changes the oil as one change that one undo takes back', async () => {
    const bot = await withCases();
    await poured(bot, '5.6 L into sump');
    const changed = cardIn(await bot.run('fluid changed', { case: 'sump', volume: '5.4 L' }));
    expect(changed.data['said']).toBe('sump changed: 5.4 L 10W-40');
    expect(changed.data).toMatchObject({ inL: 5.6, lackingL: 0 });
    expect(bot.teams.at(TEAM).record.fluids.movesOf(1)).toHaveLength(3);
    await pressed(bot, changed, 'Undo');
    expect(bot.teams.at(TEAM).record.fluids.movesOf(1)).toHaveLength(1);
  });

  it('counts what is in it from its last change, not from when a little was drawn off', async () => {
    const bot = await withCases();
    await poured(bot, '5.6 L into sump');
    bot.clock.set(bot.clock.nowMs() + 24 * 3_600_000);
    await bot.run('fluid drained', { what: '1 L from sump' });
    expect(cardIn(await poured(bot, '1 L into sump')).data['filledOn']).toBe('2026-11-23');
    expect(cardIn(await bot.run('fluid changed', { case: 'sump', volume: '5 L' })).data['filledOn']).toBe(
      '2026-11-24',
    );
  });

  it('takes what is in it for all that it takes', async () => {
    const bot = await withCases();
    const card = cardIn(await poured(bot, '5 L into sump'));
    expect(cardIn(await pressed(bot, card, 'It is full')).data).toMatchObject({ capacityL: 5, lackingL: 0 });
  });
});

describe('/fluid budget', () => {
  it('pools bottles of a grade over its cases, and says what must be ordered before which stage', async () => {
    const bot = await withCases();
    await bot.run('fluid bought', { what: '5 L 10W-40' });
    const { result, items, data } = cardIn(await bot.run('fluid budget'));
    expect(result).toBe('75W-90 GL-5, 10W-40: not enough');
    expect(items?.map(({ text }) => text)).toEqual([
      '75W-90 GL-5: 2.5 L short of 2.5 L',
      '10W-40: 1 L short of 6 L',
    ]);
    expect(items?.[1]?.note).toBe(
      'Sump 5.6 L, supercharger 0.4 L; on the shelf 1 × 5 L. Order 1 × 5 L before Fluids in.',
    );
    expect(data).toMatchObject({ enough: false, stage: 'fluids' });
  });

  it('names what is on its way, and orders what is short by a button', async () => {
    const bot = await withCases();
    const budget = cardIn(await bot.run('fluid budget'));
    const form = formIn(await pressed(bot, budget, 'Order it'));
    expect(form.fields[0]?.value).toBe('10W-40, 1 L bottle');
    expect(form.fields.at(-1)?.value).toBe('6');
    await bot.press('fluid/order-done', {
      what: '10W-40, 1 L bottle',
      supplier: 'Oxmere Oils',
      due: '2026-11-27',
      quantity: '6',
    });
    const { items } = cardIn(await bot.run('fluid budget'));
    expect(items?.[0]).toMatchObject({
      text: '10W-40: 6 L short of 6 L, ordered',
      note: expect.stringContaining('on its way: #1 10W-40, 1 L bottle, Fri 27 Nov.') as string,
      buttons: [],
    });
  });

  it('puts bottles that have come onto the shelf, once, from the order or the budget', async () => {
    const bot = await withCases();
    const order = { supplier: 'Oxmere Oils', due: '2026-11-27', quantity: 2 };
    await bot.run('order place', { ...order, what: '10w40 4 L can' });
    expect(cardIn(await bot.run('fluid budget')).items?.[0]?.text).toBe('10W-40: 6 L short of 6 L, ordered');
    const came = cardIn(await bot.run('order arrived', { order: '1' }));
    expect(buttonsOf(came).map(({ label }) => label)).toEqual(['Onto the fluid shelf', 'Undo']);
    const budget = cardIn(await bot.run('fluid budget'));
    expect(budget.items?.[0]).toMatchObject({
      text: '10W-40: 6 L short of 6 L',
      note: expect.stringContaining('here, but not on the shelf yet: #1 10w40 4 L can') as string,
    });
    const put = cardIn(await pressed(bot, budget, 'Onto the fluid shelf'));
    expect(put.result).toBe('2 × 4 L 10W-40 on the shelf');
    const after = cardIn(await bot.run('fluid budget')).items?.map(({ text }) => text);
    expect(after).toContain('10W-40: enough, 8 L for 6 L');
    expect(refusalIn(await pressed(bot, came, 'Onto the fluid shelf')).code).toBe('already-done');
    expect(cardIn(await bot.run('part list')).items?.[0]?.note).not.toContain('in the box');
    await pressed(bot, put, 'Undo');
    expect(cardIn(await bot.run('fluid budget')).items?.[0]?.text).toBe('10W-40: 6 L short of 6 L');
  });

  it('has enough when everything is filled, and says what is left', async () => {
    const bot = await withCases();
    await bot.run('fluid bought', { what: '8 x 1 L 10W-40' });
    await poured(bot, '5.6 L into sump');
    await poured(bot, '0.4 L into supercharger');
    await poured(bot, '2.5 L into gearbox');
    const { result, items } = cardIn(await bot.run('fluid budget'));
    expect(result).toBe('There is enough of everything');
    expect(items?.map(({ text }) => text)).toEqual(['75W-90 GL-5: filled', '10W-40: 2 L on the shelf']);
  });
});

describe('a crew that counts in quarts', () => {
  it('hears quarts, at a stage’s question too, and can pour what is offered', async () => {
    const bot = await withCases();
    await bot.run('team', { units: 'US' });
    // exact: 1 US quart = 0.946352946 L (NIST SP 811, B.8): 5.6 L = 5.917 qt
    expect(cardIn(await bot.run('fluid list')).items?.map(({ text }) => text)).toContain(
      'Sump: empty, takes 5.92 US qt 10W-40',
    );
    expect(JSON.stringify(cardIn(await bot.run('ready', { stage: 'fluids' })).items)).toContain('5.92 US qt');
    expect(cardIn(await poured(bot, '5.92 US qt into sump')).data['lackingL']).toBe(0);
  });
});

describe('/fluid left', () => {
  it('corrects what is left in a bottle', async () => {
    const bot = await withCases();
    await bot.run('fluid bought', { what: '5 L 10W-40' });
    const card = cardIn(await bot.run('fluid left', { grade: '10W-40', left: '800 cc' }));
    expect(card.result).toBe('Left of 10W-40: 0.8 L left of 5 L');
  });
});

describe('what is refused', () => {
  it.each([
    ['fluid poured', { what: '5 L' }, 'No case of this build is noted yet'],
    ['fluid drained', { what: 'sump' }, 'No case of this build is noted yet'],
    ['fluid case', { name: 'sump' }, 'No case of this build is noted yet'],
    ['fluid case', { name: 'sump', grade: '10W-40' }, 'is new: say what goes in and how much'],
    ['fluid case', { name: 'sump', grade: '10W-40', capacity: 'much' }, 'capacity:'],
    ['fluid bought', { what: '10W-40' }, 'how much is in a bottle?'],
    ['fluid bought', { what: '5 L' }, 'which grade?'],
    ['fluid bought', { what: '99 x 5 L 10W-40' }, 'from 1 to 50 bottles'],
    ['fluid bought', { what: '0 L 10W-40' }, 'a bottle holds something'],
    ['fluid left', { grade: '10W-40', left: '1 L' }, 'Nothing of 10W-40 is on the shelf'],
  ])('%s %j', async (line, options, said) => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run(line, options)).message).toContain(said);
    expect(changes(bot)).toBe(0);
    expect(bot.reported).toEqual([]);
  });

  it.each([
    ['fluid poured', { what: '1 L into radiator' }, 'No case is called "radiator"'],
    ['fluid poured', { what: 'into sump' }, 'how much went into sump?'],
    ['fluid poured', { what: '0 L into sump' }, 'nothing is no pour'],
    ['fluid poured', { what: '5 apples into sump' }, 'volume:'],
    ['fluid drained', { what: 'sump' }, 'there is nothing in sump'],
    ['fluid drained', { what: '3 L from gearbox' }, 'nothing in gearbox'],
    ['fluid changed', { case: 'sump', volume: 'some' }, 'volume:'],
    ['fluid remove', { case: 'boot' }, 'No case is called "boot"'],
  ])('%s %j with cases there', async (line, options, said) => {
    const bot = await withCases();
    expect(refusalIn(await bot.run(line, options)).message).toContain(said);
    expect(changes(bot)).toBe(3);
  });

  it('more than is in it cannot be drained', async () => {
    const bot = await withCases();
    await poured(bot, '2 L into sump');
    expect(refusalIn(await bot.run('fluid drained', { what: '3 L from sump' })).message).toContain(
      'holds 2 L by the record, so 3 L cannot come out',
    );
  });

  it('another build’s case is not touched by a forged button', async () => {
    const bot = await withCases();
    await bot.run('fluid case', { name: 'axle', grade: '75W-90', capacity: '1 L' }, { channel: '601' });
    expect(refusalIn(await bot.press('fluid/full?case=1', {}, { channel: '601' })).message).toContain(
      'another build',
    );
    expect(refusalIn(await bot.press('fluid/drained?case=99')).code).toBe('stale-message');
  });
});
