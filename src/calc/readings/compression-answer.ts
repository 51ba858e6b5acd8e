import type { Calculation } from '../../core/calculation.ts';
import { percent, type SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import type { Sayer } from '../units/sayer.ts';
import type { BarsInWords } from './bars.ts';
import { compressionAtSeaLevel, compressionSpread } from './compression.ts';
import { compareWet, type WetCylinder, type WetFinding } from './wet-compression.ts';

export interface CompressionQuestion {
  readonly readingsKpa: readonly number[];
  readonly wetKpa?: readonly number[] | undefined;
  readonly limitRatio: number;
  /** Rise with oil from which on the rings are meant. */
  readonly riseRatio: number;
  /** The maker's least reading, at sea level. */
  readonly leastKpa?: number | undefined;
  readonly outside: Calculation<{ readonly atmosphereKpa: number }>;
  /** Whether somebody said where the engine stands. */
  readonly placed: boolean;
}

const POINTS_TO: Readonly<Record<WetFinding, string>> = {
  sound: 'sound',
  rings: 'rises with oil: rings, piston or bore',
  'valves or gasket': 'does not rise with oil: a valve, its seat or the gasket',
  shared: 'does not rise with oil, nor its neighbour: most likely the gasket between them',
};

const CAUTION =
  'Fuel and ignition off before it is cranked; keep hands, hair and sleeves from belts and fans; plugs and exhaust are hot.';

/** A compression test in words, with a bar for each cylinder. @throws UserError as the sums do. */
export function compressionAnswer(
  asked: CompressionQuestion,
  say: Sayer,
): SumWords & { readonly bars: BarsInWords } {
  const { readingsKpa, limitRatio, wetKpa, outside, placed, leastKpa } = asked;
  const sum = compressionSpread({ readingsKpa, limitRatio });
  const { spreadRatio, meanKpa, weakest, withinLimit, belowRatios } = sum.value;
  const wet = wetKpa === undefined ? undefined : compareWet({ ...asked, dryKpa: readingsKpa, wetKpa });
  const { atmosphereKpa } = outside.value;
  const atSea = (kpa: number): number => compressionAtSeaLevel(kpa, atmosphereKpa).value.expectedKpa;
  const best = Math.max(...readingsKpa);
  const weak = belowRatios.flatMap((below, index) => (below > limitRatio ? [index + 1] : []));
  const lowest = Math.min(...readingsKpa);
  const underMaker = leastKpa !== undefined && atSea(lowest) < leastKpa;
  return {
    result: resultOf(),
    tone: withinLimit && !underMaker ? 'done' : 'late',
    certainty: certaintyOf(wet?.value, weak),
    working: [
      ...readingsKpa.map(
        (each, index) =>
          `Cylinder ${index + 1}: ${say.both('pressure', each)}${belowRatios[index] === 0 ? ', the best' : `, ${percent(belowRatios[index] ?? 0, 2)} below the best`}${wetWords(wet?.value[index], wetKpa?.[index], say)}`,
      ),
      `Mean ${say.both('pressure', meanKpa)}`,
      ...(placed ? [`At sea level the mean would read ${say.both('pressure', atSea(meanKpa))}`] : []),
      ...(leastKpa === undefined ? [] : [`Maker's least ${say.both('pressure', leastKpa)}, at sea level`]),
    ],
    calculation: together(
      { assumptions: [`a spread of ${percent(limitRatio)} is let pass, common practice`] },
      sum,
      wet ?? {},
      placed ? outside : {},
      placed ? atSeaNotes() : {},
      {
        caveats: [CAUTION],
      },
    ),
    data: {
      kind: 'compression-test',
      readingsKPa: [...readingsKpa],
      spreadRatio,
      limitRatio,
      meanKPa: meanKpa,
      weakest,
      withinLimit,
      weak,
      ...(placed ? { atmosphereKPa: atmosphereKpa, seaLevelMeanKPa: atSea(meanKpa) } : {}),
      ...(wet === undefined
        ? {}
        : {
            wetKPa: [...(wetKpa ?? [])],
            findings: wet.value.map(({ riseRatio, finding }) => ({ riseRatio, finding })),
          }),
      result: { value: spreadRatio, unit: '1' },
    },
    bars: {
      what: 'Compression',
      unit: say.unitOf('pressure', best),
      values: readingsKpa,
      seconds: wetKpa,
      secondCalled: 'wet',
      standings: belowRatios.map((below) => (below > limitRatio ? 'low' : 'ok')),
      limit: {
        value: best * (1 - limitRatio),
        words: `${percent(limitRatio)} below the best`,
      },
    },
  };

  function resultOf(): string {
    const at = say.both('pressure', lowest);
    if (!withinLimit) {
      const others = weak.length > 1 ? `cylinders ${inWords(weak)} are weak` : `cylinder ${weakest} is weak`;
      return `Spread ${percent(spreadRatio)}: ${others}, ${say.both('pressure', lowest)}`;
    }
    if (underMaker) return `Even, but cylinder ${weakest} at ${at} is below the maker's least`;
    return `Spread ${percent(spreadRatio)}: even, the lowest ${at}`;
  }

  function atSeaNotes(): Partial<Calculation<unknown>> {
    return compressionAtSeaLevel(meanKpa, atmosphereKpa);
  }
}

function wetWords(wet: WetCylinder | undefined, wetKpa: number | undefined, say: Sayer): string {
  if (wet === undefined || wetKpa === undefined) return '';
  const change = `${wet.riseRatio < 0 ? '−' : '+'}${percent(Math.abs(wet.riseRatio), 2)}`;
  return `; wet ${say.one('pressure', wetKpa)} (${change})`;
}

function certaintyOf(wet: readonly WetCylinder[] | undefined, weak: readonly number[]): string {
  if (weak.length === 0)
    return 'How high is good is the maker’s to say: cams and a worn battery lower all alike.';
  if (wet === undefined) {
    return `Next: a spoon of oil into cylinder ${inWords(weak)} and read again (wet:…); then a leak-down.`;
  }
  return weak
    .map((cylinder) => `Cylinder ${cylinder} ${POINTS_TO[wet[cylinder - 1]?.finding ?? 'sound']}.`)
    .join(' ');
}

const inWords = (numbers: readonly number[]): string =>
  numbers.length < 2
    ? numbers.join('')
    : `${numbers.slice(0, -1).join(', ')} and ${numbers[numbers.length - 1] ?? ''}`;
