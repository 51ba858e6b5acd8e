import { type Choice, UserError } from '../../core/user-error.ts';
import { plain } from '../suppliers/supplier.ts';
import type { StageFact } from './facts.ts';

/**
 * The stage meant by its key or its name, or by part of it.
 *
 * @throws UserError 'not-found' naming those there are, 'which-one' when it fits several.
 */
export function stageMeant(stages: readonly StageFact[], typed: string, field = 'stage'): StageFact {
  const [only, ...more] = stagesNamed(stages, typed);
  if (only !== undefined && more.length === 0) return only;
  if (only !== undefined) {
    throw new UserError('which-one', `Several stages fit "${typed}". Which one?`, {
      field,
      choices: [only, ...more].map(stageChoice),
    });
  }
  const known = stages.map(({ name }) => name).join(', ');
  throw new UserError('not-found', `There is no stage "${typed}". Nothing was changed. Stages: ${known}.`);
}

/** Stages of exactly this key or name, or else those that hold it. */
export function stagesNamed(stages: readonly StageFact[], typed: string): readonly StageFact[] {
  const wanted = plain(typed.replaceAll('-', ' '));
  const fits = (test: (word: string) => boolean): readonly StageFact[] =>
    stages.filter(({ key, name }) => [key.replaceAll('-', ' '), plain(name)].some(test));
  const exact = fits((word) => word === wanted);
  return exact.length > 0 || wanted === '' ? exact : fits((word) => word.includes(wanted));
}

export function suggestStages(stages: readonly StageFact[], typed: string): readonly Choice[] {
  const wanted = plain(typed);
  return stages.filter(({ key, name }) => plain(`${key} ${name}`).includes(wanted)).map(stageChoice);
}

const stageChoice = ({ key, name }: StageFact): Choice => ({ label: name, value: key });
