import { UserError } from '../../core/user-error.ts';
import type { SumWords } from '../sum-words.ts';
import type { Sayer } from '../units/sayer.ts';
import { type ColdGrade, type HotGrade, hotGrade } from './oil-grade.ts';

/** The table of SAE J300. */
export interface OilGrades {
  readonly hot: readonly HotGrade[];
  readonly cold: readonly ColdGrade[];
}

/** Which grade an oil is by its data sheet. @throws UserError as hotGrade. */
export function gradeOfOilAnswer(
  oil: { readonly at100Mm2S: number; readonly highShearMpaS?: number | undefined },
  { hot }: OilGrades,
  say: Sayer,
): SumWords {
  const sum = hotGrade(oil, hot);
  const { grade, leastMm2S, belowMm2S, leastHighShearMpaS } = sum.value.grade;
  return {
    result: `SAE ${grade}`,
    working: [
      `${leastMm2S} to below ${belowMm2S} mm²/s at ${say.one('temperature', 100)}, at least ${leastHighShearMpaS} mPa·s at high shear`,
    ],
    calculation: sum,
    data: { kind: 'oil-grade', hotGrade: grade, v100Mm2S: oil.at100Mm2S },
  };
}

/** What the standard asks of a grade as typed, `10W-40`. @throws UserError 'bad-input' for one that it does not have. */
export function gradeLimitsAnswer(typed: string, grades: OilGrades, say: Sayer): SumWords {
  const { cold, hot } = gradesTyped(typed, grades);
  // from 15W on the standard asks more of a 40 at high shear
  const thick = cold === undefined || cold.grade >= 15;
  const highShear = thick ? hot?.leastHighShearWithThickMpaS : hot?.leastHighShearMpaS;
  const name = [...(cold ? [`${cold.grade}W`] : []), ...(hot ? [String(hot.grade)] : [])].join('-');
  const at100 = say.one('temperature', 100);
  return {
    result:
      hot === undefined
        ? `SAE ${name}: at least ${cold?.leastMm2S ?? ''} mm²/s at ${at100}`
        : `SAE ${name}: ${hot.leastMm2S} to below ${hot.belowMm2S} mm²/s at ${at100}`,
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
  };
}

function gradesTyped(typed: string, grades: OilGrades) {
  const said = /^(?:sae\s*)?(?:(\d{1,2})\s*w)?[\s-]*(\d{1,2})?$/iu.exec(typed.trim());
  const cold = grades.cold.find((row) => String(row.grade) === said?.[1]);
  const hot = grades.hot.find((row) => String(row.grade) === said?.[2]);
  const unknown = (said?.[1] !== undefined && !cold) || (said?.[2] !== undefined && !hot);
  if (unknown || (!cold && !hot)) {
    const names = [...grades.cold.map((row) => `${row.grade}W`), ...grades.hot.map((row) => `${row.grade}`)];
    throw new UserError(
      'bad-input',
      `“${typed}” is no grade of SAE J300. Known: ${names.join(', ')}, or one of each as in 10W-40.`,
    );
  }
  return { cold, hot };
}
