import { type Choice, UserError } from '../../core/user-error.ts';
import { startingStages } from '../../tables/stages.ts';
import { likeNames, plain } from '../suppliers/supplier.ts';
import { whichOne } from '../which-one.ts';
import type { Stage } from './stage.ts';

/** Every name a stage goes by: its own, its key, and what the trade calls it. */
export function namesOfStage({ key, name }: Pick<Stage, 'key' | 'name'>): readonly string[] {
  const known = startingStages.find((one) => one.key === key)?.alsoCalled ?? [];
  return [...new Set([name, key, key.replaceAll('-', ' '), ...known].map(plain))];
}

/**
 * The stage meant by any of its names.
 *
 * @throws UserError 'which-one' when several fit or one nearly does, 'not-found' naming those there are.
 */
export function findStage(stages: readonly Stage[], typed: string, field = 'stage'): Stage {
  const wanted = plain(typed);
  const fits = (test: (name: string) => boolean): readonly Stage[] =>
    stages.filter((stage) => namesOfStage(stage).some(test));
  for (const found of [
    // a stage's own name outranks what another is also called
    stages.filter(({ key, name }) => plain(name) === wanted || key === wanted),
    fits((name) => name === wanted),
    wanted.length < 3 ? [] : fits((name) => name.includes(wanted)),
  ]) {
    const [only, another] = found;
    if (only !== undefined && another === undefined) return only;
    if (only !== undefined) throw whichStage(`Several stages fit "${typed}". Which one?`, found, field);
  }
  const near = fits((name) => likeNames(typed, [name]).length > 0);
  if (near.length > 0) throw whichStage(`No stage is called "${typed}". Is this the one?`, near, field);
  throw new UserError(
    'not-found',
    `No stage is called "${typed}". Nothing was changed. There are: ${stages.map(({ name }) => name).join(', ')}.`,
  );
}

const whichStage = (question: string, found: readonly Stage[], field: string): UserError =>
  whichOne(question, found.map(stageChoice), field);

const stageChoice = ({ name, key }: Stage): Choice => ({ label: name.slice(0, 80), value: key });

export function suggestStages(stages: readonly Stage[], typed: string): readonly Choice[] {
  return stages
    .filter((stage) => namesOfStage(stage).some((name) => name.includes(plain(typed))))
    .map(stageChoice);
}
