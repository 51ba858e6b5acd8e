import { type Choice, UserError } from '../../core/user-error.ts';
import { readLength } from '../quantity/length.ts';
import { tidy } from '../quantity/tidy.ts';

/** A dash size as typed: its number, a measured diameter, or the size of a thread. */
export type TypedDash =
  | { readonly kind: 'dash'; readonly dash: number }
  | { readonly kind: 'diameter'; readonly mm: number }
  | { readonly kind: 'thread'; readonly text: string };

export const DASH_EXAMPLES = 'Type it like `-6`, `9.5 mm`, `3/8 in` or `9/16-18`.';

/** Tubes and hoses of the table, with room for a poor reading, mm. */
const LEAST_MM = 2;
const MOST_MM = 60;

/**
 * Reads a dash number, a tube or hose diameter, or a thread.
 *
 * @throws UserError 'bad-input' for none of these, 'out-of-range' for a diameter no tube of the table has, 'which-one'
 *   for a number that can be mm or inches.
 */
export function readDashSize(typed: string, field: string): TypedDash {
  const text = tidy(typed);
  const dash = /^(?:(?:dash|an|jic|orb|orfs) ?-?|-)0?(\d{1,2})$|^0?(\d{1,2}) ?an$/u.exec(text);
  if (dash !== null) return { kind: 'dash', dash: Number(dash[1] ?? dash[2]) };
  if (/^(?:[1-4][ -])?\d{1,2}\/\d{1,2} ?[-x ] ?\d{1,2}\b|^m ?\d|^[12]-\d{1,2}$/u.test(text))
    return { kind: 'thread', text };
  const read = readLength(text.replace(/ ?\b(?:tube|hose|bore|od|id|outside|inside)\b ?/gu, ' ').trim());
  switch (read.verdict) {
    case 'read':
      return { kind: 'diameter', mm: inRange(read.value, typed) };
    case 'ask': {
      const fair = read.options.filter((value) => value >= LEAST_MM && value <= MOST_MM);
      const [only, ...more] = fair;
      if (only === undefined) throw outOfRange(typed);
      if (more.length === 0) return { kind: 'diameter', mm: only };
      throw new UserError('which-one', `"${typed}": ${read.why}`, { field, choices: fair.map(lengthChoice) });
    }
    case 'range':
    case 'refuse':
      throw new UserError('bad-input', `"${typed}" is no dash size, diameter or thread. ${DASH_EXAMPLES}`);
  }
}

const lengthChoice = (mm: number): Choice => ({ label: `${mm.toFixed(2)} mm`, value: `${mm.toFixed(3)} mm` });

function inRange(mm: number, typed: string): number {
  if (mm >= LEAST_MM && mm <= MOST_MM) return mm;
  throw outOfRange(typed);
}

const outOfRange = (typed: string): UserError =>
  new UserError(
    'out-of-range',
    `"${typed}" is not between ${LEAST_MM} and ${MOST_MM} mm, as tubes and hoses of these sizes are. ${DASH_EXAMPLES}`,
  );
