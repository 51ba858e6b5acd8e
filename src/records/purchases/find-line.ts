import { UserError } from '../../core/user-error.ts';
import type { Order } from '../orders/order.ts';
import { plain } from '../suppliers/supplier.ts';

/** One way to read what was typed of a line: its number or name, and how many. */
export interface LineNamed {
  readonly name: string;
  readonly quantity: number | undefined;
}

/**
 * The line of a parcel meant by the first reading that fits one, and how many of it.
 *
 * @throws UserError 'not-found' naming the lines there are, or when several fit.
 */
export function findLine(
  lines: readonly Order[],
  readings: readonly LineNamed[],
  typed: string,
): { readonly order: Order; readonly quantity: number | undefined } {
  for (const { name, quantity } of readings) {
    const [only, ...more] = fitting(lines, name);
    if (only === undefined) continue;
    if (more.length === 0) return { order: only, quantity };
    throw new UserError(
      'not-found',
      `Several lines of this parcel fit "${typed}": ${[only, ...more].map(({ id, what }) => `#${id} ${what}`).join(', ')}. Type the number. Nothing was changed.`,
    );
  }
  throw new UserError(
    'not-found',
    `No line of this parcel is called "${typed}". It holds ${lines.map(({ id, what }) => `#${id} ${what}`).join(', ')}. Nothing was changed.`,
  );
}

function fitting(lines: readonly Order[], name: string): readonly Order[] {
  const number = /^#?\s*(\d{1,9})$/.exec(name)?.[1];
  const numbered = lines.filter(({ id }) => String(id) === number);
  if (numbered.length > 0) return numbered;
  const exact = lines.filter(({ what }) => plain(what) === plain(name));
  if (exact.length > 0 || plain(name) === '') return exact;
  return lines.filter(({ what }) => plain(what).includes(plain(name)));
}
