import { describe, expect, it } from 'vitest';
import type { Answer } from '../../../src/core/reply.ts';
import { type CrewBot, cardIn, formIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';
import { filesOf, logOf, strangeLog } from '../../support/log-files.ts';
import type { Model } from '../../support/model-engine/engine.ts';

const AXES = { load: '20 40 60 80 100 130 160 200', speed: '800 to 6800 by 1000' };
const PULLS: Partial<Model> = {
  kind: 'pulls',
  topKPa: 180,
  seconds: 240,
  faults: false,
  film: { shareRatio: 0.1, timeS: 0.3 },
};

function bot(texts: Readonly<Record<string, string>> = { 'hill.csv': logOf() }): Promise<CrewBot> {
  return openCrewBot(undefined, filesOf(texts));
}

async function answered(texts: Readonly<Record<string, string>>, options = {}): Promise<Answer> {
  const crew = await bot(texts);
  const card = cardIn(await crew.run('log fuel', { file: Object.keys(texts)[0] ?? '', ...options }));
  expect(crew.reported).toEqual([]);
  return card;
}

const rowsOf = (card: Answer, name: string): string[][] =>
  new TextDecoder()
    .decode(card.files?.find((file) => file.name === name)?.bytes)
    .trim()
    .split('\r\n')
    .map((row) => row.split(','));

describe('/log fuel', { timeout: 30_000 }, () => {
  it('says what to do in at most three things, how sure it is, and what was dropped', async () => {
    const card = await answered({ 'hill.csv': logOf() });
    expect(card.items?.length).toBeGreaterThan(0);
    expect(card.items?.length).toBeLessThanOrEqual(3);
    expect(card.certainty).toMatch(/±\d\.\d %.*19 times out of 20.*could be used/);
    expect(card.facts?.find(([label]) => label === 'Dropped')?.[1]).toMatch(/transients \d+ s/);
    expect(card.caution).toMatch(/no test bed: somebody else drives/);
    expect(card.caution).toMatch(/Stop at once/);
    expect(card.pictures?.map(({ name }) => name)).toEqual(['fuel-map.png']);
  });

  it('gives the multipliers on the table’s own axes, 1 where a cell is left alone', async () => {
    const card = await answered({ 'hill.csv': logOf() }, AXES);
    const table = rowsOf(card, 'fuel-multipliers.csv');
    expect(table[0]?.slice(1)).toEqual(['800', '1800', '2800', '3800', '4800', '5800', '6800']);
    expect(table.slice(1).map(([load]) => load)).toEqual([
      '20',
      '40',
      '60',
      '80',
      '100',
      '130',
      '160',
      '200',
    ]);
    const { multiplierRatio } = card.data as { multiplierRatio: number[][] };
    table.slice(1).forEach((row, i) => {
      row
        .slice(1)
        .forEach((cell, j) => void expect(Number(cell)).toBeCloseTo(multiplierRatio[i]?.[j] ?? 0, 4));
    });
    const detail = rowsOf(card, 'fuel-multipliers-detail.csv');
    expect(detail).toHaveLength(1 + 8 * 7);
    for (const row of detail.slice(1))
      expect(row[6] === '' ? row[4] : row[2]).toMatch(row[6] === '' ? /^0\.\d+$/ : /^1\.0000$/);
  });

  it('remembers breakpoints, target and cap for the build', async () => {
    const crew = await bot();
    await crew.run('log table', { ...AXES, target: '60:1 100:0.9 160:0.8', cap: '5 %' });
    const { data } = cardIn(await crew.run('log fuel', { file: 'hill.csv' }));
    expect(data).toMatchObject({
      loadAxisKPa: [20, 40, 60, 80, 100, 130, 160, 200],
      speedAxisRpm: [800, 1800, 2800, 3800, 4800, 5800, 6800],
      axesFrom: 'given',
      targetFrom: 'given',
      capRatio: 0.05,
    });
    const changes = (data as { multiplierRatio: number[][] }).multiplierRatio.flat();
    expect(Math.max(...changes.map((each) => Math.abs(each - 1)))).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  it('uses safe targets, and says so, where neither crew nor log has any', async () => {
    const text = logOf().replace('Target lambda', 'Nothing of note');
    const card = await answered({ 'hill.csv': text });
    expect(card.data['targetFrom']).toBe('safe');
    expect(card.smallPrint?.join('\n')).toContain('common practice for petrol with boost');
  });

  it.each<[NonNullable<Model['danger']>, RegExp]>([
    ['knock', /^Knock/],
    ['lean', /^Lean under boost: λ/],
    ['oil-pressure', /^Oil pressure fell/],
    ['fuel-pressure', /^Fuel pressure fell/],
    ['duty', /^Injectors open/],
  ])('puts a danger first, before any correction: %s', async (danger, words) => {
    const card = await answered({ 'pulls.csv': logOf({ ...PULLS, danger }, undefined, 4) });
    expect(card.result).toMatch(words);
    expect(card.tone).toBe('late');
    expect(card.items?.[0]?.text).toMatch(/^1\. (Do not|Stay|Stop|Go no further)/);
    expect(card.data['warnings']).toMatchObject([{ kind: danger }]);
  });

  it('leaves a suspected leak alone, and corrects it only when told to', async () => {
    const texts = { 'idle.csv': logOf({ kind: 'idle', leakRatio: 0.3, seconds: 150, faults: false }) };
    const left = await answered(texts, AXES);
    expect(left.data['suspicions']).toMatchObject([{ kind: 'air-leak' }]);
    expect(left.items?.[0]?.text).toContain('do not fuel it away');
    expect(new Set((left.data as { multiplierRatio: number[][] }).multiplierRatio.flat())).toEqual(
      new Set([1]),
    );
    const told = await answered(texts, { ...AXES, suspects: 'correct' });
    expect(
      Math.max(...(told.data as { multiplierRatio: number[][] }).multiplierRatio.flat()),
    ).toBeGreaterThan(1.05);
  });

  it('compares with the log from before', async () => {
    const crew = await bot({ 'now.csv': logOf({}, undefined, 9), 'then.csv': logOf() });
    const card = cardIn(await crew.run('log fuel', { file: 'now.csv', before: 'then.csv' }));
    expect(card.facts?.[0]?.[0]).toBe('Against then.csv');
    expect(card.facts?.[0]?.[1]).toMatch(/cells in both: off by \d+\.\d % then, \d+\.\d % now/);
  });

  it('counts an AFR in the fuel’s own ratio when told to', async () => {
    const style = 'AFR on petrol’s scale, psi gauge, °F, tabs, time of day';
    const whole = async (options: object): Promise<number[]> => {
      const card = await answered({ 'hill.csv': logOf({}, style) }, { ...AXES, target: '0.95', ...options });
      const { fullMultiplierRatio } = card.data as { fullMultiplierRatio: (number | null)[][] };
      return fullMultiplierRatio.flat().flatMap((each) => each ?? []);
    };
    const [petrol, e10] = [await whole({}), await whole({ fuel: 'E10', scale: 'fuel' })];
    expect(petrol.length).toBeGreaterThan(5);
    // E10 burns completely at about 14.1 : 1
    expect((e10[0] ?? 0) / (petrol[0] ?? 1)).toBeCloseTo(14.7 / 14.1, 2);
  });

  it('asks for the cause first where λ is never still', async () => {
    const card = await answered({
      'rough.csv': logOf({ misfire: { ratio: 0.4, belowKPa: 200 }, seconds: 300 }),
    });
    expect(card.items?.map(({ text }) => text).join(' ')).toMatch(/never still|misfire is suspected/);
    const sound = await answered({ 'hill.csv': logOf() });
    expect(sound.items?.map(({ text }) => text).join(' ')).not.toContain('never still');
  });

  it('says how much of a change is left for the next pass', async () => {
    const card = await answered({ 'hill.csv': logOf() }, { ...AXES, cap: '1 %' });
    const changes = card.items?.map(({ text }) => text).filter((text) => /^\d\. (Put|Take)/.test(text)) ?? [];
    expect(changes.length).toBeGreaterThan(0);
    for (const text of changes) expect(text).toContain('1 % at most in this pass');
  });

  it('says that the table stays as it is where a danger takes the first line', async () => {
    // λ for the whole drive the same to the last digit, and too lean for boost: a dead sensor
    const log = logOf({ ...PULLS, closedLoop: false });
    const [head = '', ...rows] = log.trim().split('\n');
    const at = head.split(',').findIndex((name) => name.startsWith('Lambda'));
    const dead = rows.map((row) => row.split(',').with(at, '1.000').join(','));
    const card = await answered({ 'dead.csv': [head, ...dead].join('\n') });
    expect(card.result).toContain('Lean under boost');
    expect(card.certainty).toContain('Nothing is to be changed in the table');
    expect(card.items?.at(-1)?.text).toContain('Look at the sensor first');
    expect(card.files).toBeUndefined();
  });

  it('says that nothing can be used, why, and changes nothing', async () => {
    const card = await answered({ 'cold.csv': logOf({ coldStart: true, seconds: 60 }) });
    expect(card.result).toBe('Nothing in this log can be used, and nothing is to be changed');
    expect(card.items?.[0]?.text).toContain('Most of it was dropped');
    expect(card.files).toBeUndefined();
    expect(card.pictures).toBeUndefined();
  });

  it.each([
    [{ load: '40 20 60' }, '20 stands after 40'],
    [{ load: 'many' }, 'is no row of breakpoints'],
    [{ speed: '800' }, '2 to 32 breakpoints'],
    [{ target: 'rich' }, 'is no λ'],
    [{ target: '0.4' }, 'none an engine is run on'],
    [{ cap: '80 %' }, '1 % to 50 %'],
    [{ fuel: 'coal' }, 'fuel'],
  ])('refuses what cannot be read, before the log is opened: %o', async (options, words) => {
    const crew = await bot();
    expect(refusalIn(await crew.run('log fuel', { file: 'hill.csv', ...options })).message).toContain(words);
    expect(crew.teams.at(TEAM).ledger.lastBy('ada')).toBeNull();
  });

  it('says that a file is gone', async () => {
    const crew = await bot();
    expect(refusalIn(await crew.run('log fuel', { file: 'lost.csv' })).message).toContain(
      'Attach it once more',
    );
  });
});

describe('columns in doubt', { timeout: 30_000 }, () => {
  it('are asked about, kept, and forgotten on a press, which can be undone', async () => {
    const crew = await bot({ 'odd.csv': strangeLog() });
    const asked = cardIn(await crew.run('log fuel', { file: 'odd.csv', ...AXES }));
    expect(asked.result).toBe('odd.csv: which column is the λ?');
    expect(asked.certainty).toContain('Nothing is guessed');
    expect(asked.buttons?.map(({ label }) => label)).toEqual(['Channel 7', 'Say which column is which']);
    const form = formIn(await crew.press('log/columns?file=odd.csv'));
    expect(form.fields.map(({ name }) => name)).toEqual([
      'timeS',
      'speedRpm',
      'loadKPa',
      'lambda',
      'trimRatio',
    ]);
    const done = cardIn(await crew.press('log/assign?file=odd.csv', { lambda: '4' }));
    // the breakpoints typed before the question are not lost
    expect(done.data).toMatchObject({ usable: true, axesFrom: 'given' });
    expect(cardIn(await crew.run('log fuel', { file: 'odd.csv' })).data['usable']).toBe(true);
    const known = cardIn(await crew.run('log columns'));
    expect(known.items?.[0]?.text).toContain('λ: Channel 7');
    const forgot = cardIn(await crew.press('log/forget?header=1'));
    expect(forgot.result).toContain('No logger');
    expect(cardIn(await crew.run('log fuel', { file: 'odd.csv' })).subject).toBe('Which column?');
    const [undo] = forgot.buttons ?? [];
    await crew.press(`undo/this?change=${undo?.does.args['change']}`);
    expect(cardIn(await crew.run('log fuel', { file: 'odd.csv' })).data['usable']).toBe(true);
  });

  it('picked twice, or by a name there is none of, change nothing', async () => {
    const crew = await bot({ 'odd.csv': strangeLog() });
    const twice = await crew.press('log/assign?file=odd.csv', { lambda: '2', loadKPa: '2' });
    expect(refusalIn(twice).message).toContain('picked twice');
    const unknown = await crew.press('log/assign?file=odd.csv', { lambda: 'Channel 99' });
    expect(refusalIn(unknown).message).toContain('No column of that log is called');
    expect(crew.teams.at(TEAM).ledger.lastBy('ada')).toBeNull();
  });
});

describe('/log table', () => {
  it('shows what is known, keeps what is said, and takes it back', async () => {
    const crew = await bot();
    expect(cardIn(await crew.run('log table')).result).toContain('not known yet');
    const kept = cardIn(await crew.run('log table', { load: '0.2 0.6 1.0 bar', speed: '800,1600,2400' }));
    expect(kept.result).toBe('3 loads by 3 speeds, kept for the next log');
    expect(kept.data).toMatchObject({ loadAxisKPa: [20, 60, 100], speedAxisRpm: [800, 1600, 2400] });
    await crew.press(`undo/this?change=${kept.buttons?.[0]?.does.args['change']}`);
    expect(cardIn(await crew.run('log table')).result).toContain('not known yet');
  });
});
