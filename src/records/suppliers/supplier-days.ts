import { workingDays } from '../../calendar/working-days.ts';
import type { WorkingDays } from '../../core/working-days.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Supplier } from './supplier.ts';

/** The working days of a supplier, by its number. */
export type CalendarOf = (supplierId: number) => WorkingDays;

/** A supplier's working days: its country's, or the crew's own where nobody has said, less its shutdowns. */
export function daysOf({ country, shutdowns }: Supplier, crewCountry: string): WorkingDays {
  return workingDays(country ?? crewCountry, shutdowns);
}

/** Every supplier's working days, each worked out when first asked for. */
export function calendarsOf(record: TeamRecord): CalendarOf {
  const { country } = record.settings.read();
  const suppliers = new Map(record.suppliers.all().map((supplier) => [supplier.id, supplier]));
  const known = new Map<number, WorkingDays>();
  return (supplierId) => {
    const found = known.get(supplierId);
    if (found !== undefined) return found;
    const supplier = suppliers.get(supplierId);
    const days = supplier === undefined ? workingDays(country) : daysOf(supplier, country);
    known.set(supplierId, days);
    return days;
  };
}
