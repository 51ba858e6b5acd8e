import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Sheet } from '../csv.ts';

/** The steps of running in, with what was found at each. */
export function runningInSheet({ record, build }: WholeBuild): Sheet {
  return {
    name: 'running-in',
    head: [
      'step',
      'from',
      'due km',
      'due hours',
      'due days',
      'state',
      'done on',
      'done by',
      'at km',
      'at hours',
      'found',
      'put off because',
      'link',
    ],
    rows: (record.runIn.ofBuild(build.id)?.steps ?? []).map((step) => [
      step.what,
      step.origin,
      step.due.km,
      step.due.h,
      step.due.days,
      step.dropped ? 'left out' : step.doneOn === null ? 'open' : 'done',
      step.doneOn,
      step.doneByName,
      step.doneKm,
      step.doneH,
      step.found,
      step.snoozes.map(({ reason }) => reason).join('; ') || null,
      step.link,
    ]),
  };
}
