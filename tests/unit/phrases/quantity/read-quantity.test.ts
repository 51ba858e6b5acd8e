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

describe('a unit of something else', () => {
  it.each([
    ['1 cup', 'volume'],
    ['12 Pfund', 'mass'],
    ['500 mAh', 'current'],
    ['5 kVA', 'voltage'],
    ['5 MWh', 'power'],
    ['3 dyn', 'force'],
    ['2 yrs', 'time'],
    ['60 psf', 'pressure'],
    ['3 kg/cm3', 'pressure'],
    ['120 bpm', 'speed'],
    ['27 dpi', 'pitch'],
    ['2 cfs', 'flow'],
    ['5 l/d', 'flow'],
    ['700 CCA', 'volume'],
    ['50 #', 'pressure'],
  ] as const)('%s is never read as %s by a slip of the pen', (text, field) => {
    expect(readQuantity(text, field).verdict).not.toBe('read');
  });

  it.each([
    ['12 mmm', 'length', 12],
    ['300 kww', 'power', 300],
    ['60 psii', 'pressure', 413.6854375901016],
    ['7200 rpn', 'speed', 7200],
    ['550 cc/mni', 'flow', 550],
  ] as const)('but a slip in %s is read', (text, field, value) => {
    expect(readQuantity(text, field)).toMatchObject({ verdict: 'read', slip: true });
    expect(readQuantity(text, field)).toHaveProperty('value', expect.closeTo(value, 9));
  });
});

describe('two amounts', () => {
  it.each([
    ['4 bar - 58 psi', 'pressure', 'read'],
    ['108 Nm (80 lb ft)', 'torque', 'read'],
    ['80 ft lbs (110 Nm)', 'torque', 'ask'],
    ['3 bar (12 V)', 'pressure', 'ask'],
    ['3 bar = 3', 'pressure', 'ask'],
    ['5 to 4 bar', 'pressure', 'ask'],
    ['2x550cc', 'flow', 'ask'],
    ['45° + 90 V', 'angle', 'ask'],
    ['25 Nm ± 5 mm', 'torque', 'ask'],
    ['2 lb 18 oz', 'mass', 'refuse'],
    ['2000 psi gauge = 1 bar absolute', 'pressure', 'ask'],
  ] as const)('%s: %3$s', (text, field, verdict) => {
    expect(readQuantity(text, field).verdict).toBe(verdict);
  });
});

describe('words in front', () => {
  it.each([
    ['AFR 12.4', 'ratio', { figure: 12.4, typedUnit: 'AFR' }],
    ['λ = 0.9', 'ratio', { figure: 0.9, typedUnit: 'lambda' }],
    ['14.7:1 AFR', 'ratio', { figure: 14.7, typedUnit: 'AFR' }],
    ['CR 9.5', 'ratio', { figure: 9.5 }],
    ['Ø 12 mm', 'length', { value: 12 }],
    ['boost 14 psi', 'pressure', { reference: 'gauge' }],
    ['vacuum: 15 inHg', 'pressure', { figure: -15, reference: 'gauge' }],
  ] as const)('%s', (text, field, expected) => {
    expect(readQuantity(text, field)).toMatchObject({ verdict: 'read', ...expected });
  });

  it.each(['oil 90 °C', 'max 90 °C', 'the temperature of the oil in the sump was 90 °C'])(
    '"%s" is asked about',
    (text) => {
      expect(readQuantity(text, 'temperature').verdict).toBe('ask');
    },
  );
});

describe('forms of one field', () => {
  it.each([
    ['M10x1.5', 'length', 'ask'],
    ['#10', 'length', 'ask'],
    ['1:30:15', 'time', 'read'],
    ['1:75', 'time', 'ask'],
    ['4/0', 'area', 'ask'],
    ['10 AWG', 'area', 'read'],
    ['41 AWG', 'area', 'refuse'],
    ['5W-30', 'viscosity', 'ask'],
    ['60/40', 'ratio', 'ask'],
    ['5:0', 'ratio', 'refuse'],
    ['3/8-24 UNF', 'pitch', 'read'],
    ['1/8 NPT', 'pitch', 'refuse'],
    ['15 mm over 0 threads', 'pitch', 'refuse'],
  ] as const)('%s as a %s: %s', (text, field, verdict) => {
    expect(readQuantity(text, field).verdict).toBe(verdict);
  });

  it('a length alone tells a range and a refusal', () => {
    expect(readLength('2 to 4 mm')).toEqual({ verdict: 'range', min: 2, max: 4 });
    expect(readLength('12 psi')).toMatchObject({ verdict: 'refuse' });
  });
});
