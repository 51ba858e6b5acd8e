import type { Calculation } from '../core/calculation.ts';

type Notes = Pick<Calculation<unknown>, 'assumptions' | 'sources' | 'caveats'>;

/** What several sums that make one answer took for granted, each thing said once. */
export function together(...sums: readonly Partial<Notes>[]): Notes {
  const once = (of: (notes: Partial<Notes>) => readonly string[] | undefined): readonly string[] => [
    ...new Set(sums.flatMap((notes) => of(notes) ?? [])),
  ];
  return {
    assumptions: once(({ assumptions }) => assumptions),
    sources: once(({ sources }) => sources),
    caveats: once(({ caveats }) => caveats),
  };
}
