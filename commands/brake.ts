import { z } from 'zod';
import { defineCommand } from '../src/bot/command.ts';
import { quantity } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { BRAKE_CAUTION, judgeBrakeFluid } from '../src/calc/fluids/brake-fluid.ts';
import { brakeFluids } from '../src/tables/fluids.ts';

export default defineCommand({
  description: 'Brake fluid: least boiling points new and wet, and what a measured one says',
  example: '/brake grade:"DOT 4" boiling:"170 °C"',
  input: z.object({
    grade: z.enum(['DOT 3', 'DOT 4', 'DOT 5', 'DOT 5.1']).describe('On the cap or the bottle'),
    boiling: quantity('boiling', 'temperature', 'Measured boiling point').optional(),
  }),
  run({ grade, boiling }, { say }) {
    const both = (c: number): string => say.both('temperature', c);
    const fluid = brakeFluids.find(({ id }) => id === grade);
    if (fluid === undefined) throw new RangeError(`no row for ${grade}`);
    const limits = `${both(fluid.dryC)} new, ${both(fluid.wetC)} wet`;
    const data = { kind: 'brake-fluid', grade, dryC: fluid.dryC, wetC: fluid.wetC };
    if (boiling === undefined) {
      return sumAnswer({
        subject: 'Brake fluid',
        result: `${grade} boils from ${limits}`,
        working: ['wet means 3.7 % water'],
        calculation: { assumptions: [], sources: ['FMVSS116'], caveats: BRAKE_CAUTION },
        data,
      });
    }
    const sum = judgeBrakeFluid(fluid, { boilingC: boiling });
    const { verdict } = sum.value;
    return sumAnswer({
      subject: 'Brake fluid',
      result: `${grade} boiling at ${both(boiling)}: ${verdict}`,
      ...(verdict === 'change it now' ? { tone: 'late' as const } : {}),
      working: [`least ${limits} (3.7 % water)`],
      calculation: sum,
      data: { ...data, boilingC: boiling, verdict },
    });
  },
});
