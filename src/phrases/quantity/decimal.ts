/** A number as typed: its value and half of its last digit, which is the least it can be out by. */
export interface Decimal {
  readonly value: number;
  readonly halfDigit: number;
  /** The other value it could have, when a comma can be a decimal sign or a thousands sign. */
  readonly orElse?: number;
  /** The value it has where people group thousands by a point: `1.250` is 1250 there. */
  readonly grouped?: number;
}

/**
 * Reads one number without its sign or unit: `21.9`, `21,9`, `.357`, `1.234,5`, `1 234,5`, `1'000`, `1.2e-3`.
 *
 * Two different separators: the last is the decimal sign. A comma with exactly three digits after it can be either,
 * unless a zero leads; a point is taken as the decimal sign. Returns null for anything else, such as `1,5,5`.
 */
export function readDecimal(text: string): Decimal | null {
  const exponent = /^(.*?)e([+-]?\d{1,3})$/iu.exec(text);
  const mantissa = exponent?.[1] ?? text;
  const scale = 10 ** Number(exponent?.[2] ?? 0);
  const plain = (whole: string, decimals: string): Decimal => ({
    // as one literal, so that 1.2e-3 is the nearest number to it and no product of two
    value: Number(`${whole || '0'}.${decimals || '0'}e${exponent?.[2] ?? '0'}`),
    halfDigit: (10 ** -decimals.length / 2) * scale,
  });
  if (/^\d+$/u.test(mantissa)) return plain(mantissa, '');
  const single = /^(\d*)([.,])(\d+)$/u.exec(mantissa);
  if (single !== null) {
    const [, whole = '', sign, decimals = ''] = single;
    const read = plain(whole, decimals);
    const either = decimals.length === 3 && /^[1-9]\d{0,2}$/u.test(whole);
    if (!either) return read;
    const thousands = Number(whole + decimals) * scale;
    return sign === ',' ? { ...read, orElse: thousands } : { ...read, grouped: thousands };
  }
  const grouped = /^(\d{1,3}(?:([ '.,])\d{3})(?:\2\d{3})*)(?:([.,])(\d+))?$/u.exec(mantissa);
  if (grouped === null) return null;
  const [, digits = '', group, sign, decimals = ''] = grouped;
  if (sign !== undefined && sign === group) return null;
  return plain(digits.replace(/\D/gu, ''), decimals);
}

/** Whether a/b is how a fraction of an inch is written: proper, over a power of two up to 64. */
export function isInchFraction(numerator: number, denominator: number): boolean {
  return numerator > 0 && numerator < denominator && [2, 4, 8, 16, 32, 64].includes(denominator);
}
