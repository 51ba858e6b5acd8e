import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { gaugePressure, quantity, turningSpeed } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { coolerDrop, coolerFlow } from '../src/calc/fluids/oil-cooler.ts';
import { hotGrade } from '../src/calc/fluids/oil-grade.ts';
import { restrictorFlow } from '../src/calc/fluids/oil-line.ts';
import { judgeOilPressure } from '../src/calc/fluids/oil-pressure.ts';
import { dynamicViscosity, temperatureAt, viscosityAt } from '../src/calc/fluids/oil-viscosity.ts';
import { viscosityIndex } from '../src/calc/fluids/viscosity-index.ts';
import { boreForVelocity, lineFlow } from '../src/calc/fuel/fuel-line.ts';
import { together } from '../src/calc/together.ts';
import { sayNumber } from '../src/calc/units/say.ts';
import type { Sayer } from '../src/calc/units/sayer.ts';
import type { Calculation } from '../src/core/calculation.ts';
import { UserError } from '../src/core/user-error.ts';
import { indexRows, oilGrades } from '../src/tables/fluids.ts';

/** Velocities oil lines are sized by, m/s; common practice. */
const VELOCITY_M_S = { pressure: 4.5, suction: 1.2, return: 2 } as const;

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
const cst = (v: number): string => `${sayNumber(v, 3)} mm²/s`;

/** The grade, where the oil has one: a gear oil has none. */
function gradeOf(at100Mm2S: number): { readonly words: string; readonly sources: readonly string[] } {
  const { hot } = oilGrades;
  const inside = hot.some((row) => at100Mm2S >= row.leastMm2S && at100Mm2S < row.belowMm2S);
  if (!inside) return { words: 'no engine-oil grade at 100 °C', sources: ['J300'] };
  const sum = hotGrade({ at100Mm2S }, hot);
  return { words: `SAE ${sum.value.grade.grade} by its 100 °C value`, sources: sum.sources };
}

const viscosity = subcommand({
  description: 'Viscosity of an oil at a temperature, and its index',
  example: '/oil viscosity temp:"120 °C" v40:"100 cSt" v100:"14 cSt"',
  assumes: [...SHEET, 'density'],
  input: z.object({ temp: quantity('temp', 'temperature', 'Temperature of the oil'), ...sheet, density }),
  run({ temp: temperatureC, density: densityKgM3, ...typed }, { say }) {
    const oil = oilOf(typed);
    const sum = viscosityAt({ ...oil, temperatureC });
    const { viscosityMm2S } = sum.value;
    const dynamic = dynamicViscosity({ viscosityMm2S, densityKgM3 });
    const indexed = oil.at100Mm2S >= 2 && oil.at100Mm2S <= 21 ? viscosityIndex(oil, indexRows) : undefined;
    const grade = gradeOf(oil.at100Mm2S);
    return sumAnswer({
      subject: 'Oil',
      result: `${cst(viscosityMm2S)} at ${say.both('temperature', temperatureC)}`,
      working: [
        `${sayNumber(dynamic.value.viscosityMpaS, 3)} mPa·s`,
        ...(indexed === undefined ? [] : [`viscosity index ${Math.round(indexed.value.index)}`]),
        grade.words,
      ],
      calculation: together(sum, dynamic, indexed ?? {}, { sources: grade.sources }),
      data: {
        kind: 'oil-viscosity',
        viscosityMm2S,
        dynamicViscosityMPaS: dynamic.value.viscosityMpaS,
        temperatureC,
        ...(indexed === undefined ? {} : { viscosityIndex: indexed.value.index }),
      },
    });
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
    const sum = temperatureAt({ ...oilOf(typed), viscosityMm2S });
    return sumAnswer({
      subject: 'Oil',
      result: `${cst(viscosityMm2S)} at ${say.both('temperature', sum.value.temperatureC)}`,
      calculation: sum,
      data: {
        kind: 'oil-temperature',
        temperatureC: sum.value.temperatureC,
        viscosityMm2S,
      },
    });
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
  run({ grade: typed, v100, hths }, { say }) {
    if (typed !== undefined) return gradeLimits(typed, say);
    if (v100 === undefined) {
      throw new UserError('bad-input', 'Give either grade or v100: grade:10W-40, or v100:"14 cSt".');
    }
    const sum = hotGrade({ at100Mm2S: v100, highShearMpaS: hths }, oilGrades.hot);
    const found = sum.value.grade;
    return sumAnswer({
      subject: 'Oil',
      result: `SAE ${found.grade}`,
      working: [
        `${found.leastMm2S} to below ${found.belowMm2S} mm²/s at ${say.one('temperature', 100)}, at least ${found.leastHighShearMpaS} mPa·s at high shear`,
      ],
      calculation: sum,
      data: { kind: 'oil-grade', hotGrade: found.grade, v100Mm2S: v100 },
    });
  },
});

/** @throws UserError 'bad-input' for a grade the standard does not have. */
function gradeLimits(typed: string, say: Sayer) {
  const said = /^(?:sae\s*)?(?:(\d{1,2})\s*w)?[\s-]*(\d{1,2})?$/iu.exec(typed.trim());
  const cold = oilGrades.cold.find((row) => String(row.grade) === said?.[1]);
  const hot = oilGrades.hot.find((row) => String(row.grade) === said?.[2]);
  if ((said?.[1] !== undefined && !cold) || (said?.[2] !== undefined && !hot) || (!cold && !hot)) {
    const names = [
      ...oilGrades.cold.map((row) => `${row.grade}W`),
      ...oilGrades.hot.map((row) => `${row.grade}`),
    ];
    throw new UserError(
      'bad-input',
      `“${typed}” is no grade of SAE J300. Known: ${names.join(', ')}, or one of each as in 10W-40.`,
    );
  }
  const thick = cold === undefined || cold.grade >= 15;
  const highShear = thick ? hot?.leastHighShearWithThickMpaS : hot?.leastHighShearMpaS;
  const name = [...(cold ? [`${cold.grade}W`] : []), ...(hot ? [String(hot.grade)] : [])].join('-');
  return sumAnswer({
    subject: 'Oil',
    result:
      hot === undefined
        ? `SAE ${name}: at least ${cold?.leastMm2S ?? ''} mm²/s at ${say.one('temperature', 100)}`
        : `SAE ${name}: ${hot.leastMm2S} to below ${hot.belowMm2S} mm²/s at ${say.one('temperature', 100)}`,
    working: [
      ...(highShear === undefined
        ? []
        : [`at least ${highShear} mPa·s at ${say.one('temperature', 150)} and high shear`]),
      ...(cold === undefined
        ? []
        : [
            `cranks at ${say.one('temperature', cold.crankingC)} with at most ${cold.crankingMpaS} mPa·s, pumps at ${say.one('temperature', cold.pumpingC)} with at most ${cold.pumpingMpaS} mPa·s`,
          ]),
    ],
    calculation: { assumptions: ['SAE J300, edition of 2015'], sources: ['J300'], caveats: [] },
    data: {
      kind: 'oil-grade',
      ...(hot === undefined
        ? {}
        : { hotGrade: hot.grade, v100MinMm2S: hot.leastMm2S, v100MaxMm2S: hot.belowMm2S }),
      ...(highShear === undefined ? {} : { highShearMinMPaS: highShear }),
      ...(cold === undefined ? {} : { coldGrade: cold.grade, crankingC: cold.crankingC }),
    },
  });
}

const hot = {
  temp: quantity('temp', 'temperature', 'Temperature of the oil').prefault('100 °C'),
  ...sheet,
  density,
};
const HOT = ['temp', ...SHEET, 'density'] as const;
const HOT_OIL: Partial<Calculation<unknown>> = {
  caveats: ['Hot oil burns and catches fire: stop the engine before a line is touched.'],
};

const line = subcommand({
  description: 'Oil line: velocity, pressure drop, and the bore it should have',
  example: '/oil line flow:"40 L/min" bore:"12.7 mm" length:"2 m"',
  assumes: ['length', 'side', 'temp', ...SHEET],
  input: z.object({
    flow: quantity('flow', 'flow', 'Flow of oil, e.g. 40 L/min'),
    bore: quantity('bore', 'length', 'Inside diameter, e.g. 12.7 mm; left out: the one it needs').optional(),
    length: quantity('length', 'length', 'Length of the line').prefault('1 m'),
    side: z.enum(['pressure', 'suction', 'return']).default('pressure').describe('Which line it is'),
    ...hot,
  }),
  run({ flow: flowCcMin, bore, length: lengthMm, side, temp, density: densityKgM3, ...typed }, { say }) {
    const oil = viscosityAt({ ...oilOf(typed), temperatureC: temp });
    const { viscosityMm2S } = oil.value;
    const wanted = boreForVelocity({ flowCcMin, velocityMPerS: VELOCITY_M_S[side] });
    const boreMm = bore ?? wanted.value.boreMm;
    const sum = lineFlow({ flowCcMin, boreMm, lengthMm, densityKgM3, viscosityMm2S });
    const { velocityMPerS, reynolds, dropKpa } = sum.value;
    const narrow = velocityMPerS > VELOCITY_M_S[side] * (bore === undefined ? 2 : 1.2);
    const needed = `${say.both('length', wanted.value.boreMm)} bore`;
    return sumAnswer({
      subject: 'Oil line',
      result:
        bore === undefined
          ? `${needed} at least for a ${side} line, loses ${say.one('pressure', dropKpa)}`
          : `${say.one('velocity', velocityMPerS)}, loses ${say.both('pressure', dropKpa)}${narrow ? `: narrow for a ${side} line` : ''}`,
      ...(narrow ? { tone: 'soon' as const } : {}),
      certainty: 'Fittings and bends come on top; cold oil loses many times as much.',
      working: [
        `${cst(viscosityMm2S)} at ${say.both('temperature', temp)}, ${reynolds < 2300 ? 'laminar' : 'turbulent'} (Reynolds ${Math.round(reynolds)})`,
        `a ${side} line for ${say.one('velocity', VELOCITY_M_S[side])} (common practice) takes a ${needed}`,
      ],
      calculation: together(HOT_OIL, oil, sum, { sources: ['COMMON'] }),
      data: {
        kind: 'oil-line',
        velocityMPerS,
        dropKPa: dropKpa,
        reynolds,
        boreMm,
        wantedBoreMm: wanted.value.boreMm,
        viscosityMm2S,
      },
    });
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
  run({ drop, flow, bore: boreMm, length: lengthMm, tubes, temp, density: densityKgM3, ...typed }, { say }) {
    if ((flow === undefined) === (drop === undefined)) {
      throw new UserError('bad-input', 'Give either flow or drop: flow:"20 L/min", or drop:"100 kPa".');
    }
    const oil = viscosityAt({ ...oilOf(typed), temperatureC: temp });
    const { viscosityMm2S } = oil.value;
    const made = { tubes, boreMm, lengthMm, densityKgM3, viscosityMm2S };
    const driven = drop === undefined ? undefined : coolerFlow({ ...made, dropKpa: drop });
    const flowCcMin = driven?.value.flowCcMin ?? flow ?? 0;
    const sum = driven ?? coolerDrop({ ...made, flowCcMin });
    const { reynolds, velocityMPerS } = sum.value;
    const dropKpa = drop ?? sum.value.dropKpa;
    const through = `${tubes === 1 ? 'one tube' : `${tubes} tubes`} of ${say.one('length', boreMm)}`;
    return sumAnswer({
      subject: 'Oil cooler',
      result:
        flow === undefined
          ? `${say.both('liquidFlow', flowCcMin)} through ${through} at ${say.one('pressure', dropKpa)}`
          : `Costs ${say.both('pressure', dropKpa)} at ${say.one('liquidFlow', flowCcMin)} through ${through}`,
      certainty: 'Ends, tanks and fittings come on top; the maker’s curve outranks the sum.',
      working: [
        `${cst(viscosityMm2S)} at ${say.both('temperature', temp)}, ${reynolds < 2300 ? 'laminar' : 'turbulent'} (Reynolds ${Math.round(reynolds)}), ${say.one('velocity', velocityMPerS)} in a tube`,
      ],
      calculation: together(HOT_OIL, oil, sum),
      data: {
        kind: 'oil-flow',
        flowCcMin,
        dropKPa: dropKpa,
        reynolds,
        boreMm,
      },
    });
  },
});

const restrictor = subcommand({
  description: 'Flow through a turbo oil restrictor',
  example: '/oil restrictor bore:"1.5 mm" pressure:"4 bar"',
  assumes: HOT,
  input: z.object({
    bore: quantity('bore', 'length', 'Hole of the restrictor, e.g. 1.5 mm'),
    pressure: gaugePressure('pressure', 'Oil pressure before it, e.g. 4 bar'),
    ...hot,
  }),
  run({ bore: boreMm, pressure: dropKpa, temp, density: densityKgM3, ...typed }, { say }) {
    const oil = viscosityAt({ ...oilOf(typed), temperatureC: temp });
    const { viscosityMm2S } = oil.value;
    const sum = restrictorFlow({ boreMm, dropKpa, densityKgM3, viscosityMm2S });
    const { flowLMin, reynolds, velocityMPerS } = sum.value;
    return sumAnswer({
      subject: 'Restrictor',
      result: `${say.both('liquidFlow', flowLMin * 1000, 2)} through ${say.one('length', boreMm)} at ${say.both('pressure', dropKpa)}`,
      working: [
        `${cst(viscosityMm2S)} at ${say.both('temperature', temp)}, ${say.one('velocity', velocityMPerS, 2)} in the hole, Reynolds ${Math.round(reynolds)}`,
      ],
      calculation: together(HOT_OIL, oil, sum),
      data: {
        kind: 'oil-restrictor',
        flowCcMin: flowLMin * 1000,
        boreMm,
        pressureKPa: dropKpa,
        reynolds,
      },
    });
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
