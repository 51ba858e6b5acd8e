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

/** How dates are read: `5/12` is 5 December to a British crew, May 12 to an American one, a question to a German one. */
export function dateLocale(country: string): 'en-GB' | 'en-US' | 'de' {
  const [land] = country.split('/');
  if (land === 'US') return 'en-US';
  return land === 'DE' || land === 'AT' || land === 'CH' ? 'de' : 'en-GB';
}

/** The money meant when a price comes without a currency. ISO 4217. */
export function homeCurrency(country: string): string {
  const [land = ''] = country.split('/');
  const known: Readonly<Record<string, string>> = {
    GB: 'GBP',
    US: 'USD',
    CH: 'CHF',
    CA: 'CAD',
    AU: 'AUD',
    NZ: 'NZD',
    JP: 'JPY',
    SE: 'SEK',
    NO: 'NOK',
    DK: 'DKK',
    PL: 'PLN',
    CZ: 'CZK',
    HU: 'HUF',
    ZA: 'ZAR',
  };
  return known[land] ?? 'EUR';
}
