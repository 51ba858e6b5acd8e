import { describe, expect, it } from 'vitest';
import phrases from '../../../../data/reference/phrases/lengths-and-pitches.json' with { type: 'json' };
import { readLength } from '../../../../src/phrases/quantity/length.ts';
import type { Quantity } from '../../../../src/phrases/quantity/verdict.ts';
import { readPitch } from '../../../../src/phrases/thread-pitch.ts';

/** Our own collection of what is typed in a workshop; values from the exact inch (ISO 80000-3). */
interface Phrase {
  readonly id: string;
  readonly text: string;
  readonly context: string;
  readonly verdict: string;
  readonly also?: readonly string[];
  readonly why: string;
  readonly expect: {
    readonly value?: number;
    readonly tol?: number;
    readonly min?: number;
    readonly max?: number;
    readonly options?: readonly number[];
  } | null;
}
const all: readonly Phrase[] = phrases;

const verdictOf = ({ verdict }: Quantity) => (verdict === 'range' ? 'read' : verdict);

describe.each([
  { context: 'length', read: readLength, count: 63 },
  { context: 'pitch', read: readPitch, count: 26 },
])('a $context as typed', ({ context, read, count }) => {
  const mine = all.filter((phrase) => phrase.context === context);
  it('has phrases to read', () => expect(mine).toHaveLength(count));

  it.each(mine.map((phrase) => ({ ...phrase, shown: phrase.text.slice(0, 40) })))(
    '$id "$shown": $verdict, $why',
    (phrase) => {
      const found = read(phrase.text);
      expect([phrase.verdict, ...(phrase.also ?? [])]).toContain(verdictOf(found));
      if (found.verdict === 'read') {
        expect(found.value).toBeCloseTo(phrase.expect?.value ?? phrase.expect?.options?.[0] ?? Number.NaN, 9);
        if (phrase.expect?.tol !== undefined) expect(found.plusMinus).toBeCloseTo(phrase.expect.tol, 9);
      }
      if (found.verdict === 'range') {
        expect(found.min).toBeCloseTo(phrase.expect?.min ?? Number.NaN, 9);
        expect(found.max).toBeCloseTo(phrase.expect?.max ?? Number.NaN, 9);
      }
    },
  );
});

describe('a length', () => {
  it('says what an unknown unit was', () => {
    expect(readLength('12 psi')).toEqual({ verdict: 'refuse', why: '"psi" is no unit of length' });
  });
  it('offers inches first below one', () => {
    expect(readLength('0.5')).toMatchObject({ verdict: 'ask', options: [12.7, 0.5] });
  });
  it('takes the one reading inside the limits', () => {
    expect(readLength('21,875 mm')).toEqual({ verdict: 'read', value: 21.875 });
    expect(readLength('21.875 m')).toEqual({ verdict: 'refuse', why: 'a length is between 0 and 10 m' });
    expect(readLength('2,875 m')).toEqual({ verdict: 'read', value: 2875 });
  });
  it.each(['between 2 and psi', '5 thou to 3 psi'])('refuses the range "%s"', (text) => {
    expect(readLength(text).verdict).toBe('refuse');
  });
  it('asks about a ± without a unit', () => {
    expect(readLength('21.9 ± 0.05').verdict).toBe('ask');
  });
});
