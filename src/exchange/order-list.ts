import type { Day } from '../core/time.ts';
import { UserError } from '../core/user-error.ts';
import { readDate } from '../phrases/dates/dates.ts';
import type { DateContext } from '../phrases/dates/reading.ts';
import { readMoney } from '../phrases/money.ts';
import type { Money } from '../records/orders/order.ts';
import { decimalsOf } from '../records/orders/say-order.ts';
import { readCsv } from './csv.ts';
import { type ColumnPlan, type OrderColumn, planColumns } from './order-columns.ts';

/** One order as a line of a list says it. */
export interface ListedOrder {
  readonly what: string;
  readonly supplier: string;
  readonly quantity: number;
  readonly price: Money | null;
  readonly orderedOn: Day;
  readonly due: Day;
}

/** What became of a line: an order, or why it is none. Lines count as in the list, its headings being line 1. */
export type ListedLine =
  | { readonly line: number; readonly order: ListedOrder }
  | { readonly line: number; readonly text: string; readonly problem: string };

export interface OrderList {
  readonly lines: readonly ListedLine[];
  /** Headings that mean nothing here; their columns are left out. */
  readonly unused: readonly string[];
}

/** What a list is read against, and what holds where it says nothing. */
export interface ListContext {
  readonly dates: DateContext;
  readonly today: Day;
  /** ISO 4217. */
  readonly currency: string;
  readonly supplier?: string | undefined;
  readonly due?: Day | undefined;
  /** The day by a supplier's usual time from order to door; undefined where nobody has said it. */
  usualDue(supplier: string, orderedOn: Day): Day | undefined;
}

const MOST_LINES = 500;

/**
 * Reads a pasted or attached list of orders; its first line names the columns. A line that cannot be read says why and
 * keeps no other from being read.
 *
 * @throws UserError 'bad-input' when no column says what was ordered, or the list is empty or too long.
 */
export function readOrderList(text: string, context: ListContext): OrderList {
  const [headings, ...rows] = readCsv(text);
  const plan = planColumns(headings ?? []);
  if (plan.at.what === undefined) throw noHeadings(headings ?? []);
  if (rows.length === 0) throw refused('There is a line of headings and nothing under it.');
  if (rows.length > MOST_LINES) {
    throw refused(`That is ${rows.length} lines; at most ${MOST_LINES} are read at once. Split the list.`);
  }
  return {
    lines: rows.map((row, index) => lineOf(row, index + 2, plan, context)),
    unused: plan.unknown,
  };
}

function lineOf(row: readonly string[], line: number, plan: ColumnPlan, context: ListContext): ListedLine {
  const cell = (column: OrderColumn): string | undefined => {
    const index = plan.at[column];
    const text = index === undefined ? undefined : row[index]?.replace(/\s+/g, ' ').trim();
    return text === '' ? undefined : text;
  };
  try {
    return { line, order: orderIn(cell, context) };
  } catch (error) {
    if (!(error instanceof UserError)) throw error;
    const problem = error.message.replace(/ ?Nothing was changed\.?/g, '').trim();
    return { line, text: row.filter((text) => text !== '').join(', '), problem };
  }
}

type Cells = (column: OrderColumn) => string | undefined;

function orderIn(cell: Cells, context: ListContext): ListedOrder {
  const named = cell('what');
  const reference = cell('reference');
  if (named === undefined) throw refused('It does not say what was ordered.');
  const what = reference === undefined ? named : `${named} (${reference})`;
  if (what.length > 200) throw refused('Its name is longer than 200 characters.');
  const supplier = cell('supplier') ?? context.supplier;
  if (supplier === undefined)
    throw refused('It does not say from whom. Give supplier:"…" for the whole list.');
  if (supplier.length > 80) throw refused('The supplier’s name is longer than 80 characters.');
  const quantity = quantityIn(cell('quantity'));
  const orderedOn = dayIn(cell('ordered'), context, 'past') ?? context.today;
  const due = dayIn(cell('due'), context, 'any') ?? context.due ?? context.usualDue(supplier, orderedOn);
  if (due === undefined) throw refused('It names no day. Give due:"…" for the whole list.');
  return { what, supplier, quantity, price: priceIn(cell, quantity, context), orderedOn, due };
}

function quantityIn(typed: string | undefined): number {
  if (typed === undefined) return 1;
  const [, digits] =
    /^(?:x\s*)?(\d{1,5})(?:[.,]0+)?\s*(?:x|off|pcs?|pieces?|stk|st|stück)?\.?$/i.exec(typed) ?? [];
  const quantity = Number(digits);
  if (digits === undefined || quantity < 1 || quantity > 10_000) {
    throw refused(`"${typed}" is no count: whole pieces from 1 to 10,000.`);
  }
  return quantity;
}

function priceIn(cell: Cells, quantity: number, { currency }: ListContext): Money | null {
  const home = cell('currency')?.toUpperCase() ?? currency;
  if (!Intl.supportedValuesOf('currency').includes(home)) throw refused(`"${home}" is no currency.`);
  const total = cell('price');
  if (total !== undefined) return readMoney(total, home, decimalsOf);
  const each = cell('each');
  if (each === undefined) return null;
  const one = readMoney(each, home, decimalsOf);
  return { ...one, minor: one.minor * quantity };
}

function dayIn(
  typed: string | undefined,
  { dates }: ListContext,
  direction: DateContext['direction'],
): Day | undefined {
  if (typed === undefined) return undefined;
  const either = readDate(typed, { ...dates, direction });
  // a list may hold days gone by, but what is promised for "Friday" is still to come
  const ahead = either.verdict === 'ask' && direction === 'any';
  const reading = ahead ? readDate(typed, { ...dates, direction: 'future' }) : either;
  switch (reading.verdict) {
    case 'read':
      return reading.day;
    case 'ask':
      throw refused(`The day "${typed}" could be meant in several ways. Write it like 2026-12-04.`);
    case 'refuse':
      throw refused(`"${typed}" is no day. Write it like 2026-12-04.`);
  }
}

const refused = (why: string): UserError => new UserError('bad-input', `${why} Nothing was changed.`);

function noHeadings(found: readonly string[]): UserError {
  const read =
    found.length === 0 ? 'There is nothing in it.' : `It begins with: ${found.join(', ').slice(0, 120)}.`;
  return refused(
    `The first line has to name the columns: what, supplier, quantity, price, due. Only what must be there. ${read}`,
  );
}
