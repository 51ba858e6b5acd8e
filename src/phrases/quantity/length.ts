import { readQuantity } from './read-quantity.ts';

/** A length in mm and nothing more, for what is worked out in mm anyway. */
export type LengthReading =
  | { readonly verdict: 'read'; readonly value: number }
  | { readonly verdict: 'range'; readonly min: number; readonly max: number }
  | { readonly verdict: 'ask'; readonly options: readonly number[]; readonly why: string }
  | { readonly verdict: 'refuse'; readonly why: string };

/** A length in mm as people type it: `21.9 mm`, `0,125 in`, `11/16`, `5' 6"`, `M10`. Valid: 0 to 10 m. */
export function readLength(typed: string): LengthReading {
  const found = readQuantity(typed, 'length');
  switch (found.verdict) {
    case 'read':
      return { verdict: 'read', value: found.value };
    case 'range':
      return { verdict: 'range', min: found.min, max: found.max };
    case 'ask':
      return { verdict: 'ask', options: found.options.map(({ value }) => value), why: found.question };
    case 'refuse':
      return { verdict: 'refuse', why: found.problem };
  }
}
