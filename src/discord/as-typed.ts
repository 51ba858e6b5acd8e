/** What the platform's markup gives a meaning wherever it stands; a backslash takes it away. */
const ANYWHERE = /[\\*_~`|<[\]]/g;

/** What has a meaning only at the beginning of a line: headings, small print, quotes, lists. */
const LINE_START = /^(\s*)([#>+-])/gm;
const NUMBERED = /^(\s*\d+)([.)])(?=\s|$)/gm;

/**
 * Shows text as it was typed: no styling, no headings or lists, no links, and no mention that looks like one.
 * `allowed_mentions` is what stops pings; this is what stops the look of them.
 */
export function asTyped(words: string): string {
  return words
    .replace(ANYWHERE, '\\$&')
    .replace(LINE_START, '$1\\$2')
    .replace(NUMBERED, '$1\\$2')
    .replaceAll('://', '\\://')
    .replaceAll('@everyone', '@\u200beveryone')
    .replaceAll('@here', '@\u200bhere');
}

/** The same, cut so that it takes up at most so many characters with its backslashes; the cut shows as `…`. */
export function asTypedWithin(words: string, most: number): string {
  const whole = asTyped(words);
  if (whole.length <= most) return whole;
  let kept = shorten(words, most);
  while (asTyped(kept).length > most) kept = shorten(kept, Math.floor(kept.length * 0.9));
  return asTyped(kept);
}

/** At most so many UTF-16 code units, as the platform counts, never half a character. */
export function shorten(words: string, most: number): string {
  if (words.length <= most) return words;
  const cut = words.slice(0, most - 1);
  const whole = cut.isWellFormed() ? cut : cut.slice(0, -1);
  return `${whole}…`;
}
