import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import injector from '../../../commands/injector.ts';
import { catalogueOf } from '../../../src/bot/catalogue.ts';
import type { JsonObject } from '../../../src/core/json.ts';
import { type CrewBot, cardIn, openCrewBot } from '../../support/bot.ts';

let bot: CrewBot;
beforeAll(async () => {
  bot = await openCrewBot(catalogueOf(new Map([['injector', injector]])));
});

const cardOf = async (sub: string, options: JsonObject) => cardIn(await bot.run(`injector ${sub}`, options));
const Numbers = z.record(z.string(), z.unknown());
async function numbersOf(sub: string, options: JsonObject): Promise<Readonly<Record<string, number>>> {
  const data = Numbers.parse((await cardOf(sub, options)).data);
  const flat = Object.entries(data).filter(
    (entry): entry is [string, number] => typeof entry[1] === 'number',
  );
  return Object.fromEntries(flat);
}
const resultOf = async (sub: string, options: JsonObject) =>
  z
    .looseObject({ result: z.object({ value: z.number(), unit: z.string() }) })
    .parse((await cardOf(sub, options)).data).result;

describe('/injector size', () => {
  it('sizes as the definition of fuel per work has it', async () => {
    // 400 hp × 0.5 lb/hp·h / (8 × 0.85) = 29.41 lb/h.
    const { flowGs, totalGs } = await numbersOf('size', {
      power: '400 hp',
      cylinders: 8,
      bsfc: '0.5 lb/hp h',
    });
    expect(((flowGs ?? 0) * 3600) / 453.59237).toBeCloseTo(29.4118, 3);
    expect(((totalGs ?? 0) * 3600) / 453.59237).toBeCloseTo(200, 3);
  });

  it('takes power at the wheels with the loss stated, and says so', async () => {
    const wheels = { power: '300 kW', cylinders: 6, at: 'wheels', loss: '20 %' };
    const card = await cardOf('size', wheels);
    expect(card.smallPrint?.join(' ')).toContain('20 % lost in the drive line');
    expect((await numbersOf('size', wheels))['crankPowerKW']).toBeCloseTo(375, 9);
  });

  it.each(['400 whp', '400whp', '400 hp at the wheels', '400 wheel hp', '400 rwhp'])(
    'hears that %s is counted at the wheels',
    async (power) => {
      const { powerKW, crankPowerKW } = await numbersOf('size', { power, cylinders: 4, loss: '20 %' });
      expect(powerKW).toBeCloseTo(298.28, 2);
      expect(crankPowerKW).toBeCloseTo(372.85, 2);
    },
  );

  it('lets at outrank what power says, and leaves a crank figure alone', async () => {
    const crank = await numbersOf('size', { power: '400 hp crank', cylinders: 4 });
    expect(crank['crankPowerKW']).toBe(crank['powerKW']);
    const said = await numbersOf('size', { power: '400 whp', cylinders: 4, at: 'crank' });
    expect(said['crankPowerKW']).toBe(said['powerKW']);
  });

  it('asks for less at a higher pressure across it', async () => {
    const at = async (pressure: string) =>
      (await numbersOf('size', { power: '300 kW', cylinders: 6, pressure }))['flowCcMin'] ?? 0;
    expect((await at('3 bar')) / (await at('4 bar'))).toBeCloseTo(Math.sqrt(4 / 3), 9);
  });

  it('says what it assumed and offers to change it', async () => {
    const card = await cardOf('size', { power: '400 hp', cylinders: 4, fuel: 'E85' });
    expect(card.smallPrint?.join(' ')).toContain('common practice');
    expect(card.buttons?.map(({ label }) => label)).toContain('Change what was assumed');
    expect(card.caution).toContain('pressure');
  });

  it('reads fuel per work in either system and refuses the rest', async () => {
    const sized = { power: '150 kW', cylinders: 4, duty: '80 %' };
    const { flowCcMin } = await numbersOf('size', { ...sized, bsfc: '300 g/kWh' });
    expect(flowCcMin).toBeCloseTo(314.597, 2);
    const refused = await bot.run('injector size', { ...sized, bsfc: '20' });
    expect(cardIn(refused).result).toContain('335 g/kWh');
    expect(cardIn(await bot.run('injector size', { ...sized, fuel: 'methane' })).result).toContain(
      'is a gas',
    );
  });
});

describe('/injector power', () => {
  it('gives back the power of a set', async () => {
    const set = { flow: '440 cc', count: 4, duty: '85 %', bsfc: '0.55' };
    expect(((await numbersOf('power', set))['powerKW'] ?? 0) / 0.74569987).toBeCloseTo(268.047, 2);
  });
});

describe('/injector duty', () => {
  it('works out duty, or the longest pulse where none is given', async () => {
    expect((await numbersOf('duty', { speed: '7000 rpm', pulse: '12.5 ms' }))['duty']).toBeCloseTo(
      0.72917,
      4,
    );
    const longest = await resultOf('duty', { speed: '8000 rpm', limit: '85 %' });
    expect(longest.value).toBeCloseTo(12.75, 9);
    expect(longest.unit).toBe('ms');
    const batch = { speed: '7000 rpm', pulse: '6 ms', shots: 'each-turn' };
    expect((await numbersOf('duty', batch))['duty']).toBeCloseTo(0.7, 9);
  });

  it('finds the worst line of a log', async () => {
    const card = await cardOf('duty', { log: '5000 9.1, 6000 14.2, 7000 15.8' });
    expect(card.result).toBe('92.2 % duty at 7000 rpm: over 85 %');
    expect(card.tone).toBe('late');
  });

  it('says what to give when nothing was, and what a log looks like', async () => {
    expect(cardIn(await bot.run('injector duty', {})).result).toContain('Give speed');
    expect(cardIn(await bot.run('injector duty', { log: 'all over the place' })).result).toContain(
      '5000 9.1',
    );
  });
});

describe('/injector flow', () => {
  it('follows the root of the pressure', async () => {
    const result = await resultOf('flow', { flow: '550cc', from: '3 bar', to: '3.5 bar' });
    expect(result.value).toBeCloseTo(594.068, 2);
  });

  it('takes the boost off a fixed rail, and not off one that follows', async () => {
    const boosted = { flow: '440 cc', to: '3 bar', manifold: '1 bar' };
    expect((await resultOf('flow', { ...boosted, regulator: 'fixed' })).value).toBeCloseTo(359.258, 2);
    expect((await cardOf('flow', { ...boosted, regulator: 'fixed' })).caution).toContain(
      'falls as boost rises',
    );
    expect((await resultOf('flow', boosted)).value).toBeCloseTo(440, 9);
  });

  it('says the pressure for a wanted flow', async () => {
    expect((await resultOf('flow', { flow: '440 cc', wanted: '500 cc' })).value).toBeCloseTo(387.397, 2);
  });

  it('converts with the density said, and names the shortcut of the trade', async () => {
    const converted = await resultOf('flow', { flow: '440 cc/min' });
    expect(converted.value).toBeCloseTo(43.3605, 3);
    expect(converted.unit).toBe('lb/h');
    expect((await resultOf('flow', { flow: '42 lb/h', density: '0.72 g/cc' })).value).toBeCloseTo(441, 1);
    expect((await cardOf('flow', { flow: '440 cc' })).certainty).toContain('10.5');
  });

  it('turns a bench flow into one with the fuel', async () => {
    const { value } = await resultOf('flow', { flow: '440 cc', bench: 'n-heptane', to: '3 bar' });
    expect(value).toBeCloseTo(421.6, 0);
  });
});

describe('/injector change', () => {
  it('rescales a table when the fuel changes', async () => {
    const card = await cardOf('change', { old: '440 cc', new: '440 cc', newfuel: 'E85', duty: '62 %' });
    expect(card.result).toBe('Open times × 1.426: put 42.6 % in');
    expect(card.certainty).toContain('lean');
    const numbers = await numbersOf('change', { old: '440 cc', new: '440 cc', newfuel: 'E85', duty: '62 %' });
    expect(numbers['newDuty']).toBeCloseTo(0.88401, 3);
  });

  it('carries the dead times through to the first pulse', async () => {
    const change = { old: '440 cc', new: '880 cc', pulse: '2.5 ms', olddead: '0.9 ms' };
    const { newPulseS } = await numbersOf('change', { ...change, dead: '8V 2.1ms, 12V 1.3ms, 14V 1.1ms' });
    expect(newPulseS).toBeCloseTo(0.0019, 9);
  });

  it('carries a rating in pounds an hour over by volume, as it was measured with petrol', async () => {
    const { oldCcMin, newCcMin } = await numbersOf('change', { old: '30 lb', new: '60 lb', newfuel: 'E60' });
    expect((newCcMin ?? 0) / (oldCcMin ?? 1)).toBeCloseTo(2, 9);
    const card = await cardOf('power', { flow: '60 lb/h', count: 4, fuel: 'E85' });
    expect(card.smallPrint?.join(' ')).toContain('a rating with petrol');
  });

  it('stays as it is when nothing changes', async () => {
    expect((await cardOf('change', { old: '440 cc', new: '440 cc' })).result).toBe(
      'Open times stay as they are',
    );
  });
});

describe('/injector idle', () => {
  const engine = { dead: '1.1 ms', displacement: '2 L', cylinders: 4 };

  it('says whether it holds, and the largest that does', async () => {
    const small = await numbersOf('idle', { flow: '440 cc', ...engine });
    expect(small['marginRatio']).toBeGreaterThan(1.5);
    const large = await cardOf('idle', { flow: '2200 cc', ...engine });
    expect(large.result).toContain('Too big to idle');
    expect(large.tone).toBe('late');
    expect(large.certainty).toContain('1600 cc/min');
  });

  it('gives the pulse that the air wants', async () => {
    const { pulseS } = await numbersOf('idle', {
      flow: '440 cc',
      dead: '0.9 ms',
      displacement: '1.998 L',
      cylinders: 4,
      map: '101.3 kPa',
      temp: '25 °C',
      ve: '90 %',
      lambda: 0.88,
    });
    expect(pulseS).toBeCloseTo(0.008429, 5);
  });

  it('holds more comfortably on E85', async () => {
    const margin = async (fuel: string) =>
      (await numbersOf('idle', { flow: '1000 cc', ...engine, fuel }))['marginRatio'];
    expect(await margin('E85')).toBeGreaterThan((await margin('petrol')) ?? 0);
  });
});

describe('/injector dead', () => {
  const table = '8V 2.1ms, 12V 1.1ms, 14V 0.9ms';

  it('reads between the points and never beyond them', async () => {
    expect((await resultOf('dead', { table, volts: '11 V' })).value).toBeCloseTo(1.35, 9);
    expect(cardIn(await bot.run('injector dead', { table, volts: '15 V' })).result).toContain('8 to 14 V');
  });

  it('says how far out a wrong one is', async () => {
    const wrong = { table: '1.3 ms', volts: '12 V', pulse: '2.5 ms', set: '0.9 ms' };
    expect((await cardOf('dead', wrong)).result).toContain('25 % lean');
  });

  it('says what a pulse delivers', async () => {
    const shot = { table: '0.9 ms', volts: '14 V', pulse: '2.5 ms', speed: '900 rpm', flow: '440 cc' };
    expect((await numbersOf('dead', shot))['meanFlowCcMin']).toBeCloseTo(5.28, 9);
  });
});

describe('/injector match', () => {
  it('says the spread and which cylinder leans', async () => {
    const card = await cardOf('match', { flows: '438 441 429 444' });
    expect(card.result).toBe('3.42 % spread, usable: cylinder 3 leans by 2.05 %');
    expect((await cardOf('match', { flows: '438, 441; 437 439' })).result).toContain('matched');
    const bad = await cardOf('match', { flows: '438 441 380 444' });
    expect(bad.result).toContain('not a set');
    expect(bad.caution).toContain('leanest can knock');
  });

  it('refuses what is no row of figures', async () => {
    expect(cardIn(await bot.run('injector match', { flows: '440' })).result).toContain('two to 32');
    expect(cardIn(await bot.run('injector match', { flows: 'a b c' })).result).toContain('438 441 429 444');
  });
});
