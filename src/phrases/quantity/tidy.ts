const VULGAR = /[¼½¾⅐-⅞]/gu;

/**
 * One spelling for what keyboards, phones and pasted sheets write in many: vulgar fractions, primes, dashes, times
 * signs, narrow spaces and full-width or squared letters. Lower case; meaning is untouched.
 */
export function tidy(text: string): string {
  return tidyKeepingCase(text).toLowerCase();
}

/** The same with capitals as they were typed: a milliohm is no megohm. */
export function tidyKeepingCase(text: string): string {
  return text
    .replace(VULGAR, ' $&')
    .replace(/º/gu, '°')
    .normalize('NFKC')
    .replace(/[⁄∕]/gu, '/')
    .replace(/[×✕✖∗·⋅∙•]/gu, (sign) => ('·⋅∙•'.includes(sign) ? ' ' : 'x'))
    .replace(/[‐‑‒–—−]/gu, '-')
    .replace(/''|[″”“„]|′′/gu, '"')
    .replace(/[′’‘`]/gu, "'")
    .replace(/\u00ad|[\u200b-\u200f]|\u2060|\ufeff|\ufe0f/gu, '')
    .replace(/μ/gu, 'µ')
    .replace(/\s+/gu, ' ')
    .trim();
}
