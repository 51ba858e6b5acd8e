/** Words for a switch, in the languages loggers are read in. */
const ON = /^(on|true|yes|y|active|aktiv|ein|ja|oui|si|sí|sì|vrai|wahr|ok|ready|valid|gut|high)$/i;
const OFF = /^(off|false|no|n|inactive|inaktiv|aus|nein|non|faux|falsch|nee|nej|low)$/i;

const GROUPED_DOT = /^[-+]?\d{1,3}(\.\d{3})+(,\d+)?$/;
const GROUPED_COMMA = /^[-+]?\d{1,3}(,\d{3})+(\.\d+)?$/;
const NUMBER = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;
const NUMBER_COMMA = /^[-+]?(\d+,\d*|,\d+)(e[-+]?\d+)?$/i;

/** The number in a cell; NaN for a blank, a dash or a word. A unit behind it is taken off. */
export function numberIn(cell: string, decimalComma: boolean): number {
  // by far most cells of a log are plain: they need no looking at
  const plain = cell === '' ? Number.NaN : Number(cell);
  if (!Number.isNaN(plain)) return cell.trim() === '' ? Number.NaN : plain;
  const text = cell.trim().replace('\u2212', '-').replaceAll("'", '');
  if (decimalComma && NUMBER_COMMA.test(text)) return Number(text.replace(',', '.'));
  if (decimalComma && GROUPED_DOT.test(text)) return Number(text.replaceAll('.', '').replace(',', '.'));
  if (!decimalComma && GROUPED_COMMA.test(text)) return Number(text.replaceAll(',', ''));
  if (NUMBER_COMMA.test(text)) return Number(text.replace(',', '.'));
  const bare = /^([-+]?[\d.,]+)\s*[°%a-z/µ]+\d?$/i.exec(text)?.[1];
  if (bare !== undefined && bare !== text) return numberIn(bare, decimalComma);
  return Number.NaN;
}

/** A switch: 1, 0, or NaN for what is neither. */
export function switchIn(cell: string, decimalComma: boolean): number {
  const text = cell.trim();
  if (ON.test(text)) return 1;
  if (OFF.test(text)) return 0;
  const value = numberIn(text, decimalComma);
  return Number.isNaN(value) ? value : value === 0 ? 0 : 1;
}

/** Whether a cell holds a reading or says that there is none, rather than a name. */
export function isReading(cell: string): boolean {
  const text = cell.trim();
  if (text === '' || NUMBER.test(text) || NUMBER_COMMA.test(text)) return true;
  if (GROUPED_COMMA.test(text) || GROUPED_DOT.test(text)) return true;
  if (/^(nan|n\/?a|#n\/a|inf|-inf|null|none|-+|\?+|\*+|err(or)?)$/i.test(text)) return true;
  if (ON.test(text) || OFF.test(text)) return true;
  return /^[-+]?\d[\d\s:./TZ,+-]*(am|pm)?$/i.test(text) || /^\d+([.,]\d+)?\s?[°%a-z/]{1,5}$/i.test(text);
}
