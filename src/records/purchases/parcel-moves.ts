import { type Day, sayDay } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import { again, chase, promise, receive } from '../orders/moves.ts';
import { type Condition, type Order, standing } from '../orders/order.ts';
import { sayWhat } from '../orders/say-order.ts';
import type { TeamRecord } from '../team-record.ts';

/** What of one line did not come as it should. */
export interface Exception {
  readonly order: Order;
  readonly how: 'missing' | Exclude<Condition, 'good'>;
  /** All that is still to come of it when left out. */
  readonly quantity?: number | undefined;
}

export interface ParcelReceipt {
  readonly exceptions: readonly Exception[];
  /** The day now promised for what is missing; the old one stands when left out. */
  readonly rest?: Day | undefined;
  readonly note?: string | undefined;
  readonly cameOn: Day;
  readonly byName: string;
}

type Moved = { readonly value: readonly Order[]; readonly said: string };

/**
 * Logs a whole parcel: everything still to come of its lines is here and good, but for the exceptions.
 *
 * @throws UserError 'already-done' when nothing is still to come, 'out-of-range' when more of a line is excepted than is
 * still to come of it, 'bad-input' when nothing of the parcel would have come.
 */
export function receiveParcel(record: TeamRecord, lines: readonly Order[], receipt: ParcelReceipt): Moved {
  const open = awaited(lines);
  const { exceptions, rest, note, cameOn, byName } = receipt;
  let came = 0;
  for (const line of open) {
    const own = exceptions.filter(({ order }) => order.id === line.id);
    const { outstanding } = standing(line);
    const count = (how: Exception['how']): number =>
      own.filter((one) => one.how === how).reduce((sum, { quantity }) => sum + (quantity ?? outstanding), 0);
    const [missing, wrong, damaged] = [count('missing'), count('wrong'), count('damaged')];
    const good = outstanding - missing - wrong - damaged;
    if (good < 0) throw tooMany(line, outstanding, outstanding - good);
    came += outstanding - missing;
    for (const [quantity, condition] of [
      [good, 'good'],
      [wrong, 'wrong'],
      [damaged, 'damaged'],
    ] as const) {
      if (quantity > 0)
        receive(record, again(record, line), { quantity, condition, note, rest, cameOn, byName });
    }
  }
  if (came === 0) {
    throw new UserError(
      'bad-input',
      'Then nothing of this parcel has come. Nothing was changed. Give it a new date instead: /order date.',
    );
  }
  return { value: lines.map((line) => again(record, line)), said: sayArrival(open, exceptions) };
}

/** @throws UserError when nothing is still to come, or all of it is promised for that day already. */
export function promiseParcel(record: TeamRecord, lines: readonly Order[], on: Day, today: Day): Moved {
  const moved = awaited(lines).filter(({ promisedOn }) => promisedOn !== on);
  if (moved.length === 0) {
    throw new UserError(
      'already-done',
      `All of it is promised for ${sayDay(on, today)} already. Nothing was changed.`,
    );
  }
  for (const line of moved) promise(record, line, on, today);
  return {
    value: lines.map((line) => again(record, line)),
    said: `${names(moved)} now promised for ${sayDay(on, today)}`,
  };
}

/** @throws UserError when nothing is still to come. */
export function chaseParcel(record: TeamRecord, lines: readonly Order[], today: Day): Moved {
  const open = awaited(lines);
  for (const line of open) chase(record, line, today);
  return { value: lines.map((line) => again(record, line)), said: `${names(open)} chased` };
}

/** Lines of which something is still to come. @throws UserError 'already-done' when there are none. */
function awaited(lines: readonly Order[]): readonly Order[] {
  const open = lines.filter((line) => standing(line).state === 'open');
  if (open.length > 0) return open;
  const last = lines.flatMap(({ arrivals }) => arrivals).at(-1);
  const by = last === undefined ? '' : `, logged by ${last.byName}`;
  throw new UserError('already-done', `Nothing of this parcel is still to come${by}. Nothing was changed.`);
}

const names = (lines: readonly Order[]): string =>
  lines
    .map((line) => `#${line.id} ${sayWhat({ what: line.what, quantity: standing(line).outstanding })}`)
    .join(', ');

function sayArrival(open: readonly Order[], exceptions: readonly Exception[]): string {
  const but = exceptions.map(({ order, how, quantity }) => {
    const count = quantity ?? standing(order).outstanding;
    return `${sayWhat({ what: order.what, quantity: count })} ${how}`;
  });
  return `${names(open)} arrived${but.length === 0 ? '' : `, but ${but.join(', ')}`}`;
}

const tooMany = (line: Order, outstanding: number, named: number): UserError =>
  new UserError(
    'out-of-range',
    `Only ${outstanding} of #${line.id} ${line.what} ${outstanding === 1 ? 'is' : 'are'} still to come, and ${named} were named. Nothing was changed.`,
  );
