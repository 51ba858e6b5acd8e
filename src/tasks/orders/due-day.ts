import { buildHere, crewOf, type DayRead, readDay, suggestDays } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import type { JsonObject } from '../../core/json.ts';
import { sayDay } from '../../core/time.ts';
import { type Choice, UserError } from '../../core/user-error.ts';
import { findOrder } from '../../records/orders/find-order.ts';
import { supplierOrNew } from '../../records/suppliers/find-supplier.ts';
import { plain, type Supplier } from '../../records/suppliers/supplier.ts';
import { daysOf } from '../../records/suppliers/supplier-days.ts';

/**
 * The supplier's name as the record has it; as typed where it is new.
 *
 * @param field the option that a picked answer is to fill
 * @throws UserError 'which-one' when it is nearly that of a known one.
 */
export function supplierNamed({ record }: Hand, typed: string, field: string): string {
  return supplierOrNew(record, typed, field).known?.name ?? typed;
}

/**
 * The day promised by a supplier: as typed, its working days counted where they differ from the crew's; or, with nothing
 * typed, by its usual time from order to door.
 *
 * @throws UserError as `readDay` does, and 'which-one' when nothing was typed and no usual time is known.
 */
export function readDue(hand: Hand, typed: string | undefined, supplierName: string, field = 'due'): DayRead {
  const { settings, today } = crewOf(hand);
  const supplier = hand.record.suppliers.all().find(({ name }) => plain(name) === plain(supplierName));
  const days = supplier && daysOf(supplier, settings.country);
  if (typed === undefined) {
    const leadDays = supplier?.leadDays ?? null;
    if (supplier === undefined || days === undefined || leadDays === null)
      throw noDay(supplierName.replace(/^\+/, ''), field);
    const on = days.add(today, leadDays);
    return {
      day: on,
      readAs: `No day was given: ${sayLead(supplier, leadDays)} makes ${sayDay(on, today)}.`,
    };
  }
  const read = readDay(hand, field, typed, days);
  const counted = supplier !== undefined && IN_WORKING_DAYS.test(typed) && keepsOwnDays(supplier);
  return counted ? { ...read, readAs: `${read.readAs} Counted by ${whoseDays(supplier)}.` } : read;
}

/**
 * Days for a promise. Whose working days a span counts hangs on the supplier: the day is said where the supplier is given,
 * else the span is offered as it is typed.
 */
export function suggestDue(typed: string, hand: Hand, given: JsonObject): readonly Choice[] {
  if (typed.trim() === '') {
    return USUAL_SPANS.flatMap((span) => suggestDue(span, hand, given));
  }
  const days = suggestDays(typed, hand);
  if (!IN_WORKING_DAYS.test(typed) || days.length !== 1) return days;
  const supplier = supplierIn(given, hand);
  if (supplier === undefined) {
    return [{ label: `${typed}, as the supplier works`.slice(0, 100), value: typed.slice(0, 100) }];
  }
  const { day } = readDue(hand, typed, supplier);
  const label = `${sayDay(day, crewOf(hand).today)} (${typed})`;
  return [{ label: label.slice(0, 100), value: day }];
}

/** The supplier given, or that of the order given; undefined until one is told by name or number. */
function supplierIn({ supplier, order }: JsonObject, hand: Hand): string | undefined {
  if (typeof supplier === 'string' && supplier !== '') return supplier;
  if (typeof order !== 'string' || order === '') return undefined;
  const build = buildHere(hand);
  if (build === undefined) return undefined;
  try {
    return findOrder(hand.record, build.id, order).supplier;
  } catch (error) {
    if (error instanceof UserError) return undefined;
    throw error;
  }
}

/** What most suppliers promise. */
const USUAL_SPANS = ['tomorrow', 'in 3 working days', 'in 5 working days', 'in 2 weeks'];

const IN_WORKING_DAYS = /work|business/i;

const keepsOwnDays = ({ country, shutdowns }: Supplier): boolean => country !== null || shutdowns.length > 0;

/** "Norvale’s working days in DE, less its shutdowns". */
export function whoseDays({ name, country, shutdowns }: Supplier): string {
  const where = country === null ? '' : ` in ${country}`;
  return `${name}’s working days${where}${shutdowns.length > 0 ? ', less its shutdowns' : ''}`;
}

const sayLead = ({ name }: Supplier, leadDays: number): string =>
  `${name}’s usual ${leadDays} working ${leadDays === 1 ? 'day' : 'days'}`;

const noDay = (supplier: string, field: string): UserError =>
  new UserError(
    'which-one',
    `When is it promised? Give ${field}, like ${field}:"12 Dec". With /supplier set supplier:"${supplier}" lead:5 it can be left out next time.`,
    { field, choices: USUAL_SPANS.map((span) => ({ label: span, value: span })) },
  );
