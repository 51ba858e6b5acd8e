import { wallTime } from '../../core/time.ts';
import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Sheet } from '../csv.ts';

/** Every reading in its kind's base unit, with its conditions. */
export function readingSheet({ record, build, zone }: WholeBuild): Sheet {
  return {
    name: 'readings',
    head: [
      'number',
      'taken at',
      'what',
      'value',
      'unit',
      'first given as',
      'rpm',
      'temperature degC',
      'boost kPa',
      'place',
      'fuel',
      'conditions',
      'typed',
      'by',
      'note',
      'link',
    ],
    rows: record.readings
      .since(build.id, 0)
      .map(({ conditions, ...one }) => [
        one.id,
        wallTime(one.takenAtMs, zone).toString({ smallestUnit: 'second' }),
        one.kind,
        one.value,
        one.unit,
        one.firstValue,
        conditions.speedRpm ?? null,
        conditions.temperatureC ?? null,
        conditions.boostKPa ?? null,
        conditions.place ?? null,
        conditions.fuel ?? null,
        conditions.states.join(' ') || null,
        one.typed,
        one.byName,
        one.note,
        one.link,
      ]),
  };
}
