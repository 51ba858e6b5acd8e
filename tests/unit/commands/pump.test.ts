import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import pump from '../../../commands/pump.ts';
import { catalogueOf } from '../../../src/bot/catalogue.ts';
import type { JsonObject } from '../../../src/core/json.ts';
import { type CrewBot, cardIn, openCrewBot } from '../../support/bot.ts';

let bot: CrewBot;
beforeAll(async () => {
  bot = await openCrewBot(catalogueOf(new Map([['pump', pump]])));
});

const cardOf = async (sub: string, options: JsonObject) => cardIn(await bot.run(`pump ${sub}`, options));
const numberOf = async (name: string, sub: string, options: JsonObject): Promise<number> =>
  z
    .record(z.string(), z.unknown())
    .transform((data) => z.number().parse(data[name]))
    .parse((await cardOf(sub, options)).data);

describe('/pump need', () => {
  it('needs what the engine burns, with the margin on top, at base and boost together', async () => {
    const engine = { power: '500 hp', bsfc: '0.5 lb/hp h', margin: '20 %', base: '3 bar', boost: '1.5 bar' };
    expect((await numberOf('flowCcMin', 'need', engine)) * 0.06).toBeCloseTo(152.212, 2);
    expect((await numberOf('flowWithMarginCcMin', 'need', engine)) * 0.06).toBeCloseTo(182.655, 2);
    expect(await numberOf('railKPa', 'need', engine)).toBeCloseTo(450, 9);
  });

  it('takes power at the wheels, and says what is lost', async () => {
    const wheels = { power: '300 kW', at: 'wheels', loss: '20 %' };
    expect(await numberOf('crankPowerKW', 'need', wheels)).toBeCloseTo(375, 9);
    expect((await cardOf('need', wheels)).smallPrint?.join(' ')).toContain('20 % lost');
  });

  it('refuses boost said to be absolute', async () => {
    expect(cardIn(await bot.run('pump need', { power: '300 kW', boost: '1.2 bar abs' })).result).toContain(
      'absolute',
    );
  });
});

describe('/pump supply', () => {
  const curve = '3bar 255, 4bar 225, 5bar 190';

  it('reads the curve between its points, at rail and lines together', async () => {
    const at = { curve, boost: '1 bar', lines: '0.5 bar' };
    expect((await numberOf('flowCcMin', 'supply', at)) * 0.06).toBeCloseTo((225 + 190) / 2, 6);
  });

  it('scales with the voltage at the pump', async () => {
    const volts = { curve, volts: '12 V', voltcurve: '12V 205, 13.5V 255' };
    expect(await numberOf('voltageRatio', 'supply', volts)).toBeCloseTo(205 / 255, 9);
  });

  it('says whether it is enough', async () => {
    expect((await cardOf('supply', { curve, need: '300 L/h' })).result).toContain('15 % short');
    expect((await cardOf('supply', { curve, need: '300 L/h' })).caution).toContain('lean under boost');
    expect((await cardOf('supply', { curve, need: '200 L/h' })).result).toContain('27.5 % in hand');
  });

  it('draws no curve beyond its ends, and says what a curve looks like', async () => {
    expect(cardIn(await bot.run('pump supply', { curve, boost: '3 bar' })).result).toContain(
      '300 to 500 kPa',
    );
    expect(cardIn(await bot.run('pump supply', { curve: 'plenty' })).result).toContain('3bar 255');
    expect(cardIn(await bot.run('pump supply', { curve, volts: '12 V' })).result).toContain('together');
  });
});

describe('/pump line', () => {
  it('gives velocity and loss of a bore', async () => {
    // Continuity, and Darcy–Weisbach with Colebrook's friction: 8 L/min through 8 mm, 4 m, 0.6 mm²/s lose 30.33 kPa.
    const line = { flow: '8 L/min', bore: '8 mm', length: '4 m', viscosity: '0.6 cSt' };
    expect(await numberOf('dropKPa', 'line', line)).toBeCloseTo(30.33, 1);
    expect(await numberOf('velocityMPerS', 'line', line)).toBeCloseTo(2.6526, 3);
  });

  it('gives the bore where none is said, wider on the suction side', async () => {
    const bore = (side: string) => numberOf('leastBoreMm', 'line', { flow: '20 L/min', velocity: 1.2, side });
    expect(await bore('pressure')).toBeCloseTo(18.806, 2);
    const suction = await numberOf('leastBoreMm', 'line', { flow: '215 L/h', side: 'suction' });
    expect(suction).toBeGreaterThan(await numberOf('leastBoreMm', 'line', { flow: '215 L/h' }));
  });

  it('calls a narrow line narrow', async () => {
    const card = await cardOf('line', { flow: '300 L/h', bore: '4 mm' });
    expect(card.result).toContain('narrow');
    expect(card.tone).toBe('soon');
  });
});
