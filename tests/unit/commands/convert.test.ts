import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { type ConvertInput, convertReply } from '../../../commands/convert.ts';
import type { Answer } from '../../../src/core/reply.ts';
import { UserError } from '../../../src/core/user-error.ts';
import { cardIn, openCrewBot } from '../../support/bot.ts';

const reply = (value: string, to?: string, more: Partial<ConvertInput> = {}) =>
  convertReply({ value, ...(to === undefined ? {} : { to }), ...more } as ConvertInput);

function refusal(value: string, to?: string, more: Partial<ConvertInput> = {}): UserError {
  try {
    reply(value, to, more);
  } catch (error) {
    if (error instanceof UserError) return error;
    throw error;
  }
  throw new Error(`${value} was answered`);
}
const choices = (error: UserError) => error.question?.choices.map(({ value }) => value);

const Figure = z.object({ value: z.number() });
const figureOf = ({ data }: Answer): number => Figure.parse(data['result']).value;

describe('/convert', () => {
  it.each([
    ['85 lb ft', 'Nm', '85 lbf·ft = 115.2 N·m'],
    ['85 lb ft', undefined, '85 lbf·ft = 115.2 N·m = 11.75 kgf·m'],
    ['58 psi', undefined, '58 psi = 399.9 kPa = 3.999 bar'],
    ['14 psi in bar', undefined, '14 psi = 0.9653 bar'],
    ['95c in f', undefined, '95 °C = 203 °F'],
    ['10 awg in mm2', undefined, '10 AWG = 5.261 mm²'],
    ['1-1/16"', undefined, '1.0625 in = 26.99 mm'],
    ['0 K', 'C', '0 K = −273.2 °C'],
    ['28 tpi', undefined, '28 tpi = 0.9071 mm = 0.03571 in'],
    ['7/8 in', 'mm', '0.875 in = 22.23 mm'],
    ['3-4 bar', 'psi', '3 bar to 4 bar = 43.51 psi to 58.02 psi'],
    ['21.9 ± 0.05 mm', 'in', '21.9 mm ± 0.05 mm = 0.8622 in ± 0.00197 in'],
    ['200 ± 10 °F', 'C', '200 °F ± 10 °F = 93.33 °C ± 5.56 °C'],
    ['about 4 bar', 'psi', 'about 4 bar = 58.02 psi'],
    ['24 lb', 'N', '24 lbf = 106.8 N'],
    ['26 lb', 'kg', '26 lb = 11.79 kg'],
    ['35 imp mpg', 'L/100km', '35 imp mpg = 8.071 L/100 km'],
  ] as const)('%s to %s', (value, to, result) => {
    expect(reply(value, to).result).toBe(result);
  });

  it('gives the numbers with the unit beside each', () => {
    const { data } = reply('85 lb ft', 'Nm');
    expect(data).toMatchObject({
      kind: 'convert',
      dimension: 'torque',
      to: 'N.m',
      value: expect.closeTo(115.24452560816903, 9) as number,
      unit: 'N.m',
      typed: { value: 85, unit: 'lbf.ft' },
      result: { value: expect.closeTo(115.24452560816903, 9) as number, unit: 'N.m' },
    });
    expect(reply('3-4 bar', 'psi').data).toMatchObject({
      min: 300,
      max: 400,
      unit: 'kPa',
      typed: { min: 3, max: 4, unit: 'bar' },
      result: {
        min: expect.closeTo(43.511, 3) as number,
        max: expect.closeTo(58.015, 3) as number,
        unit: 'psi',
      },
    });
  });

  it('says that a conversion by definition is exact', () => {
    expect(reply('14 psi', 'bar').certainty).toBe('Exact by definition; four figures are shown.');
    expect(reply('20 inHg', 'kPa').certainty).toBe(
      'Exact, the column of liquid by convention; four figures are shown.',
    );
    expect(reply('14 psi', 'bar').smallPrint).toEqual(['Sources: SP811, SI (docs/sources.md)']);
  });

  describe('between flow by mass and by volume', () => {
    it('takes the density of the trade and says so', () => {
      const answer = reply('550 cc/min', 'lb/h');
      expect(figureOf(answer)).toBeCloseTo(52.38, 2);
      expect(answer.certainty).toContain('Density 0.72 g/cm³: 1 lb/h is 10.5 cc/min');
    });
    it('takes the density or the fuel that is given', () => {
      expect(figureOf(reply('36 lb/h', 'cc/min', { density: 745 }))).toBeCloseTo(365.309291, 5);
      expect(reply('42 lb/h', 'cc/min', { fuel: 'E85' }).certainty).toContain('Density 0.7827 g/cm³');
    });
    it('takes cc and lb for an injector only when both are', () => {
      expect(reply('550cc', 'lbs').result).toBe('550 cc/min = 52.38 lb/h');
      expect(choices(refusal('650cc'))).toEqual(['650 mL', '650 cc/min']);
    });
    it('wants the density said between a mass and a volume', () => {
      expect(refusal('6 kg', 'L').message).toContain('density:"0.745 g/cc"');
      expect(reply('6 kg', 'L', { density: 870 }).result).toBe('6 kg = 6.897 L');
      expect(reply('10 L', 'kg', { density: 745 }).result).toBe('10 L = 7.45 kg');
    });
  });

  describe('between gauge and absolute', () => {
    it('adds the standard atmosphere and says so', () => {
      const answer = reply('1.2 bar boost', 'kPa absolute');
      expect(answer.result).toBe('1.2 bar gauge = 221.3 kPa absolute');
      expect(answer.certainty).toContain('101.325 kPa, the standard atmosphere');
      expect(answer.data).toMatchObject({ reference: 'gauge', wantedReference: 'absolute' });
    });
    it('adds the air outside that is given', () => {
      expect(figureOf(reply('1.2 bar boost', 'kPa absolute', { outside: 95 }))).toBeCloseTo(215, 9);
    });
    it('keeps a vacuum below the air, and says one as a depth when asked', () => {
      expect(figureOf(reply('18 inHg vacuum', 'kPa'))).toBeCloseTo(-60.955, 3);
      expect(figureOf(reply('18 inHg vacuum', 'bar vacuum'))).toBeCloseTo(0.60955, 5);
    });
    it('asks what a pressure is measured from', () => {
      expect(choices(refusal('150 kpa in psi boost'))).toEqual([
        '150 kPa gauge to psi gauge',
        '150 kPa absolute to psi gauge',
      ]);
      expect(choices(refusal('150 kPa', 'psi boost'))).toEqual(['150 kPa gauge', '150 kPa absolute']);
    });
  });

  describe('asks', () => {
    it.each([
      ['80 lb', undefined, ['80 lbm', '80 lb/h', '80 lbf', '80 psi', '80 lbf·ft']],
      ['5 gal', undefined, ['5 US gal', '5 imp gal']],
      ['5 in bar', undefined, ['5 bar', '5 psi']],
      ['90°', undefined, ['90 °C', '90 °F', '90 deg']],
      ['30 mpg', undefined, ['30 US mpg', '30 imp mpg']],
      ['1,234 mm', 'in', ['1.2340 mm', '1234 mm']],
      ['12 in mm', undefined, ['12 mm', '12 in']],
    ] as const)('about %s', (value, to, offered) => {
      const error = refusal(value, to);
      expect(error.code).toBe('which-one');
      expect(choices(error)?.toSorted()).toEqual([...offered].toSorted());
    });

    it('and every choice answers', () => {
      for (const value of ['80 lb', '5 gal', '650cc', '30 mpg', '150 kpa in psi boost', '5 k']) {
        for (const choice of choices(refusal(value)) ?? []) {
          expect(reply(choice).kind, choice).toBe('answer');
        }
      }
    });

    it('which gallon is wanted', () => {
      expect(refusal('5 L', 'gal').question).toMatchObject({ field: 'to' });
    });
  });

  it.each([
    [
      '14 psi',
      'Nm',
      '"14 psi" is a pressure, and "Nm" a unit of a torque: the one does not become the other.',
    ],
    ['12 Nm', 'blorp', 'to: "blorp" is no unit known here. Type one like Nm, psi, mm or lb/h.'],
    ['90', undefined, '"90" has no unit. Type a number with its unit, like 85 lb ft, 58 psi or 550 cc/min.'],
    [
      'good and tight',
      undefined,
      '"good and tight" has no unit. Type a number with its unit, like 85 lb ft, 58 psi or 550 cc/min.',
    ],
    [
      '12.4 AFR',
      'lambda',
      'Between AFR and λ stands the fuel: /lambda turns one into the other, e.g. /lambda read reading:"12.4 afr".',
    ],
    [
      '12.4 AFR',
      undefined,
      'Between AFR and λ stands the fuel: /lambda turns one into the other, e.g. /lambda read reading:"12.4 afr".',
    ],
  ] as const)('refuses %s to %s', (value, to, message) => {
    expect(refusal(value, to)).toMatchObject({ code: 'bad-input', message });
  });

  it('keeps what was typed while it asks, and goes on from a button', async () => {
    const bot = await openCrewBot();
    const asked = cardIn(await bot.run('convert', { value: '5 gal', to: 'L' }));
    expect(asked.buttons?.map(({ label }) => label)).toEqual(['5 US gal', '5 imp gal']);
    const { does } = asked.buttons?.[1] ?? {};
    if (does === undefined) throw new Error('there is no second button');
    const { writeActionRef } = await import('../../../src/bot/action-ref.ts');
    expect(cardIn(await bot.press(writeActionRef(does))).result).toBe('5 imp gal = 22.73 L');
  });
});
