import { buildHere, crewOf } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { UserError } from '../../core/user-error.ts';
import { findStage, namesOfStage } from '../../records/stages/find-stage.ts';
import type { Stage, StageCondition } from '../../records/stages/stage.ts';
import { type StageFacts, stageFacts } from '../../records/stages/stage-facts.ts';
import { standingOf } from '../../records/stages/standing.ts';
import { plain } from '../../records/suppliers/supplier.ts';

/** Clears what was said, where a stage or a thing is asked for. */
export const NONE = 'none';

/** No build has this number: its stages are those of the starting set, and nothing is recorded of it. */
const NO_BUILD = 0;

/** The facts of this channel's build; those of an empty one while nothing is recorded here. */
export function stageFactsHere(hand: Hand): StageFacts {
  return stageFacts(hand.record, buildHere(hand)?.id ?? NO_BUILD, crewOf(hand).today);
}

/** Stages of this channel's build, or the starting set. */
export function stagesHere(hand: Hand): readonly Stage[] {
  return hand.record.stages.ofBuild(buildHere(hand)?.id ?? NO_BUILD);
}

/** Whether words are exactly one of a stage's names. */
export function isStageName(stages: readonly Stage[], words: string): boolean {
  return stages.some((stage) => namesOfStage(stage).includes(plain(words)));
}

const MOST_CHOICES = 4;

/**
 * The stage named by an option or in a sentence; null for "none".
 *
 * @throws UserError 'which-one' about `field` when the words name none or several, with the stages still to come.
 */
export function stageMeant(facts: StageFacts, words: string, field: string): Stage | null {
  if (plain(words) === NONE) return null;
  try {
    return findStage(facts.stages, words, field);
  } catch (error) {
    if (!(error instanceof UserError) || error.code !== 'not-found') throw error;
    const coming = facts.stages.filter((stage) => standingOf(stage, facts).kind !== 'passed');
    throw new UserError('which-one', `“${words}” is no stage of this build. Which stage?`, {
      field,
      choices: [
        ...coming.slice(0, MOST_CHOICES).map(({ name, key }) => ({ label: name.slice(0, 80), value: key })),
        { label: 'No stage', value: NONE },
      ],
    });
  }
}

/** The first stage that does not stand as passed; the last one when all do. */
export function nextStage(facts: StageFacts): Stage {
  const next =
    facts.stages.find((stage) => standingOf(stage, facts).kind !== 'passed') ?? facts.stages.at(-1);
  if (next !== undefined) return next;
  throw new UserError('not-now', 'No stage is left in the list. /stage add puts one in.');
}

/**
 * The condition a button names.
 *
 * @throws UserError 'stale-message' when it has been left out.
 */
export function conditionHere(
  hand: Hand,
  id: number,
): { readonly stage: Stage; readonly condition: StageCondition } {
  for (const stage of stagesHere(hand)) {
    const condition = stage.conditions.find((one) => one.id === id);
    if (condition !== undefined) return { stage, condition };
  }
  throw new UserError(
    'stale-message',
    'That condition has been left out. /ready shows what is asked for now.',
  );
}
