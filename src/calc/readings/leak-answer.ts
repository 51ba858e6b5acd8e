import { UserError } from '../../core/user-error.ts';
import { percent, type SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import type { Sayer } from '../units/sayer.ts';
import type { BarsInWords } from './bars.ts';
import { HISSES, type Hiss, leakDown } from './leak-down.ts';

export interface LeakQuestion {
  readonly supplyKpa: number;
  /** Held by each cylinder; or the leaks themselves, where the tester shows them. */
  readonly heldKpa?: readonly number[] | undefined;
  readonly leakRatios?: readonly number[] | undefined;
  /** Good up to here, and to be looked into from there on. */
  readonly goodRatio: number;
  readonly investigateRatio: number;
  readonly hiss?: Hiss | undefined;
}

const CAUTION =
  'The air turns the crankshaft with force: lock it at top dead centre of the firing stroke, take the spanner off, keep hands and tools clear; ignition off, hot parts.';

/** A leak-down test in words, with a bar for each cylinder. @throws UserError as leakDown, and without readings. */
export function leakAnswer(asked: LeakQuestion, say: Sayer): SumWords & { readonly bars: BarsInWords } {
  const { supplyKpa, heldKpa, goodRatio, investigateRatio, hiss } = asked;
  const sums = (heldKpa ?? []).map((cylinderKpa) => leakDown({ supplyKpa, cylinderKpa }));
  const leaks = asked.leakRatios ?? sums.map(({ value }) => value.leakRatio);
  const [first] = leaks;
  if (first === undefined || leaks.length > 16) {
    throw new UserError(
      'bad-input',
      'Give held or leak, one figure for each cylinder in order: held:"95 94 71 90 psi", or leak:"5 6 29 10 %".',
    );
  }
  const worst = Math.max(...leaks);
  const where = leaks.indexOf(worst) + 1;
  const verdict = worst <= goodRatio ? 'good' : worst < investigateRatio ? 'worn' : 'investigate';
  const bad = leaks.flatMap((leak, index) => (leak >= investigateRatio ? [index + 1] : []));
  return {
    result: resultOf(),
    tone: ({ good: 'done', worn: 'soon', investigate: 'late' } as const)[verdict],
    certainty: certaintyOf(verdict, hiss, bad),
    working: [
      ...leaks.map((leak, index) => {
        const held = heldKpa?.[index];
        return `Cylinder ${index + 1}: ${percent(leak)}${held === undefined ? '' : `, holds ${say.one('pressure', held)} of ${say.one('pressure', supplyKpa)}`}`;
      }),
      ...(hiss === undefined && verdict !== 'good'
        ? Object.entries(HISSES).map(([heard, cause]) => `Hissing at the ${heard}: ${cause}`)
        : []),
    ],
    calculation: together(...sums, {
      assumptions: [
        ...(heldKpa === undefined ? [] : [`${say.one('pressure', supplyKpa)} let in`]),
        `up to ${percent(goodRatio)} good, from ${percent(investigateRatio)} on to be looked into, common practice`,
      ],
      sources: ['COMMON'],
      caveats: [CAUTION],
    }),
    data: {
      kind: 'leak-down',
      leakRatios: [...leaks],
      goodRatio,
      investigateRatio,
      worst: where,
      verdict,
      ...(hiss === undefined ? {} : { hiss, pointsTo: HISSES[hiss] }),
      result: { value: worst, unit: '1' },
    },
    bars: {
      what: 'Leak-down',
      unit: 'percent',
      values: leaks,
      standings: leaks.map((leak) => (leak >= investigateRatio ? 'high' : 'ok')),
      limit: { value: investigateRatio, words: `look into it from ${percent(investigateRatio)}` },
    },
  };

  function resultOf(): string {
    if (leaks.length === 1) return `Leaks ${percent(first ?? 0)}: ${VERDICTS[verdict]}`;
    if (verdict === 'good') return `All good: cylinder ${where} leaks most, ${percent(worst)}`;
    const more = bad.length > 1 ? `cylinders ${bad.join(', ')} leak` : `cylinder ${where} leaks`;
    return `${more} ${bad.length > 1 ? 'up to ' : ''}${percent(worst)}: ${VERDICTS[verdict]}`.replace(
      /^c/,
      'C',
    );
  }
}

const VERDICTS = { good: 'good', worn: 'worn, serviceable', investigate: 'look into it' } as const;

function certaintyOf(verdict: keyof typeof VERDICTS, hiss: Hiss | undefined, bad: readonly number[]): string {
  if (hiss !== undefined) return `Hissing at the ${hiss}: ${HISSES[hiss]}.`;
  if (verdict === 'good') return 'A little past the rings is heard at the oil filler of every engine.';
  return `Listen while the air is on${bad.length > 1 && bad.some((each) => bad.includes(each + 1)) ? '; neighbours that leak both: the gasket between them' : ''}: where it hisses says what leaks.`;
}
