import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { subcommand } from '../../../src/bot/command.ts';
import { optionsOf } from '../../../src/bot/options.ts';
import {
  fuelFlow,
  height,
  lambdaValue,
  pulseTime,
  pumpFlow,
  quantity,
  shareOfMix,
  travelSpeed,
} from '../../../src/bot/quantity-option.ts';
import { sumAnswer } from '../../../src/bot/sum-answer.ts';
import { UserError } from '../../../src/core/user-error.ts';

const read = (option: z.ZodType, text: string): unknown => option.parse(text);

function refusal(option: z.ZodType, text: string): UserError {
  try {
    option.parse(text);
  } catch (error) {
    if (error instanceof UserError) return error;
    throw error;
  }
  throw new Error(`${text} was read`);
}

describe('an option for a quantity', () => {
  it('hands over the number in the base unit of its field', () => {
    expect(read(quantity('boost', 'pressure', 'Boost'), '1 bar')).toBeCloseTo(100, 9);
    expect(read(quantity('temp', 'temperature', 'Temperature'), '77 F')).toBeCloseTo(25, 9);
    expect(read(travelSpeed('limit', 'Speed'), '20 m/s')).toBeCloseTo(72, 9);
    expect(read(fuelFlow('fuel', 'Fuel'), '28 g/s')).toEqual({ massGs: 28 });
    expect(read(fuelFlow('fuel', 'Fuel'), '550 cc/min')).toEqual({ volumeCcMin: 550 });
  });

  it('asks by its own name what can mean several things, each reading a button', () => {
    const { code, question } = refusal(quantity('boost', 'pressure', 'Boost'), '15');
    expect(code).toBe('which-one');
    expect(question?.field).toBe('boost');
    expect(question?.choices.map(({ value }) => value)).toContain('15 psi');
  });

  it('offers every choice in words that are then read', () => {
    const option = quantity('boost', 'pressure', 'Boost');
    const { question } = refusal(option, '15');
    expect(question?.choices.length).toBeGreaterThan(1);
    for (const { value } of question?.choices ?? []) expect(read(option, value)).toBeTypeOf('number');
  });

  it('refuses a range and another quantity by its own name', () => {
    const option = quantity('power', 'power', 'Power');
    expect(refusal(option, '300 to 400 hp').message).toMatch(/^power: .* is a range/);
    expect(refusal(option, '28 psi').message).toMatch(/^power: /);
  });

  it('takes a bare pulse for milliseconds, and a height below the sea', () => {
    expect(read(pulseTime('pulse', 'Pulse'), '9,5')).toBeCloseTo(0.0095, 12);
    expect(read(pulseTime('pulse', 'Pulse'), '9500 us')).toBeCloseTo(0.0095, 12);
    expect(read(height('altitude', 'Height'), '-200 m')).toBeCloseTo(-0.2, 12);
    expect(read(height('altitude', 'Height'), '5000 ft')).toBeCloseTo(1.524, 12);
  });

  it.each([
    [height('altitude', 'Height'), '1600', ['1600 m', '1600 ft']],
    [pumpFlow('flow', 'Flow'), '215', ['215 L/h', '215 US gal/h', '215 cc/min', '215 lb/h']],
    [shareOfMix('share', 'Share'), '60/40', ['60 %', '40 %']],
    [shareOfMix('share', 'Share'), '0.4', ['40 %', '0.4 %']],
  ])('asks what a bare figure is of, each answer being read', (option, text, offered) => {
    const choices = refusal(option, text).question?.choices.map(({ value }) => value) ?? [];
    expect(choices).toEqual(offered);
    for (const choice of choices) expect(() => read(option, choice)).not.toThrow();
  });

  it('reads half and half, and a third', () => {
    for (const half of ['50/50', '50:50', '50-50', '50 %', '50']) {
      expect(read(shareOfMix('share', 'Share'), half)).toBe(0.5);
    }
    expect(read(shareOfMix('share', 'Share'), '1/3')).toBeCloseTo(1 / 3, 12);
    expect(read(shareOfMix('share', 'Share'), '0')).toBe(0);
  });

  it('offers the λ behind an AFR of a gauge', () => {
    const { question, message } = refusal(lambdaValue('lambda', 'λ'), '12.5 AFR');
    expect(message).toContain('whatever is in the tank');
    expect(question?.choices).toEqual([{ label: 'λ 0.850', value: '0.850' }]);
  });

  it('is a text option to the platform, with what it is when left out', () => {
    const runnable = subcommand({
      description: 'Test',
      input: z.object({
        must: quantity('must', 'length', 'Bore'),
        may: quantity('may', 'percent', 'Efficiency').prefault('50 %'),
      }),
      run: ({ must, may }) =>
        sumAnswer({
          subject: 'Test',
          result: `${must} ${may}`,
          calculation: { assumptions: [], sources: [], caveats: [] },
          data: {},
        }),
    });
    expect(optionsOf(runnable)).toMatchObject([
      { name: 'must', kind: 'text', required: true },
      { name: 'may', kind: 'text', required: false, unlessSaid: '50 %' },
    ]);
    expect(runnable.input.parse({ must: '86 mm' })).toEqual({ must: 86, may: 0.5 });
  });
});
