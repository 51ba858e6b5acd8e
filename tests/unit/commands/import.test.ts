import { describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import type { FileSource } from '../../../src/bot/file-source.ts';
import { writeRecordFile } from '../../../src/exchange/record-file.ts';
import { type CrewBot, cardIn, formIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';
import { pressed } from '../../support/pressed.ts';

const LIST = [
  'what;supplier;qty;price;due;colour',
  'head gasket;Norvale Gaskets;1;84,50;2026-12-04;red',
  'M8 bolt;Pellgate;12;€ 9.60;tomorrow;',
  'thing;;;;;',
].join('\n');

const recordOf = (bot: CrewBot) => bot.teams.at(TEAM).record;
const namesOf = (bot: CrewBot): readonly string[] => recordOf(bot).orders.namesUsed();

/** A bot that finds one attached file under the id `f1`. */
const withFile = (content: string | Uint8Array) => {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const file = { id: 'f1', name: 'list.csv', bytes: bytes.length, mime: 'text/csv' };
  const source: FileSource = {
    find: (id) => (id === 'f1' ? file : undefined),
    async *open() {
      yield bytes.subarray(0, 7);
      yield bytes.subarray(7);
    },
  };
  return openCrewBot(undefined, source);
};

describe('/import orders', () => {
  it('shows line by line what it would make, and writes nothing', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await bot.run('import orders', { lines: LIST }));
    expect(card).toMatchObject({
      result: '2 orders to write down, 1 line not read',
      certainty: 'Nothing is written yet. Not used: colour.',
      items: [
        { text: 'Line 2: head gasket', note: 'From Norvale Gaskets, GBP 84.50, due Fri 4 Dec.' },
        { text: 'Line 3: 12 × M8 bolt', note: 'From Pellgate, EUR 9.60, due Tue 24 Nov.' },
        { text: 'Line 4: thing', note: 'It does not say from whom. Give supplier:"…" for the whole list.' },
      ],
    });
    expect(recordOf(bot).builds.all()).toEqual([]);
  });

  it('writes all that was shown at one press, as one change that can be undone', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await bot.run('import orders', { lines: LIST }));
    const written = cardIn(await pressed(bot, card, 'Write 2 down', {}, { as: 'Bram' }));
    expect(written).toMatchObject({ result: '2 orders written down', data: { orders: [1, 2] } });
    expect(recordOf(bot).orders.find(2)).toMatchObject({
      what: 'M8 bolt',
      quantity: 12,
      price: { minor: 960, currency: 'EUR' },
      promisedOn: '2026-11-24',
      chaserName: 'Bram',
    });
    await pressed(bot, written, 'Undo', {}, { as: 'Bram' });
    expect(namesOf(bot)).toEqual([]);
  });

  it('writes it once, whoever presses again', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await bot.run('import orders', { lines: LIST }));
    await pressed(bot, card, 'Write 2 down');
    const again = refusalIn(await pressed(bot, card, 'Write 2 down', {}, { as: 'Bram' }));
    expect(again.message).toContain('That list is settled');
    expect(namesOf(bot)).toHaveLength(2);
  });

  it('is left at a press, and then gone', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await bot.run('import orders', { lines: LIST }));
    expect(cardIn(await pressed(bot, card, 'Leave it')).result).toBe('Left. Nothing was written down');
    expect(refusalIn(await pressed(bot, card, 'Write 2 down')).code).toBe('stale-message');
  });

  it('takes what the list leaves out from the options', async () => {
    const bot = await openCrewBot();
    const lines = 'part\ncrush washer\noil filter';
    const card = cardIn(
      await bot.run('import orders', { lines, supplier: 'Norvale', due: 'in 3 working days' }),
    );
    expect(card.result).toBe('2 orders to write down');
    expect(card.items?.[0]?.note).toBe('From Norvale, due Thu 26 Nov.');
  });

  it('asks for the lines in a form when none are given', async () => {
    const bot = await openCrewBot();
    const form = formIn(await bot.run('import orders', { supplier: 'Norvale', due: 'tomorrow' }));
    const card = cardIn(await bot.press(writeActionRef(form.does), { lines: 'item\nbelt' }));
    expect(card.items).toMatchObject([{ text: 'Line 2: belt', note: 'From Norvale, due Tue 24 Nov.' }]);
  });

  it('reads an attached file, in the encoding it is in', async () => {
    const bot = await withFile(Buffer.from('what,supplier,due\nÖlfilter,Müller,2026-12-04', 'latin1'));
    const card = cardIn(await bot.run('import orders', { file: 'f1' }));
    expect(card.items).toMatchObject([{ text: 'Line 2: Ölfilter', note: 'From Müller, due Fri 4 Dec.' }]);
  });

  it('says what is on order already, and asks about a supplier that is nearly a known one', async () => {
    const bot = await openCrewBot();
    await bot.run('order place', { what: 'Head  gasket', supplier: 'Norvale Gaskets', due: '2026-12-04' });
    const lines = 'what,supplier,due\nhead gasket,Norvale Gaskets,2026-12-05\nbelt,Norvale Gasket,2026-12-05';
    const card = cardIn(await bot.run('import orders', { lines }));
    expect(card.items?.[0]?.note).toContain('On order already as #1.');
    expect(card.items?.[1]?.note).toContain('+Norvale Gasket for a new one');
    expect(card.result).toBe('1 order to write down, 1 line not read');
  });

  it('asks about a part that is nearly one on record, or one of an earlier line', async () => {
    const bot = await openCrewBot();
    await bot.run('order place', { what: 'head gasket', supplier: 'Norvale', due: '2026-12-04' });
    const rows = ['hed gasket,Norvale', 'oil filter,Pellgate', 'oil filtr,Pellgate', '+sump plug,Pelgate'];
    const lines = ['what,from,due', ...rows.map((row) => `${row},2026-12-04`)].join('\n');
    const card = cardIn(await bot.run('import orders', { lines }));
    expect(card.items?.map(({ note }) => note)).toEqual([
      expect.stringContaining(
        'there is head gasket. Which one? Write the known name, or +hed gasket for a new',
      ),
      expect.stringContaining('From Pellgate'),
      'An earlier line says "oil filter". Write the same name, or +oil filtr for another.',
      'An earlier line says "Pellgate". Write the same name, or +Pelgate for another.',
    ]);
    expect(cardIn(await pressed(bot, card, 'Write 1 down')).result).toBe('1 order written down');
  });

  it('says so when a name has come up since that is nearly one of the list', async () => {
    const bot = await openCrewBot();
    const lines = 'what,from,due\nhead gasket,Norvale,2026-12-04';
    const card = cardIn(await bot.run('import orders', { lines }));
    await bot.run('part add', { name: 'hed gasket' });
    expect(refusalIn(await pressed(bot, card, 'Write 1 down'))).toMatchObject({
      code: 'changed-since',
      message: expect.stringContaining('Nothing was written.') as string,
    });
    expect(namesOf(bot)).toEqual([]);
  });

  it('takes a weekday as still to come, and the usual time of a supplier where no day is named', async () => {
    const bot = await openCrewBot();
    await bot.run('supplier set', { supplier: 'Norvale', lead: 5 });
    const lines = 'Teil;Lieferant;Termin\nbelt;Pellgate;Friday\nhead gasket;Norvale;';
    const card = cardIn(await bot.run('import orders', { lines }));
    expect(card.items?.map(({ note }) => note)).toEqual([
      'From Pellgate, due Fri 27 Nov.',
      'From Norvale, due Mon 30 Nov.',
    ]);
  });

  it('pages a long list', async () => {
    const bot = await openCrewBot();
    const rows = Array.from({ length: 34 }, (_, index) => `bolt ${index + 1},Pellgate,2026-12-04`);
    const card = cardIn(await bot.run('import orders', { lines: ['what,from,due', ...rows].join('\n') }));
    const second = cardIn(await pressed(bot, card, 'Next page'));
    expect(second.items?.[0]?.text).toBe('Line 12: bolt 11');
    expect(cardIn(await pressed(bot, second, 'Write 34 down')).data['orders']).toHaveLength(34);
  });

  it.each([
    ['', 'There is nothing in it'],
    ['head gasket, Norvale', 'The first line has to name the columns: what, supplier, quantity, price, due'],
    ['what,supplier', 'There is a line of headings and nothing under it'],
    ['what,due\n"belt,2026-12-04', 'a quote is not closed'],
  ])('refuses %j', async (lines, said) => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('import orders', { lines: `${lines}\n` })).message).toContain(said);
  });

  it.each([
    ['belt,Norvale,0,,', '"0" is no count'],
    ['belt,Norvale,2.5,,', '"2.5" is no count'],
    ['belt,Norvale,1,lots,', '"lots" is not a price'],
    ['belt,Norvale,1,,whenever', '"whenever" is no day'],
    ['belt,Norvale,1,,Friday', ''],
    [',Norvale,1,,', 'It does not say what was ordered'],
  ])('tells why the line %j is not read', async (row, said) => {
    const bot = await openCrewBot();
    const lines = `what,supplier,qty,price,due\n${row}\n`;
    const card = cardIn(await bot.run('import orders', { lines, due: '2026-12-04' }));
    expect(card.items?.[0]?.note).toContain(said);
  });
});

describe('/import record', () => {
  const copyOf = (bot: CrewBot): string =>
    writeRecordFile(bot.teams.at(TEAM).whole.read(), { on: '2026-11-23', team: 'Crew' });

  it('puts a whole record in the place of another, and gives it back', async () => {
    const first = await openCrewBot();
    await first.run('order place', { what: 'head gasket', supplier: 'Norvale', due: '2026-12-04' });
    await first.run('order arrived', { order: '1' });
    await first.run('build spec', { what: 'bore', value: '81 mm' });
    const second = await withFile(copyOf(first));
    await second.run('order place', { what: 'belt', supplier: 'Tarn', due: '2026-12-04' });
    const card = cardIn(await second.run('import record', { file: 'f1' }));
    expect(card.facts?.[0]?.[1]).toContain('1 order');
    const done = cardIn(await pressed(second, card, 'Put it in its place'));
    expect(second.teams.at(TEAM).whole.read()).toEqual(first.teams.at(TEAM).whole.read());
    expect(second.teams.at(TEAM).ledger.audit()).toEqual([]);
    await pressed(second, done, 'Undo');
    expect(namesOf(second)).toEqual(['belt']);
    expect(second.reported).toEqual([]);
  });

  it('gives the build of another server to this channel', async () => {
    const first = await openCrewBot();
    await first.run('build name', { name: 'Coupe' }, { channel: '999' });
    const second = await withFile(copyOf(first));
    const card = cardIn(await second.run('import record', { file: 'f1' }));
    expect(card.working).toEqual(['Coupe becomes the build of this channel.']);
    await pressed(second, card, 'Put it in its place');
    expect(cardIn(await second.run('build show')).result).toBe('Coupe');
  });

  const broken = (change: (copy: Record<string, unknown>) => unknown) => async () => {
    const bot = await openCrewBot();
    await bot.run('order place', { what: 'head gasket', supplier: 'Norvale', due: '2026-12-04' });
    const copy: unknown = JSON.parse(copyOf(bot));
    return JSON.stringify(change(copy as Record<string, unknown>));
  };

  it.each([
    ['not JSON', async () => 'what,supplier', 'not a record written by /export json'],
    ['other JSON', async () => '{"kind":"else"}', 'not a record written by /export json'],
  ])('refuses %s at once', async (_, content, said) => {
    const bot = await withFile(await content());
    expect(refusalIn(await bot.run('import record', { file: 'f1' })).message).toContain(said);
  });

  it.each([
    ['a newer step', broken((copy) => ({ ...copy, step: '9999-later' })), 'written by a newer Chargehand'],
    [
      'an unknown column',
      broken((copy) => ({ ...copy, tables: { build: [{ id: 1, colour: 'red' }] } })),
      'has a colour, which no record here has',
    ],
    [
      'an impossible value',
      broken((copy) => ({ ...copy, tables: { build: [{ id: 1, channel_id: '1', name: null }] } })),
      'An entry of its build cannot be',
    ],
    [
      'what hangs on nothing',
      broken((copy) => ({
        ...copy,
        tables: { build_fact: [{ id: 1, build_id: 77, name: 'bore', value: '81' }] },
      })),
      'name others that are not in it',
    ],
  ])('refuses %s, and the record stays as it was', async (_, content, said) => {
    const bot = await withFile(await content());
    await bot.run('build name', { name: 'Van' });
    const before = bot.teams.at(TEAM).whole.read();
    const card = cardIn(await bot.run('import record', { file: 'f1' }));
    expect(refusalIn(await pressed(bot, card, 'Put it in its place')).message).toContain(said);
    expect(bot.teams.at(TEAM).whole.read()).toEqual(before);
    expect(bot.reported).toEqual([]);
  });
});
