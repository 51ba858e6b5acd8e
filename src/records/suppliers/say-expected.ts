import { type Day, sayDay } from '../../core/time.ts';
import type { Expected } from './expected.ts';

/** "Mon 7 Dec, by Wed 9 Dec nine times in ten (2 of their orders, 14 of the team's)". */
export function sayExpected({ expectedOn, latestOn, orders, teamOrders }: Expected, today: Day): string {
  const range = latestOn === expectedOn ? '' : `, by ${sayDay(latestOn, today)} nine times in ten`;
  return `${sayDay(expectedOn, today)}${range} (${sayBasis(orders, teamOrders)})`;
}

/** On how many orders it rests. */
export function sayBasis(orders: number, teamOrders: number): string {
  if (teamOrders === 0) return 'nothing has come from anybody yet, so this is a guess';
  const others = teamOrders - orders;
  const own = orders === 0 ? 'none of their orders has come yet' : `${orders} of their orders`;
  if (others === 0) return own;
  return `${own}, ${others} of other suppliers`;
}
