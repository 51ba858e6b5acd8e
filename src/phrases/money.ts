import { UserError } from '../core/user-error.ts';

/** An amount of money in its currency's smallest unit. */
export interface MoneyRead {
  readonly minor: number;
  /** ISO 4217. */
  readonly currency: string;
}

/** Signs that mean one currency wherever the crew is; others, like `$` and `kr`, mean the crew's own or nothing. */
const SIGNS: Readonly<Record<string, string>> = {
  $: 'USD',
  '£': 'GBP',
  '€': 'EUR',
  '¥': 'JPY',
  zł: 'PLN',
  kč: 'CZK',
};

const SIGN = String.raw`\p{Sc}|zł|kč|kr|[a-z]{3}`;
const PRICE = new RegExp(String.raw`^(${SIGN})?\s*(\d[\d.,'’\s]*)\s*(${SIGN})?$`, 'iu');

/** In units of the currency: far more than any part costs in any of them. */
const MOST = 10_000_000_000;

/**
 * Reads a price as typed: `£42.50`, `42,50 €`, `EUR 1.234,50`, `42.5`. A bare number is in the crew's own currency, as
 * is a sign that its currency shares with others.
 *
 * @param decimals how many decimals a currency has (ISO 4217)
 * @throws UserError when it is no amount, has more decimals than its currency, or a separator could be either kind.
 */
export function readMoney(typed: string, home: string, decimals: (currency: string) => number): MoneyRead {
  const text = typed.trim();
  const [, before, digits, after] = PRICE.exec(text) ?? [];
  if (digits === undefined || (before && after)) throw notMoney(text);
  const currency = currencyOf(before ?? after, home);
  const places = decimals(currency);
  const { whole, rest } = partsOf(digits.trim(), places, text);
  if (rest.length > places) throw tooFine(text, currency, places);
  const minor = Number(whole) * 10 ** places + Number(rest.padEnd(places, '0'));
  if (minor > MOST * 10 ** places) throw notMoney(text);
  return { minor, currency };
}

function currencyOf(mark: string | undefined, home: string): string {
  if (mark === undefined) return home;
  const sign = mark.toLowerCase();
  if (sign === signOf(home).toLowerCase()) return home;
  const code = SIGNS[sign] ?? mark.toUpperCase();
  if (!Intl.supportedValuesOf('currency').includes(code)) throw notMoney(mark);
  return code;
}

/** The sign a currency is written with at home: `$` for the Canadian dollar. */
function signOf(currency: string): string {
  const format = new Intl.NumberFormat('en', {
    style: 'currency',
    currency,
    currencyDisplay: 'narrowSymbol',
  });
  return format.formatToParts(0).find(({ type }) => type === 'currency')?.value ?? currency;
}

/** Digits in front of and behind the decimal separator. */
interface Parts {
  readonly whole: string;
  readonly rest: string;
}

/** The last of two different separators is the decimal one; a lone one with three digits after it could be either. */
function partsOf(digits: string, places: number, typed: string): Parts {
  const last = Math.max(digits.lastIndexOf('.'), digits.lastIndexOf(','));
  const mark = digits[last];
  if (mark === undefined) return { whole: ungrouped(digits, typed), rest: '' };
  const whole = digits.slice(0, last);
  const rest = digits.slice(last + 1);
  if (!/^\d+$/.test(rest)) throw notMoney(typed);
  if (whole.includes(mark) || (places === 0 && /^\d{1,3}$/.test(whole) && rest.length === 3)) {
    return { whole: ungrouped(digits, typed), rest: '' };
  }
  const couldBeThousands = rest.length === 3 && /^[1-9]\d{0,2}$/.test(whole);
  if (couldBeThousands && !(places === 3 && mark === '.')) {
    throw new UserError(
      'bad-input',
      `Is "${typed}" ${whole}${rest} or ${whole}.${rest}? Type thousands without a separator. Nothing was changed.`,
    );
  }
  return { whole: ungrouped(whole, typed), rest };
}

/** Whole units without what parts their thousands: the same sign throughout, groups of three, or of two as in India. */
function ungrouped(digits: string, typed: string): string {
  if (/^\d+$/.test(digits)) return digits;
  const [separator] = /\D/.exec(digits) ?? [''];
  const groups = digits.split(separator);
  const [first = '', ...others] = groups;
  const fair =
    /^\d{1,3}$/.test(first) &&
    others.slice(0, -1).every((group) => /^\d{2,3}$/.test(group)) &&
    /^\d{3}$/.test(others.at(-1) ?? '');
  if (!fair) throw notMoney(typed);
  return groups.join('');
}

const notMoney = (typed: string): UserError =>
  new UserError(
    'bad-input',
    `"${typed}" is not a price. Type it like 42.50 or EUR 42.50. Nothing was changed.`,
  );

const tooFine = (typed: string, currency: string, places: number): UserError =>
  new UserError(
    'bad-input',
    places === 0
      ? `"${typed}" has decimals and ${currency} has none. Type it in whole ${currency}. Nothing was changed.`
      : `"${typed}" has more decimals than the ${places} of ${currency}. Type it with those. Nothing was changed.`,
  );
