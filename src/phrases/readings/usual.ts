import { inShown, type KindSpec, within } from './kind-spec.ts';
import type { LineReading } from './line-reading.ts';

type Read = LineReading & { readonly verdict: 'read' };

/** This share of a kind's usual span beyond either end of it, and nobody takes a value for one of that kind. */
const FAR = 0.5;

/**
 * Of several kinds that a line can be about, those that its values can be taken for: 0.2 V is no battery's, 14.2 V no cable's
 * drop. All of them where the values are far from what is usual for each, since then nothing is settled.
 */
export function likelyReads(reads: readonly Read[], kinds: readonly KindSpec[]): readonly Read[] {
  const likely = reads.filter((read) => !farFromUsual(read, kinds));
  return likely.length > 0 ? likely : reads;
}

function farFromUsual({ kind: name, values }: Read, kinds: readonly KindSpec[]): boolean {
  const kind = kinds.find((each) => each.name === name);
  if (kind?.usual === undefined) return false;
  const [min, max] = kind.usual;
  const beyond = FAR * (max - min);
  const wide: readonly [number, number] = [min - beyond, max + beyond];
  return values.some(({ value }) => Number.isFinite(inShown(value, kind)) && !within(value, wide, kind));
}

/** What is said of a line that only the size of its values has settled. */
export const settledBySize = (read: Read, others: readonly Read[]): string =>
  `Taken as ${read.kind}: no usual ${others.map(({ kind }) => kind).join(' or ')}.`;
