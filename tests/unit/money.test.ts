import { describe, expect, it } from 'vitest';
import { isCountry } from '../../src/calendar/holidays.ts';
import { UserError } from '../../src/core/user-error.ts';
import { readMoney } from '../../src/phrases/money.ts';
import { decimalsOf, sayMoney } from '../../src/records/orders/say-order.ts';
import { dateLocale, homeCurrency } from '../../src/records/team/team.ts';

const read = (typed: string, home = 'GBP') => readMoney(typed, home, decimalsOf);

function refusal(typed: string, home = 'GBP'): string {
  try {
    return JSON.stringify(read(typed, home));
  } catch (error) {
    if (error instanceof UserError) return error.message;
    throw error;
  }
}

describe('a price as typed', () => {
  it.each([
    ['42.50', 'GBP', 4250, 'GBP'],
    ['42.5', 'GBP', 4250, 'GBP'],
    ['42', 'GBP', 4200, 'GBP'],
    ['42,50', 'EUR', 4250, 'EUR'],
    ['0.05', 'GBP', 5, 'GBP'],
    ['0', 'GBP', 0, 'GBP'],
    ['£42.50', 'EUR', 4250, 'GBP'],
    ['42,50 €', 'GBP', 4250, 'EUR'],
    ['EUR 1.234,50', 'GBP', 123_450, 'EUR'],
    ['1,234.50', 'GBP', 123_450, 'GBP'],
    ['1.234.567,89 EUR', 'GBP', 123_456_789, 'EUR'],
    ['1,234,567', 'GBP', 123_456_700, 'GBP'],
    ['12,34,567.50', 'INR', 123_456_750, 'INR'],
    ["CHF 1'234.50", 'GBP', 123_450, 'CHF'],
    ['1 234,50 kr', 'SEK', 123_450, 'SEK'],
    ['1\u00a0234,50 kr', 'NOK', 123_450, 'NOK'],
    ['1234,50 zł', 'GBP', 123_450, 'PLN'],
    ['gbp 12', 'EUR', 1200, 'GBP'],
    ['$12', 'GBP', 1200, 'USD'],
    ['$12', 'CAD', 1200, 'CAD'],
    ['$12', 'MXN', 1200, 'MXN'],
    ['$12', 'RSD', 1200, 'USD'],
    ['¥1200', 'GBP', 1200, 'JPY'],
    ['¥1200', 'CNY', 120_000, 'CNY'],
    ['¥12,000', 'JPY', 12_000, 'JPY'],
    ['KWD 1.250', 'KWD', 1250, 'KWD'],
    ['KWD 1.25', 'KWD', 1250, 'KWD'],
    ['25.000.000', 'IDR', 2_500_000_000, 'IDR'],
    ['42.567 JPY', 'GBP', 42_567, 'JPY'],
    ['8.05', 'GBP', 805, 'GBP'],
    ['1.15', 'GBP', 115, 'GBP'],
  ])('reads %j at home in %s as %i of %s', (typed, home, minor, currency) => {
    expect(read(typed, home)).toEqual({ minor, currency });
  });

  it.each([
    ['', 'is not a price'],
    ['cheap', 'is not a price'],
    ['-5', 'is not a price'],
    ['£5 EUR', 'is not a price'],
    ['XYZ 5', 'is not a price'],
    ['kr 5', 'is not a price'],
    ['1.2.3', 'is not a price'],
    ['1,23.45', 'is not a price'],
    ['12 50', 'is not a price'],
    ['5.', 'is not a price'],
    ['5,,5', 'is not a price'],
    ['99999999999', 'is not a price'],
    ['1.234', 'Is "1.234" 1234 or 1.234?'],
    ['€1,234', 'Is "€1,234" 1234 or 1.234?'],
    ['0.125', 'more decimals than the 2 of GBP'],
    ['42.56 JPY', 'has decimals and JPY has none'],
    ['JPY 12.50', 'has decimals and JPY has none'],
    ['KWD 1,250', 'Is "KWD 1,250" 1250 or 1.250?'],
  ])('refuses %j and says what to type', (typed, said) => {
    const message = refusal(typed);
    expect(message).toContain(said);
    expect(message).toMatch(/Type (it|thousands) .*Nothing was changed\.$/);
  });
});

describe('a price as said', () => {
  it.each([
    [4250, 'GBP', 'GBP 42.50'],
    [5, 'EUR', 'EUR 0.05'],
    [0, 'USD', 'USD 0.00'],
    [1200, 'JPY', 'JPY 1200'],
    [1250, 'KWD', 'KWD 1.250'],
    [100, 'HUF', 'HUF 1.00'],
  ])('says %i of %s as %s', (minor, currency, said) => expect(sayMoney({ minor, currency })).toBe(said));

  it('is read back as the same amount', () => {
    for (const currency of Intl.supportedValuesOf('currency')) {
      for (const minor of [0, 7, 1234, 99_999]) {
        expect(read(sayMoney({ minor, currency }), 'GBP')).toEqual({ minor, currency });
      }
    }
  });

  /** ISO 4217:2015, list one, column "minor unit": from memory, compared with Node's own where they agree. */
  it.each([
    ['GBP', 2],
    ['EUR', 2],
    ['HUF', 2],
    ['IDR', 2],
    ['JPY', 0],
    ['KRW', 0],
    ['ISK', 0],
    ['CLP', 0],
    ['XOF', 0],
    ['KWD', 3],
    ['BHD', 3],
    ['TND', 3],
    ['IQD', 3],
    ['CLF', 4],
  ])('%s has %i decimals', (currency, decimals) => expect(decimalsOf(currency)).toBe(decimals));
});

describe('the money of a country', () => {
  it.each([
    ['GB/ENG', 'GBP'],
    ['DE/BY', 'EUR'],
    ['HR', 'EUR'],
    ['BG', 'EUR'],
    ['US', 'USD'],
    ['CH/ZH', 'CHF'],
    ['LI', 'CHF'],
    ['CN', 'CNY'],
    ['IN', 'INR'],
    ['BR', 'BRL'],
    ['TR', 'TRY'],
    ['IS', 'ISK'],
    ['LS', 'LSL'],
  ])('in %s is %s', (country, currency) => expect(homeCurrency(country)).toBe(currency));

  it('is known for every country whose holidays are known', () => {
    const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];
    const countries = letters.flatMap((a) => letters.map((b) => a + b)).filter(isCountry);
    expect(countries.length).toBeGreaterThan(150);
    const known = Intl.supportedValuesOf('currency');
    for (const country of countries) expect(known, country).toContain(homeCurrency(country));
  });

  it('is asked for where it is not known', () => {
    expect(() => homeCurrency('ZZ')).toThrow('Type the price with its currency');
  });
});

describe('the dates of a country', () => {
  it.each([
    ['GB/ENG', 'en-GB'],
    ['FR', 'en-GB'],
    ['AU/NSW', 'en-GB'],
    ['IN', 'en-GB'],
    ['US', 'en-US'],
    ['DE/BY', 'de'],
    ['AT', 'de'],
    ['CH', 'de'],
    ['CA', null],
    ['JP', null],
    ['SE', null],
    ['PH', null],
    ['ZA', null],
  ])('in %s are read as %s', (country, locale) => expect(dateLocale(country)).toBe(locale));
});
