import type { KindSpec } from './kind-spec.ts';
import type { LineReading } from './line-reading.ts';
import { readLine } from './read-line.ts';
import { takeApart } from './take-apart.ts';

/** Words by which somebody tells another, or asks: such a line is no reading to be logged. */
const TOLD =
  /(?:^|[ ,])(?:is|are|was|were|be|been|it|its|it's|i|we|he|she|now|still|should|ist|war|sind|est|était|es|era)(?=[ ,.!]|$)|\?/iu;

/**
 * A line that is a reading and nothing else, for one that somebody types without saying that it is one: its kind is named
 * by a word, it has one meaning, and no word makes it talk.
 */
export function saidReading(
  text: string,
  kinds: readonly KindSpec[],
): (LineReading & { readonly verdict: 'read' }) | undefined {
  if (TOLD.test(text)) return undefined;
  const found = readLine(text, { kinds, afrOf: () => undefined });
  if (found.verdict !== 'read' || found.note !== undefined) return undefined;
  const named = takeApart(text, kinds).some(({ type }) => type === 'kind');
  return named ? found : undefined;
}
