import { alike } from '../records/readings/alike.ts';
import type { Sample } from '../records/readings/reading.ts';

/** A reading with whether it is wrong. */
export interface JudgedSample {
  readonly sample: Sample;
  /** Undefined where no limit applies: it opens nothing and closes nothing. */
  readonly bad: boolean | undefined;
}

/**
 * The spell of bad readings that is still open at the end: the one it began with, and the newest of them.
 *
 * A bad reading opens a spell or joins the open one; it ends when every condition at which it was bad has been measured
 * good again. So one trouble is one spell, however often and at whatever speed it is measured.
 *
 * @param samples of one kind and place, the oldest first.
 */
export function openSpell(
  samples: readonly JudgedSample[],
): { readonly began: Sample; readonly newest: Sample } | undefined {
  let began: Sample | undefined;
  let bad: readonly Sample[] = [];
  for (const { sample, bad: isBad } of samples) {
    if (isBad === undefined) continue;
    const others = bad.filter((each) => !alike(each.conditions, sample.conditions));
    bad = isBad ? [...others, sample] : others;
    if (bad.length === 0) began = undefined;
    else began ??= sample;
  }
  const newest = bad.reduce<Sample | undefined>(
    (last, each) => (last !== undefined && last.takenAtMs > each.takenAtMs ? last : each),
    undefined,
  );
  return began === undefined || newest === undefined ? undefined : { began, newest };
}
