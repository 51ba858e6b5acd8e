import { readDecimal } from './quantity/decimal.ts';
import { tidy } from './quantity/tidy.ts';

/** Fuel per work as typed, in the system it was typed in. */
export type FuelUseText =
  | { readonly verdict: 'read'; readonly value: number; readonly unit: 'g/kWh' | 'lb/hp·h' }
  | { readonly verdict: 'refuse'; readonly why: string };

/** What would be read. */
export const FUEL_USE_EXAMPLES = '0.55 lb/hp·h or 335 g/kWh';

/** Below this it can only be pounds per horsepower and hour, above the next only grams per kilowatt hour. */
const POUNDS_BELOW = 2;
const GRAMS_ABOVE = 100;

/** Fuel per work (BSFC): `0.55`, `0,55 lb/hp h`, `335 g/kWh`. Without a unit the size says which it is. */
export function readFuelUse(typed: string): FuelUseText {
  const text = tidy(typed);
  const groups = /^(?<number>\d*[.,]?\d+) ?(?<unit>[\p{L}/().*· -]*)$/u.exec(text)?.groups;
  const value = readDecimal(groups?.['number'] ?? '')?.value;
  if (groups === undefined || value === undefined) return refuse(typed);
  const unit = (groups['unit'] ?? '').replace(/[^\p{L}/]/gu, '');
  if (/^(?:lbs?\/?(?:b?hp)\/?(?:h|hr|hour)s?)$/u.test(unit))
    return { verdict: 'read', value, unit: 'lb/hp·h' };
  if (/^g\/?kwh?$/u.test(unit)) return { verdict: 'read', value, unit: 'g/kWh' };
  if (unit !== '') return refuse(typed);
  if (value <= POUNDS_BELOW) return { verdict: 'read', value, unit: 'lb/hp·h' };
  return value >= GRAMS_ABOVE ? { verdict: 'read', value, unit: 'g/kWh' } : refuse(typed);
}

const refuse = (typed: string): FuelUseText => ({
  verdict: 'refuse',
  why: `"${typed.trim()}" is no fuel per work. What would be read: ${FUEL_USE_EXAMPLES}.`,
});
