import { isTpi } from './lengths.ts';
import type { SizeItem } from './spans.ts';
import type { NumberToken } from './tokens.ts';
import type { ThreadName, ThreadSize } from './typed.ts';
import type { FittingSystem, WordMeaning } from './words.ts';

/** Whether a number behind a name is its pitch: mm after a metric size, threads per inch after another. */
export function isPitchAfterName(item: NumberToken, named: ThreadName): boolean {
  if (item.unit === 'mm' || item.unit === 'in') return item.value < 8 && named.families?.[0] === 'iso-metric';
  if (named.families?.[0] === 'iso-metric') return item.value <= 8;
  return (
    item.fraction === undefined &&
    item.value >= 4 &&
    (item.value === 4.5 || item.value === 11.5 || Number.isInteger(item.value))
  );
}

const NUMBER_SIZES = new Set([4, 5, 6, 8, 10, 12]);

/** `1-14` and `10-32` are names: a whole inch or a number size, a dash, threads per inch. */
export function dashedName(
  first: NumberToken,
  second: NumberToken,
  items: readonly SizeItem[],
): ThreadName | undefined {
  const at = items.indexOf(first);
  const bare = first.unit === undefined && second.unit === undefined && Number.isInteger(first.value);
  if (!bare || items[at + 1]?.kind !== 'dash' || items[at + 2] !== second || !isTpi(second.value))
    return undefined;
  if (first.value >= 1 && first.value <= 2) return { nominal: String(first.value) };
  return NUMBER_SIZES.has(first.value) && second.value >= 24
    ? { nominal: `#${first.value}`, families: ['unified'] }
    : undefined;
}

/** A number that can be a dash size: 2 to 32, whole. */
export function isDash(item: NumberToken): boolean {
  return item.unit === undefined && Number.isInteger(item.value) && item.value >= 2 && item.value <= 32;
}

/** A number that can name a pipe: a fraction of an inch, or 1 or 2. */
export function isPipeSize(item: NumberToken): boolean {
  return (
    item.unit !== 'mm' && (item.fraction !== undefined || (Number.isInteger(item.value) && item.value <= 2))
  );
}

/** The size that was named together with the family that was. */
export function joinName(
  named: ThreadName | undefined,
  meanings: readonly WordMeaning[],
): ThreadName | undefined {
  const said = meanings.find((meaning) => meaning.name !== undefined)?.name;
  if (said === undefined) return named;
  return { ...said, ...(named?.nominal === undefined ? {} : { nominal: named.nominal }) };
}

/** "an" is also an article: it means the fitting only with a dash number. */
export function fittingOf(
  system: FittingSystem | undefined,
  dash: number | undefined,
): ThreadSize['fitting'] {
  return system === undefined || (system === 'an37' && dash === undefined) ? undefined : { system, dash };
}
