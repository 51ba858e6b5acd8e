import type { Choice } from '../../core/user-error.ts';
import { UserError } from '../../core/user-error.ts';
import type { FieldName } from './fields.ts';
import { readQuantity } from './read-quantity.ts';
import type { Offer, Read } from './reading.ts';

/**
 * One value typed in an option, for a sum that needs one: `takeQuantity('58 psi', 'pressure', 'rail')`.
 *
 * @param option the option it was typed in, which a choice will fill in again.
 * @throws UserError 'which-one' with the fair readings as choices; 'bad-input' for a range or what cannot be read. Both
 *   say what to type instead.
 */
export function takeQuantity(typed: string, field: FieldName, option: string): Read {
  const found = readQuantity(typed, field);
  switch (found.verdict) {
    case 'read':
      return found;
    case 'range':
      throw new UserError(
        'bad-input',
        `${option}: "${typed}" is a range, and one figure is needed. Type one.`,
      );
    case 'ask':
      throw new UserError('which-one', `${option}: ${found.question}`, {
        field: option,
        choices: choicesOf(found.options),
      });
    case 'refuse':
      throw new UserError('bad-input', `${option}: ${found.problem}`);
  }
}

/** Each reading once, as what would be typed for it. */
export function choicesOf(options: readonly Offer[]): readonly Choice[] {
  return [...new Set(options.map(({ typed }) => typed))].map((typed) => ({ label: typed, value: typed }));
}
