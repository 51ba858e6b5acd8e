import { describe, expect, it } from 'vitest';
import { certaintyWords, listed, percent, threadName } from '../../../../src/calc/threads/wording.ts';

describe('wording', () => {
  it.each([
    { probability: 0.985, words: 'almost certain', number: '99 %' },
    { probability: 0.999, words: 'almost certain', number: 'over 99 %' },
    { probability: 0.93, words: 'very likely', number: '93 %' },
    { probability: 0.75, words: 'likely', number: '75 %' },
    { probability: 0.6, words: 'more likely than not', number: '60 %' },
    { probability: 0.2, words: 'possible', number: '20 %' },
    { probability: 0.001, words: 'possible', number: 'under 1 %' },
  ])('$probability is "$words", $number', ({ probability, words, number }) => {
    expect(certaintyWords(probability)).toBe(words);
    expect(percent(probability)).toBe(number);
  });

  it.each([
    { names: [], said: '' },
    { names: ['A'], said: 'A' },
    { names: ['A', 'B'], said: 'A or B' },
    { names: ['A', 'B', 'C'], said: 'A, B or C' },
  ])('lists $names as "$said"', ({ names, said }) => expect(listed(names)).toBe(said));

  it('writes a metric thread as on a drawing and leaves the others', () => {
    expect(threadName({ id: 'M22x1.5', family: 'iso-metric', nominal: '22', pitchMm: 1.5 })).toBe(
      'M22 × 1.5',
    );
    expect(threadName({ id: 'G 1/2', family: 'bsp-parallel', nominal: '1/2', pitchMm: 1.8 })).toBe('G 1/2');
  });
});
