import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';

/** A hot grade of SAE J300: 12.5 ≤ ν(100 °C) < 16.3 and so on. */
export interface HotGrade {
  readonly grade: number;
  readonly leastMm2S: number;
  /** Not reached. */
  readonly belowMm2S: number;
  /** Least viscosity at 150 °C and high shear. */
  readonly leastHighShearMpaS: number;
  /** As the last, together with 15W, 20W, 25W or no winter grade; 40 has one of its own. */
  readonly leastHighShearWithThickMpaS: number;
}

/** A winter grade of SAE J300. */
export interface ColdGrade {
  readonly grade: number;
  readonly crankingMpaS: number;
  readonly crankingC: number;
  readonly pumpingMpaS: number;
  readonly pumpingC: number;
  readonly leastMm2S: number;
}

/**
 * Hot grade of an oil: the thickest whose span holds ν(100 °C) and whose least high-shear viscosity is met.
 *
 * Source: SAE J300, 2015 (key J300). Valid: 4 to 26.1 mm²/s. Spans of 8 to 20 overlap: there high shear decides.
 * @throws UserError 'out-of-range' when no grade has it.
 */
export function hotGrade(
  oil: { readonly at100Mm2S: number; readonly highShearMpaS?: number | undefined },
  grades: readonly HotGrade[],
): Calculation<{ readonly grade: HotGrade }> {
  const { at100Mm2S, highShearMpaS } = oil;
  requireRange({ what: 'The viscosity at 100 °C', value: at100Mm2S, min: 1, max: 100, unit: 'mm²/s' });
  const holds = grades.filter((row) => at100Mm2S >= row.leastMm2S && at100Mm2S < row.belowMm2S);
  const found = holds.findLast(
    (row) => highShearMpaS === undefined || highShearMpaS >= row.leastHighShearMpaS,
  );
  if (found === undefined) {
    const why =
      holds[0] === undefined || highShearMpaS === undefined
        ? `No grade of SAE J300 has ${at100Mm2S} mm²/s at 100 °C: they run from 4 to below 26.1 mm²/s.`
        : `${at100Mm2S} mm²/s at 100 °C would be SAE ${holds[0].grade}, but that takes at least ${holds[0].leastHighShearMpaS} mPa·s at high shear. Look at the data sheet again.`;
    throw new UserError('out-of-range', why);
  }
  return {
    value: { grade: found },
    assumptions: highShearMpaS === undefined ? ['high-shear viscosity as the grade asks'] : [],
    sources: ['J300'],
    caveats: [],
  };
}

export const hotGradeSheet: SumSheet = {
  title: 'SAE grade of an engine oil',
  formula: 'least ≤ ν(100 °C) < most, and HTHS at 150 °C at least that of the grade',
  symbols: { ν: 'kinematic viscosity, mm²/s', HTHS: 'viscosity at 150 °C and high shear, mPa·s' },
  sources: ['J300'],
  range: 'SAE 8 to 60, edition of 2015; older editions begin grade 20 at 5.6 mm²/s',
};
