import { clearanceByFactor } from '../geometry/fits.ts';
import { percent, type SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import type { Sayer } from '../units/sayer.ts';
import type { BarsInWords } from './bars.ts';
import type { Standing } from './limit.ts';

/** Shares of the bore between which a gap usually lies. */
export interface GapShares {
  readonly minRatio: number;
  readonly maxRatio: number;
}

export interface RingGapQuestion {
  readonly boreMm: number;
  readonly use: string;
  readonly top: GapShares;
  /** Added to the top ring's. */
  readonly secondMore: GapShares;
  readonly oilRailMm: number;
  /** Instead of the usual: what the ring's maker or the crew asks of the top ring. */
  readonly own?: { readonly minMm: number; readonly maxMm?: number | undefined } | undefined;
  /** Top rings as measured in their bores, in order. */
  readonly measuredMm?: readonly number[] | undefined;
}

const CAVEATS = [
  'The ring maker’s figure outranks this. A gap too small butts and breaks the ring land; file little by little, square and in its own bore.',
];

/** Gaps of the rings of one bore, and measured ones against them. @throws UserError as clearanceByFactor. */
export function ringGapAnswer(
  asked: RingGapQuestion,
  say: Sayer,
): SumWords & { readonly bars?: BarsInWords } {
  const { boreMm, use, top, secondMore, oilRailMm, own, measuredMm } = asked;
  const gapOf = (factorRatio: number) => clearanceByFactor({ diameterMm: boreMm, factorRatio });
  const low = gapOf(top.minRatio);
  const high = gapOf(top.maxRatio);
  const leastMm = own?.minMm ?? low.value.clearanceMm;
  const mostMm = own === undefined ? high.value.clearanceMm : own.maxMm;
  const second = [top.minRatio + secondMore.minRatio, top.maxRatio + secondMore.maxRatio].map(
    (ratio) => gapOf(ratio).value.clearanceMm,
  );
  const range = (from: number, to: number | undefined): string =>
    to === undefined ? `at least ${say.one('clearance', from)}` : say.range('clearance', from, to);
  const both = (from: number, to: number | undefined): string =>
    to === undefined ? `at least ${say.both('clearance', from)}` : say.bothRange('clearance', from, to);
  const standings = (measuredMm ?? []).map((gap): Standing => {
    if (gap < leastMm - 0.002) return 'low';
    return mostMm !== undefined && gap > mostMm * 1.5 ? 'high' : 'ok';
  });
  const tight = standings.flatMap((each, index) => (each === 'low' ? [index + 1] : []));
  const wide = standings.flatMap((each, index) => (each === 'high' ? [index + 1] : []));
  const measured = measuredMm !== undefined;
  return {
    result: measured
      ? verdict(tight, wide, range(leastMm, mostMm))
      : `Top ${both(leastMm, mostMm)}; second ${range(second[0] ?? 0, second[1])}`,
    ...(measured ? { tone: tight.length + wide.length === 0 ? 'done' : 'late' } : {}),
    certainty: measured
      ? tight.length > 0
        ? `File the ring of ${listed(tight)}, a little at a time.`
        : 'Measure square in the bore, a ring’s depth down, pushed with a piston.'
      : 'Too wide costs a little; too small breaks pistons. Take the wider end for track or heat.',
    working: [
      `${own === undefined ? `Top ring, ${use}: ${percent(top.minRatio)} to ${percent(top.maxRatio)} of the bore` : 'Top ring as given'}: ${both(leastMm, mostMm)}`,
      `Second ring, the top ring's and up to ${percent(secondMore.maxRatio)} of the bore more: ${both(second[0] ?? 0, second[1])}`,
      `Rails of the oil ring at least ${say.both('clearance', oilRailMm)}`,
      ...(measuredMm ?? []).map(
        (gap, index) => `Bore ${index + 1}: ${say.both('clearance', gap)}${WORDS[standings[index] ?? 'ok']}`,
      ),
    ],
    calculation: together(
      {
        sources: low.sources,
        assumptions: [`${use}, bore ${say.one('length', boreMm, 5)}; common practice, no source`],
      },
      { caveats: CAVEATS },
    ),
    data: {
      kind: 'ring-gap',
      boreMm,
      use,
      topMinMm: leastMm,
      ...(mostMm === undefined ? {} : { topMaxMm: mostMm }),
      secondMinMm: second[0] ?? null,
      secondMaxMm: second[1] ?? null,
      oilRailMinMm: oilRailMm,
      ...(measuredMm === undefined ? {} : { measuredMm: [...measuredMm], tight, wide }),
      result: { value: leastMm, unit: 'mm' },
    },
    ...(measuredMm === undefined
      ? {}
      : {
          bars: {
            what: 'Top ring gap',
            unit: say.unitOf('clearance', leastMm),
            values: measuredMm,
            standings,
            limit: { value: leastMm, words: `at least ${say.one('clearance', leastMm)}` },
          },
        }),
  };
}

const WORDS: Readonly<Record<Standing, string>> = { ok: '', low: ', too small', high: ', very wide' };

function verdict(tight: readonly number[], wide: readonly number[], wanted: string): string {
  if (tight.length > 0) return `Too small in ${listed(tight)}: the top ring wants ${wanted}`;
  if (wide.length > 0) return `Very wide in ${listed(wide)}: the top ring wants ${wanted}`;
  return `All wide enough: the top ring wants ${wanted}`;
}

const listed = (bores: readonly number[]): string =>
  `${bores.length === 1 ? 'bore' : 'bores'} ${bores.join(', ')}`;
