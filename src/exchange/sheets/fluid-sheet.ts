import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Sheet } from '../csv.ts';

/** Everything poured and drained. */
export function fluidSheet({ record, build }: WholeBuild): Sheet {
  return {
    name: 'fluids',
    head: ['case', 'takes litres', 'on', 'what', 'grade', 'litres', 'in it after', 'by', 'at km', 'note'],
    rows: record.fluids
      .casesOf(build.id)
      .flatMap((one) =>
        record.fluids
          .movesOf(one.id)
          .map((move) => [
            one.name,
            one.capacityL,
            move.movedOn,
            move.kind,
            move.grade,
            move.volumeL,
            move.inAfterL,
            move.byName,
            move.distanceKm,
            move.note,
          ]),
      ),
  };
}
