import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import lambda from '../../../commands/lambda.ts';
import { catalogueOf } from '../../../src/bot/catalogue.ts';
import type { JsonObject } from '../../../src/core/json.ts';
import { type CrewBot, cardIn, openCrewBot } from '../../support/bot.ts';

let bot: CrewBot;
beforeAll(async () => {
  bot = await openCrewBot(catalogueOf(new Map([['lambda', lambda]])));
});

const cardOf = async (sub: string, options: JsonObject) => cardIn(await bot.run(`lambda ${sub}`, options));
const dataOf = async <Shape extends z.ZodRawShape>(shape: Shape, sub: string, options: JsonObject) =>
  z.looseObject(shape).parse((await cardOf(sub, options)).data);
const Result = z.object({ value: z.number(), unit: z.string() });

describe('/lambda read', () => {
  it.each([
    { typed: { reading: '12.4 afr' }, value: 0.84354, unit: 'lambda' },
    { typed: { reading: 'afr 12,5' }, value: 0.85034, unit: 'lambda' },
    { typed: { reading: '12.3:1' }, value: 0.83673, unit: 'lambda' },
    { typed: { reading: 'λ 0.85' }, value: 12.495, unit: 'AFR' },
    { typed: { reading: 'lamda 0.9' }, value: 13.23, unit: 'AFR' },
    { typed: { reading: '7.8 afr', fuel: 'e85' }, value: 0.7946, unit: 'lambda' },
    { typed: { reading: '0.92', fuel: 'E85' }, value: 9.0304, unit: 'AFR' },
    // 12.5 on petrol's scale with E85 is 8.34 : 1 of it (definition of λ).
    { typed: { reading: '12.5 afr', fuel: 'E85', scale: 'petrol' }, value: 0.85034, unit: 'lambda' },
  ])('turns $typed into $value $unit', async ({ typed, value, unit }) => {
    const { result } = await dataOf({ result: Result }, 'read', typed);
    expect(result.value).toBeCloseTo(value, 3);
    expect(result.unit).toBe(unit);
  });

  it('asks which scale an AFR is on where both could be', async () => {
    const card = await cardOf('read', { reading: '10.5 afr', fuel: 'E85' });
    expect(card.buttons?.map(({ label }) => label)).toEqual(
      expect.arrayContaining(['Petrol gauge: λ 0.714', "The fuel's own: λ 1.070"]),
    );
  });

  it('says in every answer what a gauge lettered in AFR shows', async () => {
    const card = await cardOf('read', { reading: '0.92', fuel: 'E85' });
    expect(card.certainty).toContain('whatever is in the tank');
    expect(card.working?.join(' ')).toContain('shows 13.52');
  });

  it.each([
    ['afr 0.85', 'λ 0.85'],
    ['lambda 92', 'λ 0.92'],
  ])('asks about %s and offers %s', async (reading, offered) => {
    const card = await cardOf('read', { reading });
    expect(card.buttons?.map(({ label }) => label)).toContain(offered);
  });

  it('says what it would read when it reads nothing', async () => {
    const result = await bot.run('lambda read', { reading: 'rich' });
    expect(result.ok).toBe(false);
    expect(cardIn(result).result).toContain('12.4 afr');
  });
});

describe('/lambda correct', () => {
  it('says the direction in words and the multiplier', async () => {
    const card = await cardOf('correct', { measured: '0.86', wanted: '0.90', cell: 62 });
    expect(card.result).toBe('Take 4.4 % out: × 0.956');
    expect(card.working?.join(' ')).toContain('62 to 59.24');
    expect(card.data).toMatchObject({ lambda: 0.86, targetLambda: 0.9 });
  });

  it('cancels the fuel where both are AFR', async () => {
    const shape = { result: Result, afr: z.number(), targetAfr: z.number() };
    const data = await dataOf(shape, 'correct', {
      measured: '12.4 afr',
      wanted: '13.2 afr',
      fuel: 'E85',
      scale: 'fuel',
    });
    expect(data.result.value).toBeCloseTo(12.4 / 13.2 - 1, 12);
  });

  it('holds one step to its limit, and says how many it takes', async () => {
    const card = await cardOf('correct', { measured: '1.25', wanted: '1.00' });
    expect(card.result).toBe('Put 10 % in: × 1.100');
    expect(card.certainty).toContain('about 3 steps');
    const wide = await cardOf('correct', { measured: '1.25', wanted: '1.00', limit: '30 %' });
    expect(wide.result).toBe('Put 25 % in: × 1.250');
  });

  it('warns of everything that makes a sensor lie', async () => {
    const { caution = '', certainty } = await cardOf('correct', { measured: '0.98', wanted: '0.98' });
    expect(certainty).toBe('Nothing to change here; read the next cell.');
    for (const word of ['cold', 'misfire', 'before the sensor', 'heater']) expect(caution).toContain(word);
  });

  it('leaves alone what is right', async () => {
    expect((await cardOf('correct', { measured: '0.98', wanted: '0.98' })).result).toBe(
      'Leave it: it is where it should be',
    );
  });
});

describe('/lambda fuel', () => {
  it.each([
    ['E85', 9.82],
    ['85% ethanol', 9.82],
    ['petrol', 14.7],
    ['m100', 6.47],
    ['LPG', 15.56],
    ['90% e85 + 10% toluene', 10.22],
    ['petrol 3.7% oxygen', 14.09],
    ['20 l petrol + 5 l ethanol', 13.51],
  ])('knows %s at %f : 1', async (fuel, ratio) => {
    const { stoichiometricAfr } = await dataOf({ stoichiometricAfr: z.number() }, 'fuel', { fuel });
    expect(stoichiometricAfr).toBeCloseTo(ratio, 1);
  });

  it('follows the petrol that is said', async () => {
    const data = await dataOf({ stoichiometricAfr: z.number() }, 'fuel', {
      fuel: 'E85',
      petrol: 14.6,
      density: '0.740 g/cc',
    });
    expect(data.stoichiometricAfr).toBeCloseTo(9.795, 2);
  });

  it('asks which gas, and refuses what it does not know', async () => {
    expect((await cardOf('fuel', { fuel: 'gas' })).buttons?.length).toBe(3);
    const refused = await bot.run('lambda fuel', { fuel: 'unobtainium' });
    expect(cardIn(refused).result).toContain('E85');
    expect((await bot.run('lambda fuel', { fuel: '60% ethanol + 60% petrol' })).ok).toBe(false);
  });
});

describe('/lambda tank', () => {
  const tank = { litres: '20 L', holds: 'E10', with: 'E85' };

  it('says what is in it after topping up', async () => {
    const data = await dataOf({ alcoholRatio: z.number(), stoichiometricAfr: z.number() }, 'tank', {
      ...tank,
      add: '30 L',
    });
    expect(data.alcoholRatio).toBeCloseTo(0.55, 12);
    expect(data.stoichiometricAfr).toBeCloseTo(11.484, 1);
  });

  it('says how much to add for a share', async () => {
    const card = await cardOf('tank', { ...tank, wanted: '55 %' });
    expect(card.result).toBe('Add 30 L (31.7 US qt) of E85 for 55 % alcohol');
  });

  it('refuses a share that cannot be reached, and two questions at once', async () => {
    expect(cardIn(await bot.run('lambda tank', { ...tank, wanted: '90 %' })).result).toContain(
      'there is no 90 %',
    );
    expect((await bot.run('lambda tank', { ...tank, wanted: '50 %', add: '3 L' })).ok).toBe(false);
  });
});
