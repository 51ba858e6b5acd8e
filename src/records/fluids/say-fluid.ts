import { sayIn } from '../../calc/units/say.ts';

/** "5.6 L"; below a tenth of a litre "80 cc". */
export function sayLitres(litres: number): string {
  return litres > 0 && litres < 0.1 ? sayIn(litres, 'cc', 2) : sayIn(litres, 'L', 3);
}
