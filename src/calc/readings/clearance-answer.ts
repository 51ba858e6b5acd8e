import { percent, type SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import type { Sayer } from '../units/sayer.ts';
import type { BarsInWords } from './bars.ts';
import { type ClearanceFound, type ClearanceLimit, measuredClearances } from './clearances.ts';

export interface ClearanceQuestion {
  readonly kind: 'bearing' | 'piston';
  readonly holesMm: readonly number[];
  readonly shaftsMm: readonly number[];
  readonly limit: ClearanceLimit;
  /** What the limit is for, as it is assumed: "2618 forged piston". */
  readonly limitFor: string;
}

const NAMES = {
  bearing: {
    place: 'journal',
    places: 'journals',
    hole: 'shell bore',
    shaft: 'journal',
    subject: 'Bearing clearance',
  },
  piston: {
    place: 'cylinder',
    places: 'cylinders',
    hole: 'bore',
    shaft: 'piston',
    subject: 'Piston clearance',
  },
} as const;

const ADVICE = {
  bearing: {
    low: 'Too tight runs hot and seizes: check the shells, the cap’s way round and the bolt torque, then measure again.',
    high: 'Too wide loses oil pressure: an undersize shell, or the journal or housing is worn.',
    ok: 'Measured with the caps torqued as for good, on clean parts, by one micrometer and one bore gauge.',
  },
  piston: {
    low: 'Too tight seizes when hot: hone, at a machinist’s.',
    high: 'Too wide rocks and wears: a larger piston, or the bore is worn.',
    ok: 'The piston is measured across the skirt where its maker says, the bore across the thrust faces.',
  },
} as const;

/** Measured clearances, one for each journal or bore, with a bar for each. @throws UserError as measuredClearances. */
export function clearanceAnswer(
  asked: ClearanceQuestion,
  say: Sayer,
): SumWords & { readonly bars: BarsInWords } {
  const { kind, limit, limitFor } = asked;
  const names = NAMES[kind];
  const sum = measuredClearances(asked);
  const found = sum.value;
  const clearances = found.map(({ clearanceMm }) => clearanceMm);
  const least = Math.min(...clearances);
  const most = Math.max(...clearances);
  const gravest =
    found.find(({ standing }) => standing === 'low') ?? found.find(({ standing }) => standing === 'high');
  const standing = gravest?.standing ?? 'ok';
  const same = found.filter((each) => each.standing === standing);
  const where = same.map((each) => found.indexOf(each) + 1);
  const [minMm, maxMm] = [
    Math.max(...found.map((each) => each.minMm)),
    Math.min(...found.map((each) => each.maxMm)),
  ];
  return {
    result: resultOf(),
    tone: standing === 'ok' ? 'done' : 'late',
    certainty: ADVICE[kind][standing],
    working: [
      ...found.map(
        (each, index) =>
          `${capital(names.place)} ${index + 1}: ${say.both('clearance', each.clearanceMm)}, ${percent(each.shareRatio, 2)} of the ${names.shaft}${WORDS[each.standing]}`,
      ),
      `${limit.kind === 'length' ? 'As given' : `${capital(limitFor)}, ${percent(limit.minRatio)} to ${percent(limit.maxRatio)} of the ${names.shaft}`}: ${rangeWords(found, say)}`,
    ],
    calculation: together(sum, {
      assumptions:
        limit.kind === 'length'
          ? []
          : [
              `${limitFor}: ${percent(limit.minRatio)} to ${percent(limit.maxRatio)} of the ${names.shaft}, common practice, no source`,
            ],
      sources: ['COMMON'],
      caveats: [
        'The maker’s figure outranks this one; what is measured cold by hand is good to about 0.005 mm.',
      ],
    }),
    data: {
      kind: `${kind}-clearance`,
      places: found.map((each) => ({
        holeMm: each.holeMm,
        shaftMm: each.shaftMm,
        clearanceMm: each.clearanceMm,
        shareRatio: each.shareRatio,
        minMm: each.minMm,
        maxMm: each.maxMm,
        standing: each.standing,
      })),
      ok: standing === 'ok',
      result: { value: least, unit: 'mm' },
    },
    bars: {
      what: names.subject,
      unit: say.unitOf('clearance', most),
      values: clearances.map((each) => Math.max(each, 0)),
      standings: found.map((each) => each.standing),
      limit:
        standing === 'high'
          ? { value: maxMm, words: `at most ${say.one('clearance', maxMm)}` }
          : { value: minMm, words: `at least ${say.one('clearance', minMm)}` },
    },
  };

  function resultOf(): string {
    const one = found.length === 1;
    const spread =
      one || most - least < 1e-4 ? say.both('clearance', least) : say.bothRange('clearance', least, most);
    if (standing === 'ok') return `${spread}: ${one ? 'good' : `all ${found.length} good`}`;
    const word = standing === 'low' ? 'tight' : 'wide';
    const places = one ? '' : `${where.length > 1 ? names.places : names.place} ${where.join(', ')} too `;
    return `${spread}: ${one ? `too ${word}` : `${places}${word}`}`;
  }
}

const WORDS = { ok: '', low: ', too tight', high: ', too wide' } as const;

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function rangeWords(found: readonly ClearanceFound[], say: Sayer): string {
  const [first] = found;
  return first === undefined ? '' : say.bothRange('clearance', first.minMm, first.maxMm);
}
