import { type Day, sayDay } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import { plain, type Supplier } from './supplier.ts';

/** What can be said of a supplier; what is left out stays as it was. */
export interface SupplierDetails {
  readonly name?: string | undefined;
  /** As the holiday tables know it: `DE`, `GB/ENG`. */
  readonly country?: string | undefined;
  readonly leadDays?: number | undefined;
  readonly note?: string | undefined;
}

type Edited = { readonly value: Supplier; readonly said: string };

/** @throws UserError 'bad-input' when nothing is said, 'already-done' when another supplier has the name. */
export function setSupplier(record: TeamRecord, supplier: Supplier, details: SupplierDetails): Edited {
  const changes = Object.fromEntries(Object.entries(details).filter(([, value]) => value !== undefined));
  if (Object.keys(changes).length === 0) {
    throw new UserError(
      'bad-input',
      `Say what to change of ${supplier.name}: country, lead, note or name. Nothing was changed.`,
    );
  }
  const other = record.suppliers
    .all()
    .find(({ id, name }) => id !== supplier.id && plain(name) === plain(details.name ?? ''));
  if (other !== undefined) {
    throw new UserError('already-done', `There is a supplier ${other.name} already. Nothing was changed.`);
  }
  record.suppliers.correct({ ...supplier, ...changes });
  const { name, country, leadDays, note } = details;
  const said = [
    country !== undefined && `keeps the holidays of ${country}`,
    leadDays !== undefined && `takes ${leadDays} working ${leadDays === 1 ? 'day' : 'days'}`,
    note !== undefined && 'noted',
    name !== undefined && `now called ${name}`,
  ].filter(Boolean);
  return { value: again(record, supplier), said: `${supplier.name}: ${said.join(', ')}` };
}

/** @throws UserError 'bad-input' when it ends before it begins, 'already-done' when it is shut then already. */
export function shutSupplier(
  record: TeamRecord,
  supplier: Supplier,
  shut: { readonly from: Day; readonly to: Day; readonly reason: string },
  today: Day,
): Edited {
  const { from, to, reason } = shut;
  const span = `${sayDay(from, today)} to ${sayDay(to, today)}`;
  if (to < from) {
    throw new UserError(
      'bad-input',
      `${span} ends before it begins. Nothing was changed. Give the first day as from and the last as to.`,
    );
  }
  const known = supplier.shutdowns.find((one) => one.from <= from && to <= one.to);
  if (known !== undefined) {
    throw new UserError(
      'already-done',
      `${supplier.name} is shut then already: ${sayDay(known.from, today)} to ${sayDay(known.to, today)}. Nothing was changed.`,
    );
  }
  record.suppliers.shut(supplier.id, from, to, reason);
  return { value: again(record, supplier), said: `${supplier.name} shut from ${span}` };
}

/** Takes a shutdown off again. @throws UserError 'not-found' when it is gone. */
export function openAgain(record: TeamRecord, shutdownId: number, today: Day): Edited {
  const supplier = record.suppliers
    .all()
    .find(({ shutdowns }) => shutdowns.some(({ id }) => id === shutdownId));
  const shutdown = supplier?.shutdowns.find(({ id }) => id === shutdownId);
  if (supplier === undefined || shutdown === undefined) {
    throw new UserError('not-found', 'That shutdown is off the list already. Nothing was changed.');
  }
  record.suppliers.open(shutdownId);
  const span = `${sayDay(shutdown.from, today)} to ${sayDay(shutdown.to, today)}`;
  return { value: again(record, supplier), said: `${supplier.name} open from ${span} after all` };
}

function again(record: TeamRecord, { id, name }: Supplier): Supplier {
  const supplier = record.suppliers.find(id);
  if (!supplier) throw new Error(`supplier ${name} vanished inside its own change`);
  return supplier;
}
