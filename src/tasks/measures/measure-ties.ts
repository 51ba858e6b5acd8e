import { buildHere } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { UserError } from '../../core/user-error.ts';
import { isInPlace, type Measure } from '../../records/measures/measure.ts';
import { type Known, type Undoer, whatUndoes } from '../../records/measures/what-undoes.ts';
import { hasSign } from '../../records/stages/find-measures.ts';
import type { Stage } from '../../records/stages/stage.ts';
import type { StageFacts } from '../../records/stages/stage-facts.ts';
import { plain } from '../../records/suppliers/supplier.ts';
import { NONE, stageMeant } from '../stages/stage-names.ts';

/** Parts and jobs of this channel's build, by which a measure may be undone. */
export function knownHere(hand: Hand): Known {
  const build = buildHere(hand);
  if (build === undefined) return { parts: [], jobs: [] };
  return { parts: hand.record.parts.ofBuild(build.id), jobs: hand.record.jobs.ofBuild(build.id) };
}

export function undoerOf(until: string | undefined, is: 'part' | 'job' | undefined, hand: Hand): Undoer {
  if (until === undefined || plain(until) === NONE) return { until: null, partId: null, jobId: null };
  return whatUndoes(until, is, knownHere(hand));
}

/** Undefined when nothing was said, null for "none". */
export function stageOf(
  words: string | undefined,
  field: string,
  facts: StageFacts,
): Stage | null | undefined {
  return words === undefined ? undefined : stageMeant(facts, words, field);
}

export function beforeOf(
  option: string | undefined,
  said: { readonly words: string; readonly through: boolean } | undefined,
  facts: StageFacts,
): Stage | null | undefined {
  if (option !== undefined || said === undefined) return stageOf(option, 'undo_before', facts);
  const stage = stageMeant(facts, said.words, 'undo_before');
  if (stage === null || !said.through) return stage;
  // what may last through a stage is undone before the one behind it
  return facts.stages.find(({ rank }) => rank > stage.rank) ?? stage;
}

/**
 * What of the stages' required measures this one is. Only where its stage was named with it, or in the stage's own words: a
 * fuel port blanked for another reason is not "no fuel".
 */
export function countsAs(
  what: string,
  required: Stage | null | undefined,
  { stages }: StageFacts,
): {
  readonly words: readonly string[];
  readonly stage: Stage | undefined;
  readonly undoneBefore: string | null;
} {
  const asked = stages.flatMap((stage) =>
    stage.conditions.flatMap(({ condition }) => (condition.kind === 'measure' ? [{ stage, condition }] : [])),
  );
  const it = asked.filter(({ stage, condition }) =>
    required === undefined
      ? plain(what).includes(plain(condition.word))
      : stage.key === required?.key && hasSign(what, [condition.word, ...condition.signs]),
  );
  const limits = it.flatMap(
    ({ condition }) => stages.find(({ key }) => key === condition.undoneBefore) ?? [],
  );
  const [first] = limits.toSorted((a, b) => a.rank - b.rank);
  return {
    words: it.map(({ condition }) => condition.word),
    stage: it[0]?.stage,
    undoneBefore: first?.key ?? null,
  };
}

export function refuseTwin(what: string, { measures }: StageFacts): void {
  const twin = measures.find((one) => isInPlace(one) && plain(one.what) === plain(what));
  if (twin === undefined) return;
  throw new UserError(
    'already-done',
    `“${twin.what}” is in place already, as #${twin.id}. Nothing was written down a second time. /temporary change corrects it.`,
  );
}

/** @throws UserError 'bad-input' when it would have to be undone before the stage it is required at. */
export function requireInOrder(
  { requiredAt, undoneBefore }: Pick<Measure, 'requiredAt' | 'undoneBefore'>,
  stages: readonly Stage[],
): void {
  const required = stages.find(({ key }) => key === requiredAt);
  const before = stages.find(({ key }) => key === undoneBefore);
  if (required === undefined || before === undefined || required.rank < before.rank) return;
  throw new UserError(
    'bad-input',
    `It cannot be required at ${required.name} and undone before ${before.name}, which comes no later. Nothing was changed. Name a later stage as undo_before.`,
  );
}
