/** What a quantity as typed means: one value, a range, several fair readings to choose from, or nothing. */
export type Quantity =
  | {
      readonly verdict: 'read';
      readonly value: number;
      /** The ± typed beside it, same unit. */
      readonly plusMinus?: number;
      /** "about", "just under", "~". */
      readonly approx?: true;
    }
  | { readonly verdict: 'range'; readonly min: number; readonly max: number }
  | { readonly verdict: 'ask'; readonly options: readonly number[]; readonly why: string }
  | { readonly verdict: 'refuse'; readonly why: string };

export function refuse(why: string): Quantity {
  return { verdict: 'refuse', why };
}

export function ask(options: readonly number[], why: string): Quantity {
  return { verdict: 'ask', options, why };
}
