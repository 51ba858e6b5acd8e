import { describe, expect, it } from 'vitest';
import phrases from '../../../../data/reference/phrases/lengths-and-pitches.json' with { type: 'json' };
import { type FieldName, fields } from '../../../../src/phrases/quantity/fields.ts';
import { readLength } from '../../../../src/phrases/quantity/length.ts';
import { readQuantity } from '../../../../src/phrases/quantity/read-quantity.ts';
import { phrasesOf, scorePhrase } from '../../../support/score-phrases.ts';

/** Our own collection of what is typed in a workshop; values from the exact inch (ISO 80000-3). */
const lengthsAndPitches = phrasesOf(phrases);

describe('a length or a pitch as typed', () => {
  it('has phrases to read', () => expect(lengthsAndPitches).toHaveLength(89));

  it.each(lengthsAndPitches.map((phrase) => ({ ...phrase, shown: phrase.text.slice(0, 40) })))(
    '$id "$shown": $verdict, $why',
    (phrase) => {
      const { score, found } = scorePhrase(phrase);
      expect(score, JSON.stringify(found)).toBe('as meant');
    },
  );
});

const problem = (text: string, field: FieldName): string => {
  const found = readQuantity(text, field);
  if (found.verdict !== 'refuse') throw new Error(`"${text}" was not refused: ${JSON.stringify(found)}`);
  return found.problem;
};

describe('a refusal', () => {
  it.each([
    [
      '12 psi',
      'length',
      '12 psi is a pressure, not a length. Type it like 21.9 mm, 11/16, 0.863 in or 2 thou.',
    ],
    ['12 blorp', 'pressure', '"blorp" is no unit of a pressure. Type it like 58 psi, 4 bar or 400 kPa.'],
    ['', 'torque', 'Nothing was typed. Type it like 85 Nm, 63 lb ft or 120 in-lb.'],
    ['1/0 in', 'length', 'Nothing is divided by zero. Type it like 21.9 mm, 11/16, 0.863 in or 2 thou.'],
  ] as const)('of "%s" as a %s says what was wrong and what to type', (text, field, said) => {
    expect(problem(text, field)).toBe(said);
  });

  it('names the limits in the unit of the field', () => {
    expect(problem('21.875 m', 'length')).toContain('it is between 0 mm and 10\u202f000 mm');
  });

  it.each(Object.keys(fields) as readonly FieldName[])('of a %s gives examples that are read', (name) => {
    const examples = fields[name].examples
      .split(/, or |, | or /u)
      .map((each) => each.replace(/ for .*$/u, ''));
    expect(examples.length).toBeGreaterThan(1);
    for (const example of examples) expect(readQuantity(example, name).verdict, example).toBe('read');
  });
});

describe('a question', () => {
  it('offers inches first below one, each with what to type', () => {
    expect(readQuantity('0.5', 'length')).toMatchObject({
      verdict: 'ask',
      options: [
        { value: 12.7, typed: '0.5 in' },
        { value: 0.5, typed: '0.5 mm' },
      ],
    });
  });

  it('leaves out what is impossible', () => {
    expect(readQuantity('500', 'temperature')).toMatchObject({ verdict: 'ask' });
    expect(readQuantity('2000', 'temperature')).toMatchObject({ options: [{ typed: '2000 °F' }] });
  });
});

describe('a comma and three digits', () => {
  it('is read when only one meaning is possible', () => {
    expect(readLength('21,875 mm')).toMatchObject({ verdict: 'read', value: 21.875 });
    expect(readLength('2,875 m')).toEqual({ verdict: 'read', value: 2875 });
    expect(readLength('2,875 mm')).toMatchObject({ verdict: 'ask', options: [2.875, 2875] });
  });
});

describe('a pressure', () => {
  it('keeps what was typed and says what it is measured from', () => {
    expect(readQuantity('14.7 psia', 'pressure')).toMatchObject({ figure: 14.7, reference: 'absolute' });
    expect(readQuantity('14.7 psi', 'pressure')).not.toHaveProperty('reference');
  });
});
