import type { Calculation } from '../../core/calculation.ts';
import { sayNumber } from '../units/say.ts';
import type { OilSheet } from './oil-viscosity.ts';

/** An oil as its data sheet has it, and how hot it is. */
export interface HotOil {
  readonly oil: OilSheet;
  readonly temperatureC: number;
  readonly densityKgM3: number;
}

/** What is said wherever hot oil is under pressure (key COMMON). */
export const HOT_OIL: Partial<Calculation<unknown>> = {
  caveats: ['Hot oil burns and catches fire: stop the engine before a line is touched.'],
};

export const cst = (mm2S: number): string => `${sayNumber(mm2S, 3)} mm²/s`;
export const regime = (reynolds: number): string =>
  `${reynolds < 2300 ? 'laminar' : 'turbulent'} (Reynolds ${Math.round(reynolds)})`;
