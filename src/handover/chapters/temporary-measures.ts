import { sayFullDay } from '../../core/time.ts';
import type { WholeBuild } from '../../records/builds/whole-build.ts';
import { isInPlace, type Measure } from '../../records/measures/measure.ts';
import type { Section } from '../paper.ts';

/** Every temporary measure and how it ended; those still in place come first. */
export function temporaryMeasures({ record, build }: WholeBuild): Section {
  const all = record.measures
    .ofBuild(build.id)
    .toSorted((a, b) => Number(isInPlace(b)) - Number(isInPlace(a)));
  return {
    heading: 'Temporary measures',
    blocks:
      all.length === 0
        ? [{ kind: 'words', text: 'None was taken.' }]
        : [
            {
              kind: 'table',
              head: ['What', 'Put', 'Undone', 'Note'],
              shares: [5, 4, 4, 3],
              rows: all.map((one) => [
                one.what,
                `${sayFullDay(one.putOn)}, ${one.putByName}`,
                undone(one),
                one.note ?? '',
              ]),
            },
          ],
  };
}

function undone({ undoneOn, undoneByName }: Measure): string {
  return undoneOn === null ? 'still in place' : `${sayFullDay(undoneOn)}, ${undoneByName ?? ''}`;
}
