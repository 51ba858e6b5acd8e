import { describe, expect, it } from 'vitest';
import { UserError } from '../../../../src/core/user-error.ts';
import { allGuides } from '../../../../src/records/walks/guide-book.ts';
import { matchSymptom, suggestSymptoms } from '../../../../src/records/walks/match-symptom.ts';

const meant = (typed: string): string => matchSymptom(typed, 'symptom').id;

function refusal(typed: string): UserError {
  try {
    meant(typed);
  } catch (error) {
    if (error instanceof UserError) return error;
    throw error;
  }
  throw new Error(`“${typed}” was understood`);
}

describe('a symptom in somebody’s own words', () => {
  it.each([
    ['wont start', 'will-not-start'],
    ["it won't start", 'will-not-start'],
    ['engine just wont fire', 'will-not-start'],
    ['springt nicht an', 'will-not-start'],
    ['no spark', 'no-spark'],
    ['No Spark!', 'no-spark'],
    ['kein Zündfunke', 'no-spark'],
    ['dreht nicht', 'no-crank'],
    ['wont turn over', 'no-crank'],
    ['starter just clicks', 'no-crank'],
    ['no rpm', 'cranks-no-speed'],
    ['lost sync', 'cranks-no-speed'],
    ['no fuel presure', 'no-fuel-pressure'],
    ['injectors dont click', 'no-injector-pulse'],
    ['spark and fuel but no fire', 'no-fire'],
    ['it starts and dies', 'fires-and-dies'],
    ['idles rough', 'rough-idle'],
    ['hunting at idle', 'rough-idle'],
    ['misfire', 'rough-idle'],
    ['no oil pressure', 'no-oil-pressure'],
    ['Öldruck niedrig', 'no-oil-pressure'],
    ['oil light on', 'no-oil-pressure'],
    ['it overheats', 'overheating'],
    ['blue smoke', 'smoke'],
    ['raucht', 'smoke'],
    ['wont rev', 'wont-rev'],
    ['no boost', 'boost'],
    ['overboost', 'boost'],
    ['not charging', 'charging'],
    ['battery goes flat', 'charging'],
    ['no-crank', 'no-crank'],
    ['engine cranks but won’t start', 'will-not-start'],
    ['läuft nicht', 'will-not-start'],
    ['ne démarre pas', 'will-not-start'],
    ['nothing happens when I turn the key', 'no-crank'],
    ['pas d’étincelle', 'no-spark'],
    ['fuel pump not priming', 'no-fuel-pressure'],
    ['no injector click', 'no-injector-pulse'],
    ['dies after a few seconds', 'fires-and-dies'],
    ['runs on 3 cylinders', 'rough-idle'],
    ['temp gauge goes up', 'overheating'],
    ['smokes blue on boost', 'smoke'],
    ['hesitation', 'wont-rev'],
    ['boost spikes to 2 bar', 'boost'],
    ['Batterie wird nicht geladen', 'charging'],
  ])('“%s” is %s', (typed, symptom) => {
    expect(meant(typed)).toBe(symptom);
  });

  it('asks where it fits several', () => {
    const { code, question } = refusal('low pressure');
    expect(code).toBe('which-one');
    expect(question?.field).toBe('symptom');
    expect(question?.choices.map(({ value }) => value)).toEqual(
      expect.arrayContaining(['no-fuel-pressure', 'no-oil-pressure']),
    );
  });

  it.each(['banana', '???', 'x'])('says what there is for “%s”', (typed) => {
    const { code, message } = refusal(typed);
    expect(code).toBe('not-found');
    expect(message).toContain('no spark');
  });

  it('finds every guide by each of its own words', () => {
    for (const { id, name, words } of allGuides) {
      for (const one of [id, name, ...words]) expect(meant(one), one).toBe(id);
    }
  });

  it('offers all of them for nothing typed, and those that fit after that', () => {
    expect(suggestSymptoms('')).toHaveLength(allGuides.length);
    expect(suggestSymptoms('smo').map(({ value }) => value)).toEqual(['smoke']);
    for (const { label } of suggestSymptoms('')) expect(label.length).toBeLessThanOrEqual(100);
  });
});
