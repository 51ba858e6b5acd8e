import { type Choice, UserError } from '../../core/user-error.ts';
import { likeNames, plain } from '../suppliers/supplier.ts';
import type { RunInPlan, RunInStep } from './run-in.ts';
import { sayMark } from './say-run-in.ts';

/** A step by its number or its words. @throws UserError 'not-found', or 'which-one' about the option `field`. */
export function findStep(plan: RunInPlan, typed: string, field: string): RunInStep {
  const number = /^#?(\d{1,9})$/u.exec(typed.trim())?.[1];
  const byNumber = number === undefined ? undefined : plan.steps.find(({ id }) => id === Number(number));
  if (byNumber !== undefined) return byNumber;
  const found = meant(plan.steps, typed);
  const open = found.filter(({ doneOn, dropped }) => doneOn === null && !dropped);
  const [only, another] = open.length > 0 ? open : found;
  if (only !== undefined && another === undefined) return only;
  if (only !== undefined) {
    throw new UserError('which-one', `Several steps fit “${typed}”. Which one?`, {
      field,
      choices: (open.length > 0 ? open : found).slice(0, 20).map(stepChoice),
    });
  }
  const open_ = plan.steps.filter(({ doneOn, dropped }) => doneOn === null && !dropped);
  throw new UserError(
    'not-found',
    open_.length === 0
      ? 'No step of this plan is open.'
      : `No step is called “${typed}”. Open: ${open_.map(({ id, what }) => `#${id} ${what}`).join('; ')}.`,
  );
}

function meant(steps: readonly RunInStep[], typed: string): readonly RunInStep[] {
  const words = plain(typed);
  const same = steps.filter(({ what }) => plain(what) === words);
  if (same.length > 0) return same;
  const inside = steps.filter(({ what }) => plain(what).includes(words));
  if (inside.length > 0) return inside;
  const like = likeNames(
    typed,
    steps.map(({ what }) => what),
  );
  return steps.filter(({ what }) => like.includes(what));
}

const stepChoice = ({ id, what, due }: RunInStep): Choice => ({
  label: `${what} (${sayMark(due)})`.slice(0, 100),
  value: `#${id}`,
});

/** Open steps to be offered while one is typed. */
export function suggestSteps(plan: RunInPlan | undefined, typed: string): readonly Choice[] {
  return (plan?.steps ?? [])
    .filter(({ doneOn, dropped, what }) => doneOn === null && !dropped && plain(what).includes(plain(typed)))
    .map(stepChoice);
}
