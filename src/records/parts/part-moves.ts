import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import { receive } from '../orders/moves.ts';
import { byUrgency, type Order, standing } from '../orders/order.ts';
import { sayWhat } from '../orders/say-order.ts';
import type { TeamRecord } from '../team-record.ts';
import { countPart, type PartCount } from './count-part.ts';
import type { KnownPart, PartMove, Place } from './part-store.ts';
import { ordersOf } from './standings.ts';

/** Who says it, and when. */
export interface Said {
  readonly today: Day;
  readonly byName: string;
  readonly note?: string | undefined;
}

/** Where what the record did not have in hand came from: of its order just now, or it was here anyway. */
export const CAME = ['order', 'other'] as const;
export type Came = (typeof CAME)[number];

type Moved = { readonly value: KnownPart; readonly said: string };

/** How many of a part are where, by the record. */
export function countOf(record: TeamRecord, part: KnownPart): PartCount {
  return countPart(part.needed, ordersOf(record, part), record.parts.movesOf(part.id));
}

/**
 * Says how many are in hand, and where they lie. Left out, the number is what was in hand and what was missing.
 *
 * @throws UserError 'which-one' when more are here than the record has and some are on order: did those come?
 */
export function countIn(
  record: TeamRecord,
  part: KnownPart,
  { quantity, place, came }: { quantity?: number | undefined; place: Place; came?: Came | undefined },
  by: Said,
): Moved {
  const before = countOf(record, part);
  const now = quantity ?? before.inHand + before.missing;
  if (now > before.inHand) makeUp(record, part, now, came, by);
  const after = countOf(record, part);
  record.parts.say({ ...moveOf(part, 'counted', now - after.inHand, by), place, hadCome: after.hadCome });
  const where = place === 'shelf' ? 'on the shelf' : 'in the box';
  const was = before.inHand === now ? '' : `, was ${before.inHand}`;
  return { value: part, said: `${part.name}: ${now} in hand, ${where}${was}` };
}

/**
 * Says that so many are fitted. Left out, as many as are in hand and still needed.
 *
 * @throws UserError 'which-one' when fewer are in hand and some are on order: did those come? 'already-done' when no
 * number is said and all that are needed are fitted.
 */
export function fit(
  record: TeamRecord,
  part: KnownPart,
  { quantity, came }: { quantity?: number | undefined; came?: Came | undefined },
  by: Said,
): Moved {
  const { inHand, fitted } = countOf(record, part);
  if (quantity === undefined && inHand === 0 && fitted > 0 && fitted >= part.needed) {
    const last = record.parts.movesOf(part.id).findLast(({ kind }) => kind === 'fitted');
    throw new UserError(
      'already-done',
      `All ${fitted} of ${part.name} that are needed are fitted${last ? `, logged by ${last.byName}` : ''}, and none is in hand. Nothing was changed. Say a quantity if more went in.`,
    );
  }
  const wanted = Math.max(1, part.needed - fitted);
  const count = quantity ?? (inHand > 0 ? Math.min(inHand, wanted) : wanted);
  makeUp(record, part, count, came, by);
  record.parts.say(moveOf(part, 'fitted', count, by));
  const without = inHand >= count || came === 'order' ? '' : ', though the record had fewer in hand';
  return { value: part, said: `${sayWhat({ what: part.name, quantity: count })} fitted${without}` };
}

/** @throws UserError 'out-of-range' when fewer are fitted. */
export function takeOff(
  record: TeamRecord,
  part: KnownPart,
  { quantity, keep }: { quantity?: number | undefined; keep?: boolean | undefined },
  by: Said,
): Moved {
  const { fitted } = countOf(record, part);
  const count = quantity ?? fitted;
  if (count > fitted || fitted === 0) throw only(part, fitted, 'fitted');
  const kept = keep ?? !part.singleUse;
  record.parts.say(moveOf(part, kept ? 'taken off' : 'used up', count, by));
  const becomes = kept ? 'kept' : 'used up, to be renewed';
  return { value: part, said: `${sayWhat({ what: part.name, quantity: count })} taken off, ${becomes}` };
}

/** @throws UserError 'out-of-range' when fewer are in hand. */
export function sendBack(
  record: TeamRecord,
  part: KnownPart,
  { quantity }: { quantity?: number | undefined },
  by: Said,
): Moved {
  const { inHand, toSortOut } = countOf(record, part);
  const count = quantity ?? inHand;
  if (inHand === 0 && toSortOut > 0) {
    throw new UserError(
      'not-now',
      `${toSortOut} of ${part.name} came wrong or damaged and must be sorted out: /order settle with outcome:refunded sends them back. Nothing was changed.`,
    );
  }
  if (count > inHand || inHand === 0) throw only(part, inHand, 'in hand');
  record.parts.say(moveOf(part, 'sent back', count, by));
  return { value: part, said: `${sayWhat({ what: part.name, quantity: count })} sent back` };
}

/**
 * Sees to it that so many are in hand by the record: what is on order is logged as arrived if it came, anything else was
 * here anyway.
 *
 * @throws UserError 'which-one' when some are on order and nobody has said whether they came.
 */
export function makeUp(
  record: TeamRecord,
  part: KnownPart,
  wanted: number,
  came: Came | undefined,
  by: Said,
): void {
  const { inHand, hadCome } = countOf(record, part);
  let short = wanted - inHand;
  if (short <= 0) return;
  const open = ordersOf(record, part).filter(isComing).toSorted(byUrgency);
  const [first] = open;
  if (first !== undefined && came === undefined) throw didItCome(part, first, inHand);
  for (const order of came === 'order' ? open : []) {
    const quantity = Math.min(short, standing(order).outstanding);
    if (quantity === 0) continue;
    receive(record, order, { quantity, condition: 'good', cameOn: by.today, byName: by.byName });
    short -= quantity;
  }
  if (short > 0) record.parts.say({ ...moveOf(part, 'counted', short, by), hadCome });
}

const isComing = (order: Order): boolean =>
  order.kind === 'goods' && !order.cancelled && standing(order).outstanding > 0;

function didItCome(part: KnownPart, { id, supplier }: Order, inHand: number): UserError {
  const here =
    inHand === 0 ? `No ${part.name} is` : `Only ${inHand} of ${part.name} ${inHand === 1 ? 'is' : 'are'}`;
  return new UserError(
    'which-one',
    `${here} in hand by the record, and #${id} from ${supplier} is still to come. Has it come?`,
    {
      field: 'came',
      choices: [
        { label: 'Yes, it came', value: 'order' },
        { label: 'No, this was here anyway', value: 'other' },
      ],
    },
  );
}

export function moveOf(
  part: KnownPart,
  kind: PartMove['kind'],
  quantity: number,
  by: Said,
): Omit<PartMove, 'id'> {
  return {
    partId: part.id,
    kind,
    quantity,
    place: null,
    hadCome: 0,
    saidOn: by.today,
    byName: by.byName,
    note: by.note ?? null,
  };
}

const only = (part: KnownPart, count: number, where: string): UserError =>
  new UserError(
    'out-of-range',
    count === 0
      ? `No ${part.name} is ${where} by the record. Nothing was changed.`
      : `Only ${count} of ${part.name} ${count === 1 ? 'is' : 'are'} ${where} by the record. Nothing was changed.`,
  );
