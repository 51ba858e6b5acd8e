import { beforeEach, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { adaptReply, dashReply, mateReply, washerReply } from '../../../commands/fitting.ts';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import type { Result } from '../../../src/bot/request.ts';
import { UserError } from '../../../src/core/user-error.ts';
import { type CrewBot, cardIn, formIn, openCrewBot, refusalIn } from '../../support/bot.ts';

const Verdict = z.object({
  mates: z.string(),
  seals: z.string(),
  a: z.object({ end: z.string() }),
  b: z.object({ end: z.string() }),
});
const verdict = (a: string, b: string) => Verdict.parse(mateReply(a, b).data);

function refusal(work: () => unknown): UserError {
  try {
    work();
  } catch (error) {
    if (error instanceof UserError) return error;
    throw error;
  }
  throw new Error('it was not refused');
}

/** Presses the button of a card by its words. */
async function press(
  bot: CrewBot,
  result: Result,
  label: string,
  fields: Readonly<Record<string, string>> = {},
) {
  const card = cardIn(result);
  const buttons = [...(card.buttons ?? []), ...(card.items ?? []).flatMap((item) => item.buttons ?? [])];
  const button = buttons.find((one) => one.label === label);
  if (!button) throw new Error(`no button "${label}"`);
  return bot.press(writeActionRef(button.does), fields);
}

describe('/fitting mate', () => {
  it('says at arm’s length that a 37° end screws on a 45° one and does not seal, and why', () => {
    const card = mateReply('JIC -8 male', 'SAE 45 -8 female');
    expect(card.result).toBe('Screws on, but does not seal');
    expect(card.tone).toBe('late');
    expect(JSON.stringify(card.facts)).toContain('37° against 45°');
    expect(card.caution).toContain('it leaks');
  });

  it.each([
    ['-6 AN male', 'JIC 6 female', 'yes', 'yes'],
    ['1/4 BSPP male', 'G1/4 port', 'yes', 'yes'],
    ['R 1/4', 'rc 1/4', 'yes', 'yes'],
    ['1/8 NPT female', '1/8 npt', 'yes', 'yes'],
    ['M18x1.5 ISO 6149', 'm18 x 1,5 iso6149 male', 'yes', 'yes'],
    ['9/16-18 ORB port', '-6 ORB', 'yes', 'yes'],
    ['3/4-16 female O-ring boss', 'ORB -8', 'yes', 'yes'],
    ['-8 ORFS', '-8 orfs swivel', 'yes', 'yes'],
    ['M14x1.5 banjo', 'M14x1.5 port flat face', 'yes', 'yes'],
    ['JIC 6 male', '6an male', 'no', 'no'],
    ['M14x1.25 male', 'M14x1.5 female', 'no', 'no'],
  ])('reads %s on %s: mates %s, seals %s', (a, b, mates, seals) => {
    expect(verdict(a, b)).toMatchObject({ mates, seals });
  });

  it('answers without asking where every reading agrees', () => {
    expect(verdict('M10x1 male', '3/8-24 female')).toMatchObject({ mates: 'no', seals: 'no' });
  });

  it('asks about the end the answer hangs on, and only then', () => {
    const { code, question } = refusal(() => mateReply('9/16-18 male', 'JIC -6 female'));
    expect(code).toBe('which-one');
    expect(question?.field).toBe('a');
    expect(question?.choices.map(({ value }) => value)).toEqual(
      expect.arrayContaining(['JIC -6 male', 'ORB -6 male', '9/16-18 UNF male bare']),
    );
  });

  it('says what it took for granted about a size or side that was not said', () => {
    const card = mateReply('JIC -6 male', 'JIC female');
    expect(card.certainty).toContain('taken to be of one size');
    expect(mateReply('G 1/4', 'G 1/4').certainty).toContain('One is taken to be male');
  });

  it.each([
    ['', 'bad-input'],
    ['hello', 'bad-input'],
    ['x'.repeat(101), 'bad-input'],
    ['JIC -7 male', 'not-found'],
    ['M14x9 male', 'not-found'],
    ['G 1/4 male 1e9', 'bad-input'],
  ])('refuses "%s" as %s and names what would be accepted', (typed, code) => {
    const error = refusal(() => mateReply(typed, 'G 1/4 female'));
    expect(error.code).toBe(code);
    expect(error.message).toMatch(/Type it like|Known:|\/thread/);
  });

  it('leaves the brake pipe to the maker', () => {
    expect(mateReply('M10x1 male bubble flare', 'M10x1 female bubble flare').caution).toContain('brake pipe');
  });

  it('finishes the question with the choice pressed', async () => {
    const bot = await openCrewBot();
    const asked = await bot.run('fitting mate', { a: '9/16-18 male', b: 'JIC -6 female' });
    expect(refusalIn(asked).code).toBe('which-one');
    expect(cardIn(await press(bot, asked, 'JIC -6 male')).result).toBe('Goes on and seals');
  });
});

describe('/fitting adapt', () => {
  it('finds the one adapter, its O-ring and a line to order', () => {
    const card = adaptReply('9/16-18 ORB port', '-8 AN female');
    expect(card.result).toBe('Port adapter, ORB -6 male to JIC -8 male');
    expect(card.data).toMatchObject({
      found: true,
      orderLines: ['port adapter, ORB -6 male to JIC -8 male, with O-ring AS568 -906'],
    });
  });

  it('says that nothing is needed where two ends seal as they are', () => {
    expect(adaptReply('JIC -6 male', 'JIC -6 female').result).toContain('as they are');
  });

  it('says so when no chain of usual adapters seals, instead of inventing one', () => {
    const card = adaptReply('M10x1 female double flare', 'JIC -3 female');
    expect(card.data).toMatchObject({ found: false, adapters: [] });
    expect(card.caution).toContain('brake pipe');
  });

  it('asks which side an end is of', () => {
    const { question } = refusal(() => adaptReply('G 1/4', 'JIC -6 female'));
    expect(question).toMatchObject({
      field: 'from',
      choices: [{ value: 'G 1/4 male' }, { value: 'G 1/4 female' }],
    });
  });

  it('orders the adapter through a form, by the same rules as /order place', async () => {
    const bot = await openCrewBot();
    const found = await bot.run('fitting adapt', { from: '9/16-18 ORB port', to: '-8 AN female' });
    const form = formIn(await press(bot, found, 'Order it'));
    const what = form.fields.find(({ name }) => name === 'what')?.value ?? '';
    const filled = { what, supplier: 'Oxmere Hose', due: '15 Dec', quantity: '2' };
    const placed = cardIn(await bot.press(writeActionRef(form.does), filled));
    expect(placed.data).toMatchObject({ what, supplier: 'Oxmere Hose', quantity: 2, state: 'open' });
    const listed = cardIn(await bot.run('order list'));
    expect(listed.items?.[0]?.text ?? '').toContain('ORB -6 male to JIC -8 male');
  });

  it('turns a forged adapter away', async () => {
    const bot = await openCrewBot();
    const refused = await bot.press(
      writeActionRef({ command: 'fitting', action: 'order', args: { adapter: 'x_y' } }),
    );
    expect(refusalIn(refused).code).toBe('stale-message');
  });
});

describe('/fitting dash', () => {
  const Sizes = z.object({ sizes: z.array(z.object({ dash: z.number(), tubeOdMm: z.number() })) });
  const Matches = z.object({
    matches: z.array(z.object({ dash: z.number(), as: z.string(), offMm: z.number() })),
  });

  it.each([['-6'], ['dash 6'], ['6an'], ['JIC -06']])('reads %s as -6, a tube of 9.525 mm', (size) => {
    expect(Sizes.parse(dashReply({ size }).data).sizes).toMatchObject([{ dash: 6, tubeOdMm: 9.525 }]);
  });

  it('lists both dash sizes of a thread that two kinds share', () => {
    const { sizes } = Sizes.parse(dashReply({ size: '9/16-18' }).data);
    expect(sizes.map(({ dash }) => dash)).toEqual([4, 6]);
  });

  it('gives the same size for millimetres and inches', () => {
    const of = (size: string) => Matches.parse(dashReply({ size, across: 'tube' }).data).matches;
    expect(of('9.525 mm')).toMatchObject([{ dash: 6, as: 'tube' }]);
    expect(of('0.375 in')).toMatchObject([{ dash: 6, as: 'tube' }]);
    expect(of('3/8')).toMatchObject([{ dash: 6, as: 'tube' }]);
  });

  it('keeps the two customs of hose bore apart', () => {
    const { matches } = Matches.parse(dashReply({ size: '7.9 mm', across: 'bore' }).data);
    expect(matches).toMatchObject([
      { dash: 5, as: 'bore' },
      { dash: 6, as: 'tube-sized bore' },
    ]);
  });

  it.each([
    ['-7', 'not-found'],
    ['0 mm', 'out-of-range'],
    ['3 m', 'out-of-range'],
    ['hose', 'bad-input'],
  ])('refuses %s as %s', (size, code) => {
    expect(refusal(() => dashReply({ size })).code).toBe(code);
  });
});

describe('/fitting washer', () => {
  it('gives a banjo two washers with bore, outside and thickness, and says new each time', () => {
    const card = washerReply('M14x1.5 banjo');
    expect(card.data).toMatchObject({
      need: {
        count: 2,
        rings: [
          { boreMm: 14, outsideMm: 18, thicknessMm: 1.5 },
          { boreMm: 14, outsideMm: 20, thicknessMm: 1.5 },
        ],
      },
    });
    expect(card.caution).toContain('checked clean');
  });

  it.each([
    ['M14x1.5 plug', 'sealing washer', 1],
    ['G 1/4', 'sealing washer', 1],
    ['ORB -8', 'O-ring', 1],
    ['1/4 NPT male', 'sealant', 1],
  ])('reads %s: %s, %i', (end, what, count) => {
    expect(washerReply(end).data).toMatchObject({ need: { what, count } });
  });

  it('says that a cone needs nothing', () => {
    expect(washerReply('JIC -6 male').data).toMatchObject({ need: null });
  });
});

describe('/fitting port', () => {
  let bot: CrewBot;
  const note = (name: string, end: string, more = {}) => bot.run('fitting port', { name, end, ...more });
  beforeEach(async () => {
    bot = await openCrewBot();
  });

  it('notes a port with what was typed, who and when, and lists it', async () => {
    const noted = cardIn(
      await note('catch-tank return', '3/4-16 female O-ring boss', { note: '17.5 x 16tpi' }),
    );
    expect(noted.result).toBe('catch-tank return: ORB -8 female');
    expect(noted.data).toMatchObject({
      end: 'ORB -8 female',
      typed: '3/4-16 female O-ring boss',
      notedBy: 'Ada',
      notedOn: '2026-11-23',
    });
    expect(cardIn(await bot.run('fitting ports')).data).toMatchObject({
      ports: [{ name: 'catch-tank return', note: '17.5 x 16tpi' }],
    });
    expect(cardIn(await bot.run('fitting port', { name: 'Catch-Tank' })).result).toContain('ORB -8 female');
  });

  it('corrects the port of the same name, says what it was, and keeps the note', async () => {
    await note('oil feed', 'M10x1 female flat face', { note: 'read by Bram' });
    const corrected = cardIn(await note('Oil  Feed', '1/8 NPT female'));
    expect(corrected.certainty).toContain('It was M10x1 female flat face.');
    expect(corrected.data).toMatchObject({
      name: 'oil feed',
      end: '1/8-27 NPT female',
      note: 'read by Bram',
    });
    expect(cardIn(await bot.run('fitting ports')).items).toHaveLength(1);
  });

  it('adds a photograph without touching the end', async () => {
    await note('oil feed', 'ORB -6 female');
    const more = cardIn(
      await bot.run('fitting port', { name: 'oil feed', link: 'https://example.org/p.jpg' }),
    );
    expect(more.data).toMatchObject({ end: 'ORB -6 female', link: 'https://example.org/p.jpg' });
    const refused = await bot.run('fitting port', { name: 'oil feed', link: 'javascript:alert(1)' });
    expect(refusalIn(refused).code).toBe('bad-input');
  });

  it('asks instead of noting an end that could be several', async () => {
    const asked = await note('oil feed', '3/4-16 female');
    expect(refusalIn(asked).code).toBe('which-one');
    expect(cardIn(await bot.run('fitting ports')).data).toMatchObject({ ports: [] });
    expect(cardIn(await press(bot, asked, 'ORB -8 female')).data).toMatchObject({ end: 'ORB -8 female' });
  });

  it('removes a port, and undo brings it back', async () => {
    const noted = await note('oil feed', 'ORB -6 female');
    const removed = await press(bot, noted, 'Remove');
    expect(cardIn(await bot.run('fitting ports')).data).toMatchObject({ ports: [] });
    await press(bot, removed, 'Undo');
    expect(cardIn(await bot.run('fitting ports')).data).toMatchObject({ ports: [{ name: 'oil feed' }] });
    expect(cardIn(await bot.run('fitting remove', { port: 'oil feed' })).result).toContain('off the list');
  });

  it('keeps the ports of another channel to itself', async () => {
    await note('oil feed', 'ORB -6 female');
    const elsewhere = await bot.run('fitting port', { name: 'oil feed' }, { channel: '601' });
    expect(refusalIn(elsewhere).code).toBe('not-found');
    const pressed = await bot.press('fitting/remove?port=%231', {}, { channel: '601' });
    expect(refusalIn(pressed).code).toBe('not-found');
  });
});

describe('/fitting order', () => {
  let bot: CrewBot;
  const order = (fitting: string, more = {}) =>
    bot.run('fitting order', {
      port: 'catch-tank',
      fitting,
      supplier: 'Oxmere Hose',
      due: '15 Dec',
      ...more,
    });
  beforeEach(async () => {
    bot = await openCrewBot();
    await bot.run('fitting port', { name: 'catch-tank return', end: '3/4-16 female O-ring boss' });
  });

  it('orders what goes on and seals, with its O-ring, for the port by name', async () => {
    const placed = cardIn(await order('ORB -8 male', { quantity: 2 }));
    expect(placed.data).toMatchObject({
      what: 'ORB -8 male for catch-tank return, with O-ring AS568 -908',
      quantity: 2,
      mating: { seals: 'yes' },
    });
    expect(placed.caution).toBeUndefined();
  });

  it('warns and orders nothing when the fitting does not seal in that port', async () => {
    const warned = await order('JIC 8 male');
    expect(refusalIn(warned)).toMatchObject({ code: 'which-one' });
    expect(refusalIn(warned).message).toMatch(/Screws on, but does not seal.*Not ordered/);
    expect(cardIn(await bot.run('order list')).items ?? []).toHaveLength(0);
  });

  it('orders it all the same when told to, and goes on saying that it does not seal', async () => {
    const placed = cardIn(await press(bot, await order('JIC 8 male'), 'Order it all the same'));
    expect(placed.data).toMatchObject({ what: 'JIC -8 male for catch-tank return', mating: { seals: 'no' } });
    expect(placed.caution).toContain('does not seal');
  });

  it('refuses a port that nobody noted, naming those there are', async () => {
    const refused = await order('ORB -8 male', { port: 'dipstick' });
    expect(refusalIn(refused).message).toContain('catch-tank return');
  });
});
