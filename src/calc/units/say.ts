import { gaugeName } from '../../calc/electrics/wire-gauge.ts';
import { fromBase } from './convert.ts';
import { type UnitId, units } from './table.ts';

/** What a workshop instrument can show. */
const USUAL_FIGURES = 4;
/** From here on the whole part is grouped in threes. */
const GROUPED_FROM = 10_000;
/** What writes a number from here on as 1e21. */
const LARGEST = 1e21;
/** Joins the groups of a long number, as the SI brochure has it, and never breaks at the end of a line. */
const THIN = '\u202f';
/** Lifts a half that binary keeps a hair too low: 273.15 is rounded to 273.2, as on paper. */
const HALF_UP = 1 + 4 * Number.EPSILON;
const GLUED: ReadonlySet<string> = new Set(['°', '′', '″']);

/**
 * Units that are counted in thousands as often as in thousandths: behind a point, three digits would be taken for
 * thousands by whoever writes them so, and get no third decimal.
 */
export const COUNTED_IN_THOUSANDS: ReadonlySet<UnitId> = new Set<UnitId>([
  ...([
    'm',
    'km',
    'mi',
    'rpm',
    'kg',
    'g',
    'lb',
    'N',
    'lbf',
    'N.m',
    'W',
    'kW',
    'hp',
    'PS',
    'mV',
    'ohm',
  ] as const),
  ...([
    'degC',
    'degF',
    'kgf',
    'Pa',
    'kPa',
    'hPa',
    'mbar',
    'psi',
    'mmHg',
    'cc',
    'mL',
    'cc/min',
    'L/h',
    'cfm',
  ] as const),
]);

/**
 * A number for people: rounded to significant figures, never to less than its whole part, no exponent, no trailing
 * zeros, a true minus, and thin spaces between thousands from 10 000 on.
 *
 * @param mostDecimals further digits are not shown.
 */
export function sayNumber(value: number, figures: number = USUAL_FIGURES, mostDecimals = 12): string {
  if (!Number.isFinite(value)) return 'no number';
  const size = Math.abs(value);
  if (size >= LARGEST) return `${value < 0 ? '−' : ''}more than 10²¹`;
  const wholeDigits = size < 1 ? 0 : Math.floor(Math.log10(size)) + 1;
  const leadingZeros = size > 0 && size < 1 ? Math.floor(-Math.log10(size)) : 0;
  const decimals = Math.min(Math.max(figures - wholeDigits + leadingZeros, 0), mostDecimals);
  const [whole = '0', rest = ''] = (size * HALF_UP).toFixed(decimals).split('.');
  const kept = rest.replace(/0+$/u, '');
  const grouped = Number(whole) < GROUPED_FROM ? whole : whole.replace(/\B(?=(\d{3})+$)/gu, THIN);
  const text = kept === '' ? grouped : `${grouped}.${kept}`;
  return value < 0 && Number(`${whole}.${rest}`) !== 0 ? `−${text}` : text;
}

/** A figure with its unit's sign: "115.2 N·m", "90 °C", "12.5°", "2/0 AWG". What is said is read back as the same. */
export function sayFigure(figure: number, unit: UnitId, figures: number = USUAL_FIGURES): string {
  const { sign, scale } = units[unit];
  if (scale.kind === 'wire-gauge') return `${sayGauge(figure)} ${sign}`;
  const three = COUNTED_IN_THOUSANDS.has(unit) && Math.abs(figure) >= 1 && Math.abs(figure) < 1000;
  const number = sayNumber(figure, figures, three && decimalsOf(figure, figures) === 3 ? 2 : 12);
  if (sign === '') return number;
  return GLUED.has(sign) ? `${number}${sign}` : `${number} ${sign}`;
}

/**
 * A figure to its last digit, to be typed again: "1.2340 km", since three digits behind a point would be asked about.
 *
 * Valid: to twelve significant figures.
 */
export function sayExactly(figure: number, unit: UnitId): string {
  const { sign, scale } = units[unit];
  if (scale.kind === 'wire-gauge') return sayFigure(figure, unit);
  const number = sayNumber(figure, 12);
  const safe = /\.\d{3}$/u.test(number) ? `${number}0` : number;
  return GLUED.has(sign) ? `${safe}${sign}` : `${safe} ${sign}`.trim();
}

/** A value in the base unit of its dimension, said in another unit of it. @throws UserError as `fromBase`. */
export function sayIn(base: number, unit: UnitId, figures: number = USUAL_FIGURES): string {
  return sayFigure(fromBase(base, unit), unit, figures);
}

const decimalsOf = (figure: number, figures: number): number =>
  (sayNumber(figure, figures).split('.')[1] ?? '').length;

function sayGauge(gaugeNumber: number): string {
  const nearest = Math.round(gaugeNumber);
  return Math.abs(gaugeNumber - nearest) < 1e-6 ? gaugeName(nearest) : sayNumber(gaugeNumber, 3);
}
