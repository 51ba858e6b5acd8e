import type { Calculation } from '../../core/calculation.ts';
import type { SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import { sayNumber } from '../units/say.ts';
import { cellCorrection } from './cell-correction.ts';
import type { KnownFuel } from './known-fuel.ts';
import { GAUGE_AFR } from './lambda.ts';
import { type FuelScale, lambdaOfReading, type Reading } from './reading.ts';

const three = (value: number): string => value.toFixed(3);
const two = (value: number): string => value.toFixed(2);

function leanOrRich(lambdaRatio: number): string {
  const off = Math.abs(lambdaRatio - 1) * 100;
  if (off < 0.5) return 'stoichiometric';
  return `${sayNumber(off, 2)} % ${lambdaRatio < 1 ? 'rich' : 'lean'}`;
}

export interface ReadingQuestion {
  readonly reading: Reading;
  readonly tank: Calculation<KnownFuel>;
  /** What an AFR is counted in; left out, as gauges do. */
  readonly scale: FuelScale | undefined;
  /** AFR that the gauge shows at λ 1. */
  readonly gaugeAfr: number;
}

/** λ of an AFR, or the AFR of a λ, on the gauge and of the fuel. @throws UserError as lambdaOfReading. */
export function readingAnswer({ reading, tank, scale, gaugeAfr }: ReadingQuestion): SumWords {
  const { name, stoichiometricAfr } = tank.value;
  const sum = lambdaOfReading(reading, { stoichiometricAfr, gaugeAfr, scale });
  const { lambdaRatio, afr, phiRatio, excessAirRatio, countedIn } = sum.value;
  const gaugeShows = lambdaRatio * gaugeAfr;
  const other = Math.abs(gaugeShows - afr) > 0.05;
  const fromAfr = reading.as === 'afr';
  return {
    result: fromAfr
      ? `λ ${three(lambdaRatio)}, ${leanOrRich(lambdaRatio)} (${sayNumber(reading.value)} : 1, ${countedIn === 'petrol' ? 'petrol gauge' : name})`
      : `${two(afr)} : 1 on ${name} (λ ${three(lambdaRatio)}, ${leanOrRich(lambdaRatio)})`,
    working: [
      `${name} burns completely at ${two(stoichiometricAfr)} : 1`,
      ...(other
        ? [
            `A gauge lettered for ${two(gaugeAfr)} shows ${two(gaugeShows)}; the fuel's own ratio is ${two(afr)} : 1`,
          ]
        : []),
      `φ ${three(phiRatio)}, excess air ${sayNumber(excessAirRatio * 100, 3)} %`,
    ],
    certainty: 'The sensor knows λ. A gauge lettered in AFR is usually λ × 14.7, whatever is in the tank.',
    calculation: together(sum, tank),
    data: {
      kind: 'afr-lambda',
      fuel: name,
      lambda: lambdaRatio,
      afr: fromAfr ? reading.value : afr,
      fuelAfr: afr,
      gaugeAfr: gaugeShows,
      phi: phiRatio,
      excessAirRatio,
      stoichiometricAfr,
      result: fromAfr ? { value: lambdaRatio, unit: 'lambda' } : { value: afr, unit: 'AFR' },
    },
  };
}

export interface CorrectionQuestion {
  readonly measured: Reading;
  readonly wanted: Reading;
  readonly tank: KnownFuel;
  readonly scale: FuelScale | undefined;
  readonly limitRatio: number;
  /** What stands in the cell now. */
  readonly cell?: number | undefined;
}

/** What the cell of a fuel table is multiplied by, with the direction in words. @throws UserError as cellCorrection. */
export function correctionAnswer(asked: CorrectionQuestion): SumWords {
  const { measured: from, wanted: to, limitRatio, cell } = asked;
  const { lambdas, notes } = bothLambdas(asked);
  const sum = cellCorrection({ ...lambdas, limitRatio });
  const { multiplierRatio, fullMultiplierRatio, limited, steps } = sum.value;
  const percent = `${sayNumber(Math.abs(multiplierRatio - 1) * 100, 2)} %`;
  const direction = multiplierRatio < 1 ? `Take ${percent} out` : `Put ${percent} in`;
  const none = Math.abs(multiplierRatio - 1) < 0.0005;
  return {
    result: none ? 'Leave it: it is where it should be' : `${direction}: × ${three(multiplierRatio)}`,
    certainty: none
      ? 'Nothing to change here; read the next cell.'
      : limited
        ? `The whole way is × ${three(fullMultiplierRatio)}: held to one step, about ${steps} steps in all. Read again after each.`
        : 'Change it, drive the same cell again, and read again.',
    working: [
      `λ ${three(lambdas.measuredLambdaRatio)} measured, ${three(lambdas.wantedLambdaRatio)} wanted`,
      ...(cell === undefined
        ? []
        : [`The cell goes from ${sayNumber(cell)} to ${sayNumber(cell * multiplierRatio)}`]),
    ],
    calculation: together(sum, notes),
    data: {
      kind: 'afr-lambda',
      ...(from.as === 'afr' ? { afr: from.value } : { lambda: from.value }),
      ...(to.as === 'afr' ? { targetAfr: to.value } : { targetLambda: to.value }),
      multiplierRatio,
      fullMultiplierRatio,
      limited,
      steps,
      ...(cell === undefined ? {} : { cell, newCell: cell * multiplierRatio }),
      result: { value: fullMultiplierRatio - 1, unit: 'fuel change' },
    },
  };
}

/** Both readings as λ; where both are counted alike the fuel cancels and is not asked about. */
function bothLambdas({ measured: from, wanted: to, tank, scale }: CorrectionQuestion) {
  const alike = from.as === to.as;
  const counted = {
    stoichiometricAfr: alike ? GAUGE_AFR : tank.stoichiometricAfr,
    gaugeAfr: GAUGE_AFR,
    scale,
  };
  const [measured, wanted] = [lambdaOfReading(from, counted), lambdaOfReading(to, counted)];
  return {
    lambdas: {
      measuredLambdaRatio: measured.value.lambdaRatio,
      wantedLambdaRatio: wanted.value.lambdaRatio,
    },
    notes: alike ? together() : together(measured, wanted),
  };
}
