import type { Sheet } from '../csv.ts';
import type { SheetSource } from './sheet-source.ts';

/** What the crew has written down of the car and its engine. */
export function specificationSheet({ record, build }: SheetSource): Sheet {
  return {
    name: 'specification',
    head: ['what', 'value'],
    rows: record.builds.facts(build.id).map(({ name, value }) => [name, value]),
  };
}
