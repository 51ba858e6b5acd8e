import { startingStages } from '../../tables/stages.ts';
import type { Condition, Stage } from './stage.ts';

/** A condition with its number in the starting set; null for the crew's own. */
export interface StartingCondition {
  readonly condition: Condition;
  readonly number: number | null;
}

/**
 * The starting set as a build's own stages. Their ids are negative numbers that stay the same, so that a button made
 * before anything was written down still names its condition afterwards.
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
