import { describe, expect, it } from 'vitest';
import { messagesIn } from '../support/clean-channel.ts';
import { type Crew, crewAtWork, dataOf, labelsOn, messageOf, shownIn } from '../support/crew.ts';
import { tableState } from '../support/table-state.ts';

const place = (what: string, more = ''): string =>
  `/order place what:"${what}" supplier:"Norvale Gaskets" due:"9 Dec"${more}`;

/** A crew with one order, and a way to see that nothing about it has changed. */
async function withOrder() {
  const crew = await crewAtWork();
  await crew.type(place('head gasket', ' quantity:2'));
  const before = JSON.stringify(tableState(crew.file));
  return { ...crew, expectUnchanged: () => expect(JSON.stringify(tableState(crew.file))).toBe(before) };
}

describe('what is refused, with nothing changed', () => {
  it.each([
    [
      'a supplier nobody knows',
      '/order list supplier:"Nowhere Ltd"',
      'There is no supplier "Nowhere Ltd". Known: Norvale Gaskets.',
    ],
    ['a quantity below zero', place('belt', ' quantity:-3'), '"quantity" is from 1 to 10000; -3 is outside.'],
    ['a quantity of zero', place('belt', ' quantity:0'), '"quantity" is from 1 to 10000; 0 is outside.'],
    [
      'half of a thing',
      place('belt', ' quantity:1.5'),
      '"quantity" is a whole number without a unit; "1.5" is not.',
    ],
    [
      'a name of 3,000 characters',
      place('x'.repeat(3_000)),
      '"what" takes at most 200 characters; this has 3000.',
    ],
    ['an order that is not there', '/order arrived order:99', 'There is no order #99 in this build.'],
    [
      'a name that no order has',
      '/order arrived order:turbine',
      'No order here is called "turbine". Nothing was changed.',
    ],
    [
      'more than was ordered',
      '/order arrived order:1 quantity:3',
      'Only 2 of #1 head gasket are still to come',
    ],
    ['a day that is none', '/order date order:1 due:"31 Feb"', 'Nothing was changed.'],
    ['a price that is none', place('belt', ' price:lots'), 'Nothing was changed.'],
    ['a person who is not here', place('belt', ' chaser:Dora'), '"chaser": nobody here is called "Dora".'],
    ['a zone that is none', '/team zone:Mars/Olympus', 'There is no time zone "Mars/Olympus".'],
    ['a country without a list', '/team country:XX', 'There is no holiday list for "XX".'],
    ['a time that is none', '/team morning:25:00', '"25:00" is no time'],
    [
      'something to settle that is not',
      '/order settle order:1 outcome:kept',
      'Nothing of #1 head gasket waits to be sorted out.',
    ],
    ['a command that is none', '/oder list', 'oder'],
  ])('%s', async (_what, line, problem) => {
    await using crew = await withOrder();
    const refused = await crew.type(line);
    expect(refused.text).toContain(problem);
    expect(refused.result?.ok ?? false).toBe(false);
    crew.expectUnchanged();
  });

  it('a part that has arrived already, saying when and who logged it', async () => {
    await using crew = await withOrder();
    await crew.type('/order arrived order:1', { as: 'Bram' });
    const again = await crew.type('/order arrived order:"head gasket"');
    expect(again.text).toContain('it arrived on Mon 7 Dec, logged by Bram. Nothing was changed.');
    expect(crew.record.orders.find(1)?.arrivals).toHaveLength(1);
  });
});

describe('a day that has gone', () => {
  it('is asked back, and meant all the same when its button is pressed', async () => {
    await using crew = await withOrder();
    const asked = await crew.type('/order date order:1 due:2026-12-01');
    expect(asked.text).toContain('Tue 1 Dec has gone. Is it meant all the same?');
    crew.expectUnchanged();
    await crew.press(messageOf(asked), 'Tue 1 Dec');
    expect(crew.record.orders.find(1)?.promisedOn).toBe('2026-12-01');
  });
});

const HOSTILE: readonly string[] = [
  '@everyone',
  '@here',
  '<@1>',
  '<@&1> and <#1>',
  "'; DROP TABLE orders; --",
  '**bold** __under__ ~~gone~~ `code` ||hidden||',
  '# heading',
  '> quote',
  '- list',
  '1. list',
  '[a link](https://example.com)',
  '```fence```',
  '🔧🏎️ gasket',
  'a % b _ c',
  '<b>bold</b>',
  '\u202egnidaer sdrawkcab',
];

describe('names that are more than names', () => {
  /** An order of this name from a supplier of this name, three working days late, its message in the channel. */
  async function named(name: string): Promise<Crew> {
    const crew = await crewAtWork();
    const typed = name.replace(/[\\"]/g, '\\$&');
    await crew.type(`/order place what:"${typed}" supplier:"${typed}" due:"9 Dec"`);
    return crew;
  }

  it.each(HOSTILE)('%s is stored as typed, shown as typed, and does nothing', async (name) => {
    await using crew = await named(name);
    expect(crew.record.orders.find(1)).toMatchObject({ what: name, supplier: name });
    const listed = await crew.type('/order list');
    expect(listed.text.replaceAll('\u200b', '')).toContain(`#1 ${name}`);
    crew.at('2026-12-14T08:30');
    await crew.tick();
    const [morning] = crew.mornings();
    if (morning === undefined) throw new Error('no morning message');
    expect(shownIn(morning).replaceAll('\u200b', '')).toContain(`from ${name}`);
    const done = await crew.press(morning, 'Arrived');
    expect(done.outcome.kind).toBe('changed');
    expect(Object.keys(tableState(crew.file))).toContain('orders');
  });

  it('ping nobody but the one whose chase it is, whatever they say', async () => {
    await using crew = await named(`<@${'1'.repeat(18)}> @everyone`);
    await crew.type('/order list');
    crew.at('2026-12-14T08:30');
    await crew.tick();
    const ada = crew.channel.hands('Ada').id;
    const bodies = crew.wire.exchanges.flatMap(({ method, path, request }) =>
      messagesIn(method, path, request),
    );
    expect(bodies.length).toBeGreaterThanOrEqual(3);
    for (const body of bodies) {
      const { users } = (body as { allowed_mentions: { users?: readonly string[] } }).allowed_mentions;
      expect((users ?? []).filter((id) => id !== ada)).toEqual([]);
    }
  });

  it('are found again by the name as it was typed', async () => {
    await using crew = await named('50 % ethanol_line');
    expect(dataOf(await crew.type('/order show order:"50 % ethanol_line"'))).toMatchObject({ order: 1 });
    expect((await crew.type('/order show order:"%"')).result?.ok).toBe(true);
    expect((await crew.type('/order show order:"_____"')).result?.ok).toBe(false);
  });

  it('of 200 characters still leave every button on the morning message', async () => {
    await using crew = await crewAtWork();
    for (let at = 0; at < 6; at += 1) {
      await crew.type(`/order place what:"${at}${'w'.repeat(199)}" supplier:"${'s'.repeat(80)}" due:"9 Dec"`);
    }
    crew.at('2026-12-14T08:30');
    await crew.tick();
    const [morning] = crew.mornings();
    if (morning === undefined) throw new Error('no morning message');
    expect(labelsOn(morning).filter((label) => label === 'Arrived')).toHaveLength(4);
    const opened = await crew.choose(morning, '6');
    expect(dataOf(opened)).toMatchObject({ order: 6 });
  });
});
