import type { Calculation } from '../../core/calculation.ts';
import type { SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import { sayNumber } from '../units/say.ts';
import type { Sayer } from '../units/sayer.ts';
import { clearanceForRatio, compressionRatio, deckCut, ratioOf } from './compression-ratio.ts';
import { boreAreaMm2 } from './displacement.ts';
import { effectiveRatio } from './effective-ratio.ts';

export interface CompressionQuestion {
  readonly boreMm: number;
  readonly strokeMm: number;
  readonly chamberCm3: number;
  readonly gasketThicknessMm: number;
  /** Left out, the bore and a millimetre. */
  readonly gasketBoreMm?: number | undefined;
  /** Piston below the face; above it is negative. */
  readonly deckMm: number;
  /** A dome is negative. */
  readonly dishCm3: number;
  readonly wantedRatio?: number | undefined;
  /** Taken off block or head face. */
  readonly cutMm?: number | undefined;
}

/** Compression ratio from measured volumes; what a cut makes of it, and what a wanted one takes. @throws UserError as the sums. */
export function compressionAnswer(asked: CompressionQuestion, say: Sayer): SumWords {
  const { boreMm, wantedRatio, cutMm } = asked;
  const gasketBoreMm = asked.gasketBoreMm ?? boreMm + 1;
  const sum = compressionRatio({ ...asked, gasketBoreMm });
  const { sweptCm3, clearanceCm3, gasketCm3, deckCm3, compressionRatio: ratio } = sum.value;
  const cutting =
    cutMm === undefined ? undefined : deckCut({ boreMm, strokeMm: asked.strokeMm, clearanceCm3, cutMm });
  const wanted =
    wantedRatio === undefined ? undefined : clearanceForRatio({ sweptCm3, compressionRatio: wantedRatio });
  const shown = cutting?.value.ratioAfter ?? ratio;
  const cc = (cm3: number, figures?: number): string => say.one('capacity', cm3, figures);
  const mm = (length: number): string => say.one('length', length);
  return {
    result:
      cutMm === undefined
        ? `Compression ratio ${ratio.toFixed(2)} to 1`
        : `Compression ratio ${shown.toFixed(2)} to 1 after ${mm(cutMm)} off, ${ratio.toFixed(2)} before`,
    working: [
      `swept ${cc(sweptCm3, 4)}, clearance ${cc(clearanceCm3)} (gasket ${cc(gasketCm3)}, deck ${cc(deckCm3)})`,
      ...(wanted === undefined
        ? []
        : [wantedWords(wanted.value.clearanceCm3 - clearanceCm3, boreMm, wantedRatio ?? 0, say)]),
    ],
    calculation: together(sum, cutting ?? {}, wanted ?? {}, {
      assumptions: [
        ...(asked.gasketBoreMm === undefined
          ? [`gasket bore ${mm(gasketBoreMm)}, ${mm(1)} over the bore`]
          : []),
        `gasket ${mm(asked.gasketThicknessMm)}, deck ${mm(asked.deckMm)}, dish ${cc(asked.dishCm3)}`,
      ],
    }),
    data: {
      kind: 'compression',
      compressionRatio: shown,
      sweptL: sweptCm3 / 1000,
      clearanceL: clearanceCm3 / 1000,
      gasketL: gasketCm3 / 1000,
      deckL: deckCm3 / 1000,
      ...(cutting === undefined ? {} : { ratioBefore: ratio, removedL: cutting.value.removedCm3 / 1000 }),
      ...(wanted === undefined ? {} : { wantedClearanceL: wanted.value.clearanceCm3 / 1000 }),
    },
  };
}

/** What has to change for the ratio wanted, as volume and as the same over the whole bore. */
function wantedWords(missingCm3: number, boreMm: number, want: number, say: Sayer): string {
  const mm = (Math.abs(missingCm3) * 1000) / boreAreaMm2(boreMm);
  const [volume, height] = [say.one('capacity', Math.abs(missingCm3)), say.one('length', mm)];
  return missingCm3 >= 0
    ? `for ${sayNumber(want, 3)} to 1: ${volume} more clearance, e.g. ${height} more gasket or that dish in the piston`
    : `for ${sayNumber(want, 3)} to 1: ${volume} less clearance, e.g. ${height} off the face where it acts over the whole bore`;
}

/** The ratio of two volumes, or the clearance for a ratio. @throws UserError as ratioOf and clearanceForRatio. */
export function volumesAnswer(
  sweptCm3: number,
  given: { readonly clearanceCm3: number } | { readonly compressionRatio: number },
  say: Sayer,
): SumWords {
  const wanted = 'compressionRatio' in given;
  const sum = wanted ? clearanceForRatio({ sweptCm3, ...given }) : ratioOf({ sweptCm3, ...given });
  const found = { ...given, ...sum.value };
  const ratio = 'compressionRatio' in found ? found.compressionRatio : 0;
  const clearanceCm3 = 'clearanceCm3' in found ? found.clearanceCm3 : 0;
  return {
    result: wanted
      ? `${say.both('capacity', clearanceCm3)} of clearance for ${sayNumber(ratio, 3)} to 1`
      : `Compression ratio ${ratio.toFixed(2)} to 1`,
    working: [],
    calculation: sum,
    data: {
      kind: 'compression',
      compressionRatio: ratio,
      sweptL: sweptCm3 / 1000,
      clearanceL: clearanceCm3 / 1000,
    },
  };
}

/** Effective ratio with boost, to compare builds by. @throws UserError as effectiveRatio. */
export function effectiveAnswer(
  compressionRatioNow: number,
  boostKpa: number,
  outside: Calculation<{ readonly atmosphereKpa: number }>,
  say: Sayer,
): SumWords {
  const { atmosphereKpa } = outside.value;
  const sum = effectiveRatio({ compressionRatio: compressionRatioNow, boostKpa, atmosphereKpa });
  const { effectiveRatio: ratio } = sum.value;
  return {
    result: `Effective ratio ${ratio.toFixed(1)} to 1 at ${say.both('pressure', boostKpa)} boost`,
    working: [
      `static ${compressionRatioNow.toFixed(2)} to 1, ${say.one('pressure', atmosphereKpa, 4)} outside`,
    ],
    calculation: together(outside, sum),
    data: {
      kind: 'effective-ratio',
      effectiveRatio: ratio,
      compressionRatio: compressionRatioNow,
      boostKPa: boostKpa,
      atmosphereKPa: atmosphereKpa,
    },
  };
}
