import { sayDay } from '../../core/time.ts';
import { isInPlace, type Measure } from '../measures/measure.ts';
import { plain } from '../suppliers/supplier.ts';
import type { Found } from './finding.ts';
import type { ConditionOf, Stage } from './stage.ts';
import type { StageFacts } from './stage-facts.ts';

/**
 * Temporary measures as a stage needs them: whatever must not outlive it, or a stage before it, is undone; whatever it
 * requires has not been undone. Nothing temporary outlives the last stage.
 */
export function findMeasures(stage: Stage, { measures, stages, today }: StageFacts): readonly Found[] {
  const last = stages.at(-1)?.key === stage.key;
  const inPlace = measures.filter(isInPlace);
  const outlived = inPlace.flatMap((measure): readonly Found[] => {
    const before = stages.find(({ key }) => key === measure.undoneBefore);
    const key = `measure:${measure.id}`;
    const leads = [{ to: 'undo', measure }] as const;
    if (before === undefined && measure.undoneBefore !== null) {
      const says = `“${measure.what}” must be undone before a stage that is no longer in the list`;
      return [{ key, state: 'doubtful', says, leads }];
    }
    if (before === undefined ? !last : before.rank > stage.rank) return [];
    const limit = before === undefined ? stage.name : before.name;
    return [
      { key, state: 'open', lasting: true, leads, says: `“${measure.what}” must be undone before ${limit}` },
    ];
  });
  const takenOff = measures.filter(
    (one) =>
      one.requiredAt === stage.key && one.answers.length === 0 && !isInPlace(one) && !replaced(one, inPlace),
  );
  const missing = takenOff.map(
    (one): Found => ({
      key: `required:${one.id}`,
      state: 'open',
      says: `“${one.what}” is required at ${stage.name}; ${one.undoneByName ?? ''} undid it on ${sayDay(one.undoneOn ?? today, today)}`,
      leads: [{ to: 'put', word: one.what, again: one }],
    }),
  );
  const found = [...outlived, ...missing];
  return found.length > 0
    ? found
    : [{ key: 'measures', state: 'met', says: 'No temporary measure stands in the way' }];
}

const replaced = (gone: Measure, inPlace: readonly Measure[]): boolean =>
  inPlace.some(({ what }) => plain(what) === plain(gone.what));

/** A measure that the stage requires, under the crew's words or the stage's. */
export function findMeasure(
  { word, signs }: ConditionOf<'measure'>,
  stage: Stage,
  { measures, today }: StageFacts,
): readonly Found[] {
  const key = `required:${word}`;
  const inPlace = measures.filter(isInPlace);
  const it = inPlace.find((measure) => isAnswer(measure, word));
  if (it !== undefined) {
    const by = it.putByName;
    return [
      { key, state: 'met', says: `${word}: “${it.what}”, put in by ${by} on ${sayDay(it.putOn, today)}` },
    ];
  }
  const like = inPlace.filter(
    ({ what, answers, requiredAt }) =>
      hasSign(what, signs) || (requiredAt === stage.key && !hasSign(what, answers)),
  );
  const put = { to: 'put', word, again: null } as const;
  if (like.length === 0)
    return [{ key, state: 'open', says: `Required, and not in place: ${word}`, leads: [put] }];
  const names = like.map(({ what }) => `“${what}”`).join(', ');
  const leads = [...like.map((measure) => ({ to: 'answers', measure, word }) as const), put];
  return [{ key, state: 'doubtful', says: `Required: ${word}. Is it ${names}?`, leads }];
}

const isAnswer = ({ what, answers }: Measure, word: string): boolean =>
  [what, ...answers].some((one) => plain(one) === plain(word));

/** Whether any of these words stands in a sentence as a word of its own. */
export function hasSign(sentence: string, signs: readonly string[]): boolean {
  const said = ` ${plain(sentence).replace(/[^\p{L}\p{N}]+/gu, ' ')} `;
  return signs.some((sign) => said.includes(` ${plain(sign)} `));
}
