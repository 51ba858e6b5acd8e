import { startingStages } from '../../tables/stages.ts';
import type { Condition, Stage } from './stage.ts';

/** A condition with its number in the starting set; null for the crew's own. */
export interface StartingCondition {
  readonly condition: Condition;
  readonly number: number | null;
}

/**
 * The starting set as a build's own stages. Its conditions go by the negative of their number in the set, before and after a build
 * has stages of its own written down, so that a button or a yes from before still names its condition.
 */
export function startingStagesOf(
  buildId: number,
): readonly { readonly stage: Stage; readonly conditions: readonly StartingCondition[] }[] {
  return startingStages.map(({ key, name, conditions }, place) => {
    const numbered = conditions.map((condition, at) => ({ condition, number: (place + 1) * 100 + at + 1 }));
    return {
      stage: {
        id: -(place + 1),
        buildId,
        key,
        name,
        rank: place,
        conditions: numbered.map(({ condition, number }) => ({ id: -number, condition })),
        passes: [],
      },
      conditions: numbered,
    };
  });
}
