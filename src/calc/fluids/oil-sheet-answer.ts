import type { SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import { sayNumber } from '../units/say.ts';
import type { Sayer } from '../units/sayer.ts';
import { type HotGrade, hotGrade } from './oil-grade.ts';
import { dynamicViscosity, type OilSheet, temperatureAt, viscosityAt } from './oil-viscosity.ts';
import { cst, type HotOil } from './oil-words.ts';
import { INDEXED_TO_MM2_S, type IndexRow, viscosityIndex } from './viscosity-index.ts';

/** Viscosity of an oil at a temperature, its index and its grade. @throws UserError as viscosityAt. */
export function viscosityAnswer(
  { oil, temperatureC, densityKgM3 }: HotOil,
  { hot, index }: { readonly hot: readonly HotGrade[]; readonly index: readonly IndexRow[] },
  say: Sayer,
): SumWords {
  const sum = viscosityAt({ ...oil, temperatureC });
  const { viscosityMm2S } = sum.value;
  const dynamic = dynamicViscosity({ viscosityMm2S, densityKgM3 });
  // what the standard gives an index to
  const indexed =
    oil.at100Mm2S >= 2 && oil.at100Mm2S <= INDEXED_TO_MM2_S ? viscosityIndex(oil, index) : undefined;
  const grade = gradeOf(oil.at100Mm2S, hot);
  return {
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
  };
}

/** The grade, where the oil has one: a gear oil has none. */
function gradeOf(
  at100Mm2S: number,
  hot: readonly HotGrade[],
): { readonly words: string; readonly sources: readonly string[] } {
  const inside = hot.some((row) => at100Mm2S >= row.leastMm2S && at100Mm2S < row.belowMm2S);
  if (!inside) return { words: 'no engine-oil grade at 100 °C', sources: ['J300'] };
  const sum = hotGrade({ at100Mm2S }, hot);
  return { words: `SAE ${sum.value.grade.grade} by its 100 °C value`, sources: sum.sources };
}

/** Temperature at which an oil has a viscosity. @throws UserError as temperatureAt. */
export function temperatureAnswer(oil: OilSheet, viscosityMm2S: number, say: Sayer): SumWords {
  const sum = temperatureAt({ ...oil, viscosityMm2S });
  const { temperatureC } = sum.value;
  return {
    result: `${cst(viscosityMm2S)} at ${say.both('temperature', temperatureC)}`,
    working: [],
    calculation: sum,
    data: { kind: 'oil-temperature', temperatureC, viscosityMm2S },
  };
}
