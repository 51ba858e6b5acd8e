import { readQuantity } from './quantity/read-quantity.ts';

/** What a line about a fluid says: "2 x 5 L 10W-40", "5.6 L 10W-40 into the sump". */
export interface FluidText {
  /** How many bottles; 1 where none is said. */
  readonly count: number;
  /** The volume as typed, with its unit: "5.6 L". */
  readonly volume?: string;
  readonly grade?: string;
  /** What it goes into or comes out of. */
  readonly into?: string;
}

const COUNT =
  /(?:^|\s)(\d{1,3})\s*(?:[x×*]\s*(?=\d)|(?:bottles?|cans?|tins?|jugs?|off)\s+(?:of\s+)?(?=\d))/iu;
const INTO = /\s+(?:in|into|to|for|from|out of)\s+(?:the\s+)?(.+)$/iu;
const BOTTLES = /^(?:bottles?|cans?|tins?|jugs?)\s+(?:of\s+)?/iu;
/** A number with the word right behind it; the numbers of a grade have their letters glued on. */
const VOLUME =
  /^(?:about\s+|~\s*)?\d[\d.,]*(?:\s\d+\/\d+|\/\d+)?\s?\p{L}[\p{L}.³]*(?:\s(?:gal(?:lons?)?|quarts?|qts?|pints?|pts?|fl\.?\s?oz)\b)?/iu;
/** A number that stands alone; one behind these words is part of a grade. */
const BARE = /(?<!\b(?:dot|sae|gl|iso|hd|no\.?)\s)(?<=^|\s)\d+(?:[.,]\d+)?(?=$|\s)/iu;

/**
 * Reads the parts of such a line in any order people use: count, volume, grade, and what it goes into. Pure; whether the
 * volume is one is for the quantity reader to say.
 */
export function readFluidText(typed: string): FluidText {
  const text = typed.replace(/\s+/gu, ' ').trim();
  const into = INTO.exec(text)?.[1];
  const rest = into === undefined ? text : text.replace(INTO, '');
  const count = COUNT.exec(rest)?.[1];
  const behind = count === undefined ? rest : rest.replace(COUNT, ' ').trim();
  const found = volumeIn(behind);
  const grade = (found === undefined ? behind : found.rest)
    .replace(BOTTLES, '')
    .replace(/^of\s+/iu, '')
    .trim();
  return {
    count: count === undefined ? 1 : Number(count),
    ...(found === undefined ? {} : { volume: found.volume }),
    ...(grade === '' ? {} : { grade }),
    ...(into === undefined ? {} : { into: into.trim() }),
  };
}

/** The first stretch of the line that is a volume, wherever it stands: in front of the grade or behind it. */
function volumeIn(text: string): { readonly volume: string; readonly rest: string } | undefined {
  const words = text.split(' ');
  for (let at = 0; at < words.length; at++) {
    const from = words.slice(at).join(' ');
    const match = VOLUME.exec(from)?.[0];
    if (match === undefined || !isVolume(match)) continue;
    const rest = `${words.slice(0, at).join(' ')} ${from.slice(match.length)}`;
    return { volume: match.trim(), rest: rest.replace(/\s+/gu, ' ').trim() };
  }
  const bare = BARE.exec(text)?.[0];
  if (bare === undefined) return undefined;
  return { volume: bare, rest: text.replace(BARE, '').replace(/\s+/gu, ' ').trim() };
}

function isVolume(text: string): boolean {
  const { verdict } = readQuantity(text, 'volume');
  return verdict === 'read' || verdict === 'ask';
}
