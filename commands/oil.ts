import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { gaugePressure, quantity, runLength, turningSpeed } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { oilCoolerAnswer, oilLineAnswer, restrictorAnswer } from '../src/calc/fluids/oil-flow-answer.ts';
import { gradeLimitsAnswer, gradeOfOilAnswer } from '../src/calc/fluids/oil-grade-answer.ts';
import { judgeOilPressure } from '../src/calc/fluids/oil-pressure.ts';
import { temperatureAnswer, viscosityAnswer } from '../src/calc/fluids/oil-sheet-answer.ts';
import type { HotOil } from '../src/calc/fluids/oil-words.ts';
import { UserError } from '../src/core/user-error.ts';
import { indexRows, oilGrades } from '../src/tables/fluids.ts';

/** A multigrade near 10W-40 where no data sheet was given; common practice. */
const sheet = {
  v40: quantity('v40', 'viscosity', 'At 40 °C, from the data sheet').prefault('100 cSt'),
  v100: quantity('v100', 'viscosity', 'At 100 °C, from the data sheet').prefault('14 cSt'),
};
const density = quantity('density', 'density', 'Of the oil, hot').prefault('840 kg/m3');
const SHEET = ['v40', 'v100'] as const;

interface Sheet {
  readonly v40: number;
  readonly v100: number;
}
const oilOf = ({ v40, v100 }: Sheet) => ({ at40Mm2S: v40, at100Mm2S: v100 });

interface Hot extends Sheet {
  readonly temp: number;
  readonly density: number;
}
const hotOilOf = (typed: Hot): HotOil => ({
  oil: oilOf(typed),
  temperatureC: typed.temp,
  densityKgM3: typed.density,
});

const viscosity = subcommand({
  description: 'Viscosity of an oil at a temperature, and its index',
  example: '/oil viscosity temp:"120 °C" v40:"100 cSt" v100:"14 cSt"',
  assumes: [...SHEET, 'density'],
  input: z.object({ temp: quantity('temp', 'temperature', 'Temperature of the oil'), ...sheet, density }),
  run(asked, { say }) {
    const tables = { hot: oilGrades.hot, index: indexRows };
    return sumAnswer({ subject: 'Oil', ...viscosityAnswer(hotOilOf(asked), tables, say) });
  },
});

const temperature = subcommand({
  description: 'Temperature at which an oil has a viscosity',
  example: '/oil temperature viscosity:"10 cSt" v40:"100 cSt" v100:"14 cSt"',
  assumes: SHEET,
  input: z.object({
    viscosity: quantity('viscosity', 'viscosity', 'Viscosity wanted, e.g. 10 cSt'),
    ...sheet,
  }),
  run({ viscosity: viscosityMm2S, ...typed }, { say }) {
    return sumAnswer({ subject: 'Oil', ...temperatureAnswer(oilOf(typed), viscosityMm2S, say) });
  },
});

const grade = subcommand({
  description: 'What SAE J300 asks of a grade, or which grade an oil is',
  example: '/oil grade grade:10W-40',
  input: z.object({
    grade: z.string().min(1).max(10).optional().describe('0W-20, 10W-40, 50'),
    v100: quantity('v100', 'viscosity', 'Or viscosity at 100 °C, to find the grade').optional(),
    hths: z.number().min(1).max(10).optional().describe('High-shear viscosity at 150 °C, mPa·s'),
  }),
  run({ grade: typed, v100, hths: highShearMpaS }, { say }) {
    if (typed !== undefined) {
      return sumAnswer({ subject: 'Oil', ...gradeLimitsAnswer(typed, oilGrades, say) });
    }
    if (v100 === undefined) {
      throw new UserError('bad-input', 'Give either grade or v100: grade:10W-40, or v100:"14 cSt".');
    }
    const answer = gradeOfOilAnswer({ at100Mm2S: v100, highShearMpaS }, oilGrades, say);
    return sumAnswer({ subject: 'Oil', ...answer });
  },
});

const hot = {
  temp: quantity('temp', 'temperature', 'Temperature of the oil').prefault('100 °C'),
  ...sheet,
  density,
};
const HOT = ['temp', ...SHEET, 'density'] as const;

const line = subcommand({
  description: 'Oil line: velocity, pressure drop, and the bore it should have',
  example: '/oil line flow:"40 L/min" bore:"12.7 mm" length:"2 m"',
  assumes: ['length', 'side', 'temp', ...SHEET],
  input: z.object({
    flow: quantity('flow', 'flow', 'Flow of oil, e.g. 40 L/min'),
    bore: quantity('bore', 'length', 'Inside diameter, e.g. 12.7 mm; left out: the one it needs').optional(),
    length: runLength('length', 'Length of the line').prefault('1 m'),
    side: z.enum(['pressure', 'suction', 'return']).default('pressure').describe('Which line it is'),
    ...hot,
  }),
  run(asked, { say }) {
    const { flow: flowCcMin, bore: boreMm, length: lengthMm, side } = asked;
    const answer = oilLineAnswer({ ...hotOilOf(asked), flowCcMin, boreMm, lengthMm, side }, say);
    return sumAnswer({ subject: 'Oil line', ...answer });
  },
});

const cooler = subcommand({
  description: 'Pressure an oil cooler costs at a flow, or the flow a pressure drives through it',
  example: '/oil cooler flow:"20 L/min" bore:"4 mm" length:"300 mm" tubes:20',
  assumes: ['tubes', ...HOT],
  input: z.object({
    bore: quantity('bore', 'length', 'Inside diameter of one tube'),
    length: quantity('length', 'length', 'Its length'),
    flow: quantity('flow', 'flow', 'Flow of oil, e.g. 20 L/min').optional(),
    drop: quantity('drop', 'pressure', 'Or the pressure across it').optional(),
    tubes: z.number().int().min(1).max(200).default(1).describe('How many side by side'),
    ...hot,
  }),
  run(asked, { say }) {
    const { drop: dropKpa, flow: flowCcMin, bore: boreMm, length: lengthMm, tubes } = asked;
    if ((flowCcMin === undefined) === (dropKpa === undefined)) {
      throw new UserError('bad-input', 'Give either flow or drop: flow:"20 L/min", or drop:"100 kPa".');
    }
    const given = dropKpa === undefined ? { flowCcMin: flowCcMin ?? 0 } : { dropKpa };
    const answer = oilCoolerAnswer({ ...hotOilOf(asked), tubes, boreMm, lengthMm, given }, say);
    return sumAnswer({ subject: 'Oil cooler', ...answer });
  },
});

const restrictor = subcommand({
  description: 'Flow through a turbo oil restrictor, or the hole for a flow',
  example: '/oil restrictor bore:"1.5 mm" pressure:"4 bar"',
  assumes: HOT,
  input: z.object({
    pressure: gaugePressure('pressure', 'Oil pressure before it, e.g. 4 bar'),
    bore: quantity('bore', 'length', 'Hole of the restrictor, e.g. 1.5 mm').optional(),
    flow: quantity('flow', 'flow', 'Or the flow wanted, e.g. 1 L/min: says the hole').optional(),
    ...hot,
  }),
  run(asked, { say }) {
    const { bore: boreMm, flow: flowCcMin, pressure: dropKpa } = asked;
    if ((boreMm === undefined) === (flowCcMin === undefined)) {
      throw new UserError('bad-input', 'Give either bore or flow: bore:"1.5 mm", or flow:"1 L/min".');
    }
    const given = boreMm === undefined ? { flowCcMin: flowCcMin ?? 0 } : { boreMm };
    const answer = restrictorAnswer({ ...hotOilOf(asked), given, dropKpa }, say);
    return sumAnswer({ subject: 'Restrictor', ...answer });
  },
});

const pressure = subcommand({
  description: 'Oil pressure against speed, hot: is it enough by the usual rule?',
  example: '/oil pressure pressure:"55 psi" speed:"4000 rpm"',
  assumes: ['temp', 'per'],
  input: z.object({
    pressure: gaugePressure('pressure', 'Reading, e.g. 55 psi or 3.8 bar'),
    speed: turningSpeed('speed', 'Engine speed at the reading'),
    temp: quantity('temp', 'temperature', 'Oil temperature at the reading').prefault('100 °C'),
    per: quantity('per', 'pressure', 'Wanted for each 1000 rpm').prefault('10 psi'),
  }),
  run({ pressure: readKpa, speed: speedRpm, temp: temperatureC, per: perThousandKpa }, { say }) {
    const sum = judgeOilPressure({ readKpa, speedRpm, temperatureC, perThousandKpa });
    const { wantedKpa, enough } = sum.value;
    return sumAnswer({
      subject: 'Oil pressure',
      result: `${say.both('pressure', readKpa)} at ${Math.round(speedRpm)} rpm: ${enough ? 'enough by the usual rule' : 'low by the usual rule'}`,
      ...(enough ? {} : { tone: 'late' as const }),
      working: [`wanted ${say.both('pressure', wantedKpa)}`],
      calculation: sum,
      data: {
        kind: 'oil-pressure',
        pressureKPa: readKpa,
        wantedKPa: wantedKpa,
        speedRpm,
        temperatureC,
        enough,
      },
    });
  },
});

export default defineCommand({
  description: 'Oil: viscosity at temperature, SAE grade, lines, cooler, restrictor, pressure',
  subcommands: { viscosity, temperature, grade, line, cooler, restrictor, pressure },
});
