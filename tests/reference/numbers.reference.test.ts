import { describe, expect, it } from 'vitest';
import numbers from '../../data/reference/phrases/numbers.json' with { type: 'json' };
import more from '../../data/reference/phrases/numbers-more.json' with { type: 'json' };
import { phrasesOf, scorePhrase } from '../support/score-phrases.ts';

/** What may be missed, as a share: such a phrase is asked about or refused, never read wrongly. */
const MAY_MISS = 0.02;

/** Our own collections and conventions (data/reference/phrases/numbers.md); values from the exact definitions. */
describe.each([
  { collection: 'numbers.json', phrases: phrasesOf(numbers), count: 300 },
  { collection: 'numbers-more.json', phrases: phrasesOf(more), count: 208 },
])('$collection', ({ phrases, count }) => {
  const scored = phrases.map((phrase) => ({
    ...phrase,
    shown: phrase.text.slice(0, 40),
    ...scorePhrase(phrase),
  }));

  it(`has the ${count} phrases, each once`, () => {
    expect(phrases).toHaveLength(count);
    expect(new Set(phrases.map(({ context, text }) => `${context} ${text}`)).size).toBe(count);
  });

  it.each(scored)('$id "$shown" in $context is not misread: $why', ({ score, found }) => {
    expect(score, JSON.stringify(found)).not.toBe('misread');
  });

  it('is read as meant, but for one in fifty', () => {
    const missed = scored.filter(({ score }) => score === 'missed').map(({ id, text }) => `${id} ${text}`);
    expect(missed.length, missed.join('\n')).toBeLessThanOrEqual(count * MAY_MISS);
  });
});
