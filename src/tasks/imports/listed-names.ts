import type { Hand } from '../../bot/hand.ts';
import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import type { Order } from '../../records/orders/order.ts';
import { place, type Wanted } from '../../records/orders/place.ts';
import { isSlip, partOrNew } from '../../records/parts/find-part.ts';
import { supplierOrNew } from '../../records/suppliers/find-supplier.ts';
import { likeNames, plain } from '../../records/suppliers/supplier.ts';
import { calendarsOf } from '../../records/suppliers/supplier-days.ts';
import type { TeamRecord } from '../../records/team-record.ts';

/** A build's number before there is a build: it holds nothing. */
const NO_BUILD = 0;

/** What a line names. */
export interface Named {
  readonly what: string;
  readonly supplier: string;
}

/**
 * Looks at the names of one line after the other: what is nearly the name of something on record, or of an earlier line, would
 * split its history in two, so it is asked about, not guessed at.
 *
 * @returns for each line why it cannot be written down as it stands; undefined where it can
 */
export function openNameCheck(
  record: TeamRecord,
  buildId: number | undefined,
): (line: Named) => string | undefined {
  const suppliers: string[] = [];
  const parts: string[] = [];
  return ({ what, supplier }) =>
    problemOf(supplier, suppliers, (name) => supplierOrNew(record, name), likeNames) ??
    problemOf(what, parts, (name) => partOrNew(record, buildId ?? NO_BUILD, name), slipsOf);
}

const slipsOf = (name: string, seen: readonly string[]): readonly string[] =>
  seen.filter((one) => isSlip(one, name));

function problemOf(
  typed: string,
  seen: string[],
  find: (name: string) => { readonly known?: object },
  like: (name: string, seen: readonly string[]) => readonly string[],
): string | undefined {
  try {
    if (find(typed).known !== undefined) return undefined;
  } catch (error) {
    if (!(error instanceof UserError)) throw error;
    return `${error.message} Write the known name, or +${typed} for a new one.`;
  }
  const name = typed.replace(/^\+/, '').trim();
  if (seen.some((one) => plain(one) === plain(name))) return undefined;
  const [close] = typed.startsWith('+') ? [] : like(name, seen);
  if (close !== undefined) {
    return `An earlier line says "${close}". Write the same name, or +${name} for another.`;
  }
  seen.push(name);
  return undefined;
}

/**
 * Writes down an order as it was shown.
 *
 * @throws UserError 'changed-since' when somebody has meanwhile written something down of nearly the same name.
 */
export function placeShown(record: TeamRecord, wanted: Wanted): Order {
  try {
    return place(record, wanted).value.order;
  } catch (error) {
    if (!(error instanceof UserError) || error.code !== 'which-one') throw error;
    throw new UserError(
      'changed-since',
      `The record has changed since the list was shown. ${error.message} Nothing was written. /import orders with the same list shows it anew.`,
    );
  }
}

/** The day by a supplier's usual time from order to door, in its working days; undefined where nobody has said it. */
export function usualDay({ record }: Hand, name: string, orderedOn: Day): Day | undefined {
  const supplier = record.suppliers.all().find((one) => plain(one.name) === plain(name));
  if (supplier === undefined || supplier.leadDays === null) return undefined;
  return calendarsOf(record)(supplier.id).add(orderedOn, supplier.leadDays);
}
