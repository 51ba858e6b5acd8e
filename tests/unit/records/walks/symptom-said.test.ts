import { describe, expect, it } from 'vitest';
import { symptomsSaid } from '../../../../src/records/walks/symptom-said.ts';

const said = (line: string): readonly string[] => symptomsSaid(line).map(({ id }) => id);

describe('a symptom as it is said', () => {
  it.each([
    ['no spark', 'no-spark'],
    ["It won't start!", 'will-not-start'],
    ['still no fuel pressure', 'no-fuel-pressure'],
    ['er springt nicht an', 'will-not-start'],
    ['oil light is on', 'no-oil-pressure'],
    ['it smokes again', 'smoke'],
  ])('is known with who does it and since when: %s', (line, id) => {
    expect(said(line)).toEqual([id]);
  });

  it.each([
    'smoke',
    'crank sensor',
    'no parcel today',
    'there was no spark but it was the fuse',
    'the boost leak is fixed',
    '',
  ])('is nothing else: "%s"', (line) => {
    expect(said(line)).toEqual([]);
  });
});
