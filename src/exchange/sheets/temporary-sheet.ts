import type { WholeBuild } from '../../records/builds/whole-build.ts';
import { isInPlace } from '../../records/measures/measure.ts';
import type { Sheet } from '../csv.ts';

/** Every temporary measure, undone ones too. */
export function temporarySheet({ record, build, jobs, standings }: WholeBuild): Sheet {
  const jobNames = new Map(jobs.map(({ id, name }) => [id, name]));
  const partNames = new Map(standings.map(({ part }) => [part.id, part.name]));
  return {
    name: 'temporary-measures',
    head: [
      'number',
      'what',
      'state',
      'put on',
      'put by',
      'undone by part',
      'undone by job',
      'needed at stage',
      'undo before stage',
      'undone on',
      'undone by',
      'note',
    ],
    rows: record.measures
      .ofBuild(build.id)
      .map((one) => [
        one.id,
        one.what,
        isInPlace(one) ? 'in place' : 'undone',
        one.putOn,
        one.putByName,
        one.partId === null ? null : (partNames.get(one.partId) ?? null),
        one.jobId === null ? null : (jobNames.get(one.jobId) ?? null),
        one.requiredAt,
        one.undoneBefore,
        one.undoneOn,
        one.undoneByName,
        one.note,
      ]),
  };
}
