import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/**
 * What to set a torque wrench to when an extension lengthens it in line: S = T·L/(L + E).
 *
 * Source: law of the lever (key GEOMETRY). Valid: extension in line with the handle, hand on the middle of the grip. An
 * extension at a right angle to the handle changes nothing.
 * @throws UserError 'out-of-range' outside handles of 50 to 2000 mm and extensions to 1000 mm.
 */
export function wrenchSetting(wrench: {
  readonly torqueNm: number;
  /** From the square drive to the middle of the grip. */
  readonly wrenchMm: number;
  readonly extensionMm: number;
}): Calculation<{ readonly settingNm: number }> {
  const { torqueNm, wrenchMm, extensionMm } = wrench;
  requireRange(
    { what: 'The torque', value: torqueNm, min: 0.1, max: 5000, unit: 'N·m' },
    { what: 'The wrench', value: wrenchMm, min: 50, max: 2000, unit: 'mm' },
    { what: 'The extension', value: extensionMm, min: 0, max: 1000, unit: 'mm' },
  );
  return {
    value: { settingNm: (torqueNm * wrenchMm) / (wrenchMm + extensionMm) },
    assumptions: ['extension in line with the handle, hand on the middle of the grip'],
    sources: ['GEOMETRY'],
    caveats: [],
  };
}

export const wrenchSettingSheet: SumSheet = {
  title: 'Torque wrench with an extension',
  formula: 'S = T·L/(L + E)',
  symbols: {
    S: 'what to set, N·m',
    T: 'torque at the bolt, N·m',
    L: 'drive to the middle of the grip, mm',
    E: 'extension, mm',
  },
  sources: ['GEOMETRY'],
  range: 'extension in line with the handle',
};
