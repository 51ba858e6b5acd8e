import { describe, expect, it } from 'vitest';
import { mate } from '../../../../src/calc/fittings/mate.ts';
import { needsOf, sayNeed } from '../../../../src/calc/fittings/needs.ts';
import { endNamed } from '../../../support/fitting-book.ts';

const mating = (a: string, b: string) => mate(endNamed(a), endNamed(b));

describe('mating two ends', () => {
  it.each([
    ['JIC -6 male', 'JIC -6 female', 'full'],
    ['R 1/4 male', 'G 1/4 female', 'jams'],
    ['JIC -12 male', 'SAE45 -12 female', 'binds'],
    ['JIC -10 male', 'G 5/8 female', 'loose'],
    ['M16x1.5 male bare', 'M14x1.5 female bare', 'will-not-enter'],
    ['M12x1.5 male bare', 'M14x1.5 female bare', 'drops-through'],
    ['JIC -6 male', 'JIC -6 male', 'same-side'],
  ])('%s on %s: %s', (a, b, engagement) => {
    expect(mating(a, b).engagement).toBe(engagement);
  });

  it('says that AN and JIC go together, and not where a design calls for AN', () => {
    const { seals, why } = mating('AN -6 male', 'JIC -6 female');
    expect(seals).toBe('yes');
    expect(why.join(' ')).toContain('as on aircraft');
  });

  it('says that NPT in NPTF is not dry-sealed', () => {
    expect(mating('1/4-18 NPT male', '1/4-18 NPTF female').why.join(' ')).toContain('without sealant');
  });

  it('seals a chamfered pipe end on its taper as well as on its seat', () => {
    expect(mating('1/4-18 NPTF male 30° seat', '1/4-18 NPTF female').seals).toBe('yes');
    expect(mating('1/4-18 NPTF male 30° seat', '1/4-18 NPSM female 30° seat').seals).toBe('yes');
    expect(mating('1/4-18 NPTF male', '1/4-18 NPSM female 30° seat')).toMatchObject({
      mates: 'yes',
      seals: 'no',
    });
  });

  it('warns of 60° flanks in a 55° nut', () => {
    expect(mating('1/4-20 UNC bolt', '1/4-20 BSW nut')).toMatchObject({ mates: 'yes', seals: 'n/a' });
    expect(mating('1/4-20 UNC bolt', '1/4-20 BSW nut').danger).toContain('do not load it');
  });

  it('never calls an end sealed on its thread alone', () => {
    expect(mating('G 1/4 male bare', 'G 1/4 female').seals).toBe('no');
    expect(mating('M10x1 male bare', 'M10x1 female bare').seals).toBe('no');
  });
});

describe('what a joint needs', () => {
  it.each([
    ['BANJO M10x1', 'M10x1 female flat face', /^2 sealing washers 10 × 13.5 × 1 mm or/],
    ['G 1/4 male', 'G 1/4 female', /^sealing washer 14 × 18 × 1.5 mm \(from memory\)/],
    ['ORB -6 male', 'ORB -6 female', /^O-ring AS568 -906 \(from memory\)/],
    ['ORFS -8 male', 'ORFS -8 female', /^O-ring AS568 -014 \(from memory\)/],
    ['R 1/4 male', 'Rc 1/4 female', /^sealant/],
    ['M11x1.5 male flat face', 'M11x1.5 female flat face', /to suit: its size is in no table/],
  ])('%s on %s', (a, b, words) => {
    expect(needsOf(endNamed(a), endNamed(b)).map(sayNeed).join()).toMatch(words);
  });

  it('is nothing for cones, and nothing where it does not seal', () => {
    expect(needsOf(endNamed('JIC -6 male'), endNamed('JIC -6 female'))).toEqual([]);
    expect(needsOf(endNamed('ORB -6 male'), endNamed('JIC -6 female'))).toEqual([]);
  });
});
