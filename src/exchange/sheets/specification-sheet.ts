import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Sheet } from '../csv.ts';

/** What the crew has written down of the car and its engine. */
export function specificationSheet({ record, build }: WholeBuild): Sheet {
  return {
    name: 'specification',
    head: ['what', 'value'],
    rows: record.builds.facts(build.id).map(({ name, value }) => [name, value]),
  };
}
