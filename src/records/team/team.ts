import { UserError } from '../../core/user-error.ts';
import { currencyOfCountry } from './currencies.ts';

/** How this team lives: its clock, its holidays, its mornings. */
export interface TeamSettings {
  /** IANA time zone. */
  readonly zone: string;
  /** Country, and region after a slash, for public holidays: `GB/ENG`, `DE/BY`, `US`. */
  readonly country: string;
  /** Wall time of the morning message, `HH:MM`. */
  readonly morning: string;
}

export const FIRST_SETTINGS: TeamSettings = { zone: 'Europe/London', country: 'GB/ENG', morning: '08:30' };

/**
 * How dates are read: `5/12` is 5 December to a British crew, May 12 to an American one. Null where a country writes
 * the year or the month first, or nobody can tell: the reader then asks.
 */
export function dateLocale(country: string): 'en-GB' | 'en-US' | 'de' | null {
  const [land = ''] = country.split('/');
  if (land === 'US') return 'en-US';
  if (['DE', 'AT', 'CH', 'LI'].includes(land)) return 'de';
  return writesDayFirst(land) ? 'en-GB' : null;
}

/** As Unicode CLDR has it for the country's own language. */
function writesDayFirst(land: string): boolean {
  const { language } = new Intl.Locale('und', { region: land }).maximize();
  const format = new Intl.DateTimeFormat(`${language}-${land}`, {
    calendar: 'gregory',
    dateStyle: 'short',
    timeZone: 'UTC',
  });
  return (
    format.formatToParts(0).find(({ type }) => type === 'day' || type === 'month' || type === 'year')
      ?.type === 'day'
  );
}

/**
 * The money meant when a price comes without a currency. ISO 4217.
 *
 * @throws UserError where a country's currency is not known.
 */
export function homeCurrency(country: string): string {
  const [land = ''] = country.split('/');
  const known = currencyOfCountry(land);
  if (known !== undefined) return known;
  throw new UserError(
    'bad-input',
    `What money is used in ${country} is not known here. Type the price with its currency, like EUR 42.50. Nothing was changed.`,
  );
}
