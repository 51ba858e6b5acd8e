import { sayNumber } from '../../calc/units/say.ts';
import { sayFullDay } from '../../core/time.ts';
import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Block, Section } from '../paper.ts';

/** What each case takes and holds, then everything poured and drained. */
export function fluids({ record, build }: WholeBuild): Section {
  const cases = record.fluids.casesOf(build.id);
  if (cases.length === 0)
    return { heading: 'Fluids', blocks: [{ kind: 'words', text: 'No case is recorded.' }] };
  const moves = cases.flatMap((one) =>
    record.fluids
      .movesOf(one.id)
      .map((move) => [
        sayFullDay(move.movedOn),
        one.name,
        `${sayNumber(move.volumeL)} L ${move.grade} ${move.kind}`,
        move.distanceKm === null ? '' : `${sayNumber(move.distanceKm)} km`,
        [move.byName, move.note].filter((text) => text !== null).join('; '),
      ]),
  );
  const history: readonly Block[] =
    moves.length === 0
      ? []
      : [{ kind: 'table', head: ['On', 'Case', 'What', 'At', 'By'], shares: [3, 3, 4, 2, 4], rows: moves }];
  return {
    heading: 'Fluids',
    blocks: [
      {
        kind: 'table',
        head: ['Case', 'Grade', 'Takes', 'In it', 'Since', 'Note'],
        shares: [3, 3, 2, 2, 3, 4],
        rows: cases.map(({ name, grade, capacityL, inL, filledOn, note }) => [
          name,
          grade,
          `${sayNumber(capacityL)} L`,
          `${sayNumber(inL)} L`,
          filledOn === null ? '' : sayFullDay(filledOn),
          note ?? '',
        ]),
      },
      ...history,
    ],
  };
}
