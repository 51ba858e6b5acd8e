import { UserError } from '../../core/user-error.ts';
import { type PlanRow, runInPlans } from '../../tables/running-in.ts';

/** A plan without steps, for the builder's own. */
export const OWN_PLAN = 'own';

/** Names of every plan that can be chosen. */
export const planNames: readonly string[] = [...runInPlans.map(({ id }) => id), OWN_PLAN];

/** The plan of a name; undefined for the builder's own. @throws UserError 'not-found' for any other. */
export function chosenPlan(name: string): PlanRow | undefined {
  if (name === OWN_PLAN) return undefined;
  const found = runInPlans.find(({ id }) => id === name);
  if (found) return found;
  throw new UserError('not-found', `“${name}” is no plan. There are: ${planNames.join(', ')}.`);
}
