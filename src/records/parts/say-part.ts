import { type Day, sayDay } from '../../core/time.ts';
import type { Coming, PartStanding } from './part.ts';

/** "4 on the shelf, 2 on order, due Fri 4 Dec, 2 missing": every count that is not nothing, the pressing ones first. */
export function sayStanding(standing: PartStanding, today: Day): string {
  const { toSortOut, out, coming, inHand, fitted, sentBack, missing, whereabouts, part } = standing;
  const here = whereabouts === 'in the box' ? 'in the box' : 'in hand';
  const counts = [
    toSortOut > 0 && `${toSortOut} to sort out`,
    out.length > 0 && `${sum(out)} out for work${sayWhen(out, 'due back', today)}`,
    coming.length > 0 && `${sum(coming)} on order${sayWhen(coming, 'due', today)}`,
    inHand > 0 && `${inHand} ${whereabouts === 'on the shelf' ? 'on the shelf' : here}`,
    fitted > 0 && `${fitted} fitted`,
    sentBack > 0 && `${sentBack} sent back`,
    missing > 0 && `${missing} missing`,
  ].filter((count) => count !== false);
  if (counts.length > 0) return counts.join(', ');
  return part.needed === 0 ? 'none needed' : 'nothing known';
}

function sayWhen(some: readonly Coming[], due: string, today: Day): string {
  const [soonest] = some.map(({ promisedOn }) => promisedOn).toSorted();
  if (soonest === undefined) return '';
  return soonest < today ? ', late' : `, ${due} ${sayDay(soonest, today)}`;
}

const sum = (some: readonly Coming[]): number => some.reduce((total, { quantity }) => total + quantity, 0);

/** Whether anything of it is later than promised. */
export const isLatePart = ({ coming, out }: PartStanding, today: Day): boolean =>
  [...coming, ...out].some(({ promisedOn }) => promisedOn < today);
