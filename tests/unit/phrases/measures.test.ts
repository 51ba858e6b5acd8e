import { describe, expect, it } from 'vitest';
import { readMeasure } from '../../../src/phrases/measures/read-measure.ts';

const STAGES = new Set([
  'first start',
  'cranking',
  'oil pressure',
  'start',
  'driving',
  'mapping',
  'sign-off',
]);
const read = (sentence: string) => readMeasure(sentence, (words) => STAGES.has(words.toLowerCase()));

/** Sentences as crews say them, put together for this test; nothing of it is published. */
describe('a sentence about something temporary', () => {
  it.each([
    [
      'blanked the turbo drain until the hose comes, undo before first start',
      { what: 'blanked the turbo drain', until: 'hose', untilIs: 'part', before: ['first start', false] },
    ],
    ['Turbo drain blanked till hose comes', { what: 'Turbo drain blanked', until: 'hose', untilIs: 'part' }],
    ['heater bypassed pending the matrix', { what: 'heater bypassed', until: 'matrix' }],
    [
      'port plugged until the sump is welded and "refit sump" is done',
      { what: 'port plugged', until: 'sump is welded and refit sump', untilIs: 'job' },
    ],
    [
      'guard not refitted, must be undone before driving',
      { what: 'guard not refitted', before: ['driving', false] },
    ],
    ['undertray left off until mapping', { what: 'undertray left off', before: ['mapping', false] }],
    ['old plugs in until after first start', { what: 'old plugs in', before: ['first start', true] }],
    [
      'temporary battery; must not outlive sign-off',
      { what: 'temporary battery', before: ['sign-off', false] },
    ],
    [
      'coil plug pulled for cranking, back on before first start',
      { what: 'coil plug pulled', during: 'cranking', before: ['first start', false] },
    ],
    ['no spark and no fuel while cranking', { what: 'no spark and no fuel', during: 'cranking' }],
    [
      'required for cranking: coil fuse out, undo before first start',
      { what: 'coil fuse out', during: 'cranking', before: ['first start', false] },
    ],
    [
      'blanked with a bung until the hose comes, see photo, undo before first start',
      {
        what: 'blanked with a bung, see photo',
        until: 'hose',
        untilIs: 'part',
        before: ['first start', false],
      },
    ],
    [
      'cable tie on the throttle spring, remove before the weekend',
      { what: 'cable tie on the throttle spring', before: ['weekend', false] },
    ],
  ])('%s', (sentence, wanted: Record<string, unknown>) => {
    const { before, ...read_ } = read(sentence);
    const found = before === undefined ? read_ : { ...read_, before: [before.words, before.through] };
    expect(found).toEqual(wanted);
  });

  it.each([
    'clamp on the hose before the lambda sensor',
    'borrowed wideband from Cleo',
    'bolt M8 for M10',
    'radiator fan off',
    'spacer put in for now',
  ])('takes “%s” whole: no stage and nothing that undoes it is named', (sentence) => {
    expect(read(sentence)).toEqual({ what: sentence });
  });

  it('never loses a word that is not part of what it read', () => {
    expect(read('fan clipped to the bonnet for the winter until the bracket comes').what).toBe(
      'fan clipped to the bonnet for the winter',
    );
  });

  it('leaves nothing as what was done when nothing was said of it', () => {
    expect(read('until the hose comes').what).toBe('');
  });
});
