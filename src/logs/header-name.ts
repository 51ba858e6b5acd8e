/** A column's name taken apart: its words in one spelling, and the unit that stands with them. */
export interface HeaderName {
  /** Small letters without accents, words parted by single spaces, a unit in brackets taken off. */
  readonly words: string;
  /** As it stands: `bar`, `°C`; empty when none is given. */
  readonly unit: string;
}

/** In brackets a fuel says what an AFR is counted in; as a word it is what the column is about. */
const FUEL = /^(petrol|gasoline|benzin|essence|gasolina|benzina|bensin|benzine)$/i;
const BRACKETS = /[([{<]\s*([^()[\]{}<>]*?)\s*[)\]}>]/g;

/** Takes a name apart: `Oil P (bar)`, `AFR [petrol]`, `rpm/min`, `coolant_temp_C`, `T huile, °C`. */
export function takeApart(name: string, isUnit: (text: string) => boolean): HeaderName {
  const inBrackets = [...name.matchAll(BRACKETS)].map(([, inside = '']) => inside);
  const bracketed = inBrackets.find(isUnit);
  const bare = name.replace(BRACKETS, (_, inside: string) => (isUnit(inside) ? ' ' : ` ${inside} `));
  if (isUnit(name)) return { words: wordsOf(name), unit: name };
  if (bracketed !== undefined) return { words: wordsOf(bare), unit: bracketed };
  const [, before = '', after = ''] = /^(.*?)(?:\s*,\s*|[_\s]+|\s*\/\s*)([^\s,_]+)$/u.exec(bare.trim()) ?? [];
  // what stands last without brackets may be a word as well: `engine rpm`, `target lambda`, `time s`
  return {
    words: wordsOf(bare),
    unit: before.trim() !== '' && isUnit(after) && !FUEL.test(after) ? after : '',
  };
}

/** One spelling of words: `EngineSpeed`, `engine-speed` and `ENGINE SPEED` are `engine speed`. */
export function wordsOf(text: string): string {
  return (
    text
      .replace(/([a-z\d])([A-Z])/g, '$1 $2')
      .replace(/([A-Z]+)([A-Z][a-z])/g, '$1 $2')
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .toLowerCase()
      .replaceAll('λ', ' lambda ')
      .replaceAll('ß', 'ss')
      .replaceAll('ø', 'o')
      .replaceAll('æ', 'ae')
      .replaceAll('ł', 'l')
      .replace(/a\s*\/\s*f\b/g, 'afr')
      .replace(/([a-z])(\d)/g, '$1 $2')
      // words that are grown together: Kühlmitteltemperatur, Öldruck, lambdasonde, fuelpress
      .replace(
        /(?<=[a-z])(temperatur|temperatuur|druck|druk|tryck|trykk|drehzahl|spannung|anreicherung|korrektur|winkel|temp|press)\b/g,
        ' $1',
      )
      .replace(/\b(lambda|afr|oil|fuel|soll|ziel)(?=[a-z])/g, '$1 ')
      .replace(/(?<=[a-z])(lambda|soll)\b/g, ' $1')
      .replace(/[^\p{L}\d%]+/gu, ' ')
      .trim()
      .replace(/\s+/g, ' ')
  );
}
