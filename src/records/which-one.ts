import { type Choice, UserError } from '../core/user-error.ts';

/** A row of buttons on a phone. */
const MOST_SHOWN = 5;

/** A question among several things; where not all have a button it says how many more there are. */
export function whichOne(question: string, choices: readonly Choice[], field: string): UserError {
  const more = choices.length - MOST_SHOWN;
  const rest = more > 0 ? ` ${more} more fit as well: type more of the name to reach them.` : '';
  return new UserError('which-one', `${question}${rest}`, { field, choices: choices.slice(0, MOST_SHOWN) });
}
