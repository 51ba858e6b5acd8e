import { UserError } from '../core/user-error.ts';

/** An amount of money in its currency's smallest unit. */
export interface MoneyRead {
  readonly minor: number;
  /** ISO 4217. */
  readonly currency: string;
}

const SYMBOLS: Readonly<Record<string, string>> = {
  '£': 'GBP',
  '€': 'EUR',
  '¥': 'JPY',
  zł: 'PLN',
  kč: 'CZK',
};

/** More than any part costs; past it a separator was misread. */
const MOST = 10_000_000;

/**
 * Reads a price as typed: `£42.50`, `42,50 €`, `EUR 1.234,50`, `42.5`. A bare number is in the crew's own currency, as
 * is `$` where that currency is a dollar.
 *
 * @param decimals how many decimals a currency has (ISO 4217)
 * @throws UserError when it is no amount, or a separator could be decimal or thousands.
 */
export function readMoney(typed: string, home: string, decimals: (currency: string) => number): MoneyRead {
  const text = typed.trim();
  const match = /^(\p{Sc}|zł|kč|[a-z]{3})?\s*(\d[\d.,'\s]*)\s*(\p{Sc}|zł|kč|[a-z]{3})?$/iu.exec(text);
  const [, before, digits = '', after] = match ?? [];
  if (!match || (before && after)) throw notMoney(text);
  const currency = currencyOf(before ?? after, home);
  const amount = plainNumber(digits.trim(), text);
  const minor = Math.round(amount * 10 ** decimals(currency));
  if (!(minor >= 0 && amount <= MOST)) throw notMoney(text);
  return { minor, currency };
}

function currencyOf(mark: string | undefined, home: string): string {
  if (mark === undefined) return home;
  if (mark === '$') return home.endsWith('D') ? home : 'USD';
  const code = SYMBOLS[mark.toLowerCase()] ?? mark.toUpperCase();
  if (!Intl.supportedValuesOf('currency').includes(code)) throw notMoney(mark);
  return code;
}

/** The last of two different separators is the decimal one; a lone one with three digits after it could be either. */
function plainNumber(digits: string, typed: string): number {
  const spaceless = digits.replace(/['\s]/g, '');
  const separators = [...new Set(spaceless.replace(/\d/g, ''))];
  if (separators.length === 2) {
    const decimal = spaceless[Math.max(spaceless.lastIndexOf('.'), spaceless.lastIndexOf(','))];
    return Number(spaceless.replaceAll(decimal === '.' ? ',' : '.', '').replace(',', '.'));
  }
  const [separator] = separators;
  if (separator === undefined) return Number(spaceless);
  const parts = spaceless.split(separator);
  if (parts.length > 2)
    return parts.slice(1).every(({ length }) => length === 3) ? Number(parts.join('')) : Number.NaN;
  if (parts[1]?.length === 3) {
    throw new UserError(
      'bad-input',
      `Is "${typed}" thousands or decimals? Type it without the separator. Nothing was changed.`,
    );
  }
  return Number(parts.join('.'));
}

const notMoney = (typed: string): UserError =>
  new UserError(
    'bad-input',
    `"${typed}" is not a price. Type it like 42.50 or EUR 42.50. Nothing was changed.`,
  );
