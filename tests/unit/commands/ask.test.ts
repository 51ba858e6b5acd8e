import { describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import type { Result } from '../../../src/bot/request.ts';
import { cardIn, openCrewBot, refusalIn } from '../../support/bot.ts';

const ask = async (text: string, outside = false): Promise<Result> =>
  (await openCrewBot()).run('ask', { text }, { outside });
const dataOf = async (text: string, outside = false) => cardIn(await ask(text, outside)).data;

describe('/ask', () => {
  it('answers by the command that has the answer, under its own kind', async () => {
    expect(await dataOf('12.4 afr')).toMatchObject({
      kind: 'afr-lambda',
      afr: 12.4,
      result: { value: 12.4 / 14.7, unit: 'lambda' },
    });
    expect(await dataOf('85lbft')).toMatchObject({
      kind: 'torque',
      torqueNm: expect.closeTo(115.244_525_6, 6) as number,
    });
  });

  it('lets what was assumed be changed, as the command itself does', async () => {
    const { buttons = [] } = cardIn(await ask('m10 10.9'));
    expect(buttons.map(({ label }) => label)).toEqual(['Change what was assumed']);
    expect(buttons[0]?.does.args).toMatchObject({ _run: 'torque bolt' });
  });

  it('adds base and boost for the pressure at the rail', async () => {
    expect(await dataOf('3 bar base 1.1 bar boost what rail pressure')).toMatchObject({
      railKPa: 410,
      acrossKPa: 300,
    });
  });

  it('says what one cylinder has', async () => {
    expect(cardIn(await ask('1998cc per cylinder 4 cyl')).result).toBe('499.5 cm³ in each of 4 cylinders');
  });

  it('says the pitch and the drill of a thread that was only named', async () => {
    expect(cardIn(await ask('tap drill m8'))).toMatchObject({
      result: '6.8 mm drill for M8 × 1.25',
      data: { kind: 'thread', diameterMm: 8, pitchMm: 1.25, result: { value: 6.8, unit: 'mm' } },
    });
  });

  it('says what a pipe thread measures, since its name is no length', async () => {
    expect(cardIn(await ask('1/2 bsp od')).certainty).toContain(
      '20.95 mm over the crests, pitch 1.814 mm (14 tpi)',
    );
  });

  it('knows the crew’s holidays, and says so where it knows none', async () => {
    expect(cardIn(await ask('next bank holiday?')).result).toBe('Fri 25 Dec 2026, Christmas Day');
    expect(cardIn(await ask('is 28 dec a bank holiday')).result).toContain('Yes: Mon 28 Dec 2026');
    expect(cardIn(await ask('is 29 dec a bank holiday')).result).toContain('No: Tue 29 Dec 2026');
    expect(refusalIn(await ask('next bank holiday?', true)).code).toBe('not-now');
    expect(refusalIn(await ask('is 28 dec a bank holiday', true)).code).toBe('not-now');
    expect(cardIn(await ask('how many working days until 24 dec')).result).toBe(
      '31 days, 23 working days, to Thu 24 Dec 2026',
    );
    expect(cardIn(await ask('3 weeks from friday', true)).smallPrint?.join()).toContain(
      'No country is known here',
    );
  });

  it('asks back with buttons that carry the reading, each at most a phone’s width', async () => {
    const result = await ask('80 lb');
    expect(refusalIn(result).code).toBe('which-one');
    const { buttons = [], data } = cardIn(result);
    expect(buttons.map(({ label }) => label)).toEqual([
      '80 lb ft, a torque',
      '80 psi, a pressure',
      '80 lb, a weight',
    ]);
    expect(data).toMatchObject({
      kind: 'torque',
      candidates: [{ kind: 'torque' }, { kind: 'pressure' }, { kind: 'convert' }],
    });
    for (const { does } of buttons) expect(writeActionRef(does).length).toBeLessThanOrEqual(100);
  });

  it('says what can be typed when there is nothing to work out', async () => {
    expect(cardIn(await ask('good job lads'))).toMatchObject({ audience: 'asker', data: { kind: 'none' } });
  });

  it('carries a command’s own question in its buttons where there is no record to keep it in', async () => {
    const bot = await openCrewBot();
    const asked = await bot.run('ask', { text: '12.4 afr e85' }, { outside: true });
    const [gauge] = cardIn(asked).buttons ?? [];
    if (gauge === undefined) throw new Error('no button');
    const pressed = await bot.press(writeActionRef(gauge.does), {}, { outside: true });
    expect(cardIn(pressed).data).toMatchObject({ kind: 'afr-lambda', fuel: 'E85' });
  });
});

describe('a question to the record', () => {
  it('is answered by the command that has the answer, which its data names', async () => {
    const bot = await openCrewBot();
    await bot.run('job add', { name: 'fit the oil pump' });
    await bot.run('order place', { what: 'head gasket', supplier: 'Exemplar Parts', due: 'in 3 days' });
    const asked = async (text: string) => cardIn(await bot.run('ask', { text }));
    expect(await asked('what can we do tonight with 90 min')).toMatchObject({ data: { asked: 'now' } });
    expect((await asked('what can I do now')).result).toBe('1 job can be done now');
    expect(await asked("what's on order?")).toMatchObject({
      data: { asked: 'order list', orders: [{ what: 'head gasket' }] },
    });
    expect(await asked('are we ready for first start?')).toMatchObject({
      data: { asked: 'ready', stage: 'first-start', ready: false },
    });
    expect(refusalIn(await bot.run('ask', { text: 'how may I drive it today' })).message).toContain(
      '/runin plan',
    );
    expect(bot.reported).toEqual([]);
  });

  it('is refused in private, where there is no record, with where to ask', async () => {
    expect(refusalIn(await ask('what can I do now', true))).toMatchObject({
      code: 'not-now',
      message: expect.stringContaining('in a channel of its server') as string,
    });
  });
});

describe('a symptom', () => {
  it('asks before a search is begun, and its button begins it', async () => {
    const bot = await openCrewBot();
    const asked = await bot.run('ask', { text: "it won't start" });
    expect(refusalIn(asked).code).toBe('which-one');
    expect(cardIn(await bot.run('fault list')).data).toMatchObject({ open: 0, walks: [] });
    const [button, ...more] = cardIn(asked).buttons ?? [];
    if (button === undefined) throw new Error('no button');
    expect(more).toEqual([]);
    expect((await bot.press(writeActionRef(button.does))).ok).toBe(true);
    expect(JSON.stringify(cardIn(await bot.run('fault list')).data)).toContain('will-not-start');
  });

  it('is nothing in private, where no search can be begun', async () => {
    expect(await dataOf('no spark', true)).toEqual({ kind: 'none' });
  });
});

describe('a line that is a reading', () => {
  it.each([
    ['oil 4.2 bar at 2500 rpm 92C', 'pressure', 'oil pressure'],
    ['compression 12.1 12.0 11.8 11.9', 'compression', 'compression'],
    ['battery 12.4 rest', 'battery', 'battery voltage'],
  ])('gets its sum and a button that logs it as it was typed: %s', async (text, kind, logged) => {
    const bot = await openCrewBot();
    const card = cardIn(await bot.run('ask', { text }));
    expect(card.data['kind']).toBe(kind);
    const [button] = card.buttons ?? [];
    if (button?.label !== 'Log this reading') throw new Error('it cannot be logged');
    await bot.press(writeActionRef(button.does));
    expect(JSON.stringify(cardIn(await bot.run('reading list')).data)).toContain(logged);
  });

  it('gets the sum alone in private, where nothing can be logged', async () => {
    const card = cardIn(await ask('battery 12.4 rest', true));
    expect(card.data['kind']).toBe('battery');
    expect(card.buttons ?? []).toEqual([]);
  });

  it('is talk where it tells what was', async () => {
    expect(await dataOf('oil pressure was 55 psi hot')).toEqual({ kind: 'none' });
  });
});

describe('a message', () => {
  const said = { id: '1', who: { id: '7', name: 'Ada' }, place: null, files: [] };
  const heard = async (text: string, toBot: boolean) => {
    const bot = await openCrewBot();
    return bot.hear({ ...said, text, toBot });
  };

  it('that is talk is met with silence, unless it was said to the bot', async () => {
    expect(await heard('see you at 8', false)).toBeNull();
    expect(await heard('see you at 8', true)).toMatchObject({ ok: true, reply: { data: { kind: 'none' } } });
  });

  it('without words asks nothing', async () => {
    expect(await heard('  ', false)).toBeNull();
    expect(await heard('', true)).toMatchObject({ reply: { data: { kind: 'none' } } });
  });

  it('of a story’s length is not looked at', async () => {
    expect(await heard('58psi '.repeat(200), false)).toBeNull();
  });
});
