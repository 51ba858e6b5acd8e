import { sayNumber } from '../../calc/units/say.ts';
import { sayFullDay } from '../../core/time.ts';
import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Mark, RunInStep } from '../../records/running-in/run-in.ts';
import type { Section } from '../paper.ts';

/** How far running in has come: each step, when it was done and what was found. */
export function runningIn({ record, build }: WholeBuild): Section {
  const plan = record.runIn.ofBuild(build.id);
  if (plan === undefined) {
    return { heading: 'Running in', blocks: [{ kind: 'words', text: 'No plan is recorded.' }] };
  }
  const from = plan.origin === 'builder' ? 'the builder’s own figures' : 'common practice, no source';
  return {
    heading: 'Running in',
    blocks: [
      { kind: 'words', text: `${plan.name}, by ${from}. First start on ${sayFullDay(plan.startedOn)}.` },
      {
        kind: 'table',
        head: ['Step', 'Due', 'Done', 'Found'],
        shares: [5, 3, 4, 5],
        rows: plan.steps.map((step) => [
          step.what,
          markOf(step.due),
          doneOf(step),
          [step.found, step.link, ...step.snoozes.map(({ reason }) => `put off: ${reason}`)]
            .filter((text) => text !== null)
            .join('; '),
        ]),
      },
    ],
  };
}

/** "500 km, 10 h or 30 days", from the first start. */
function markOf({ km, h, days }: Mark): string {
  const marks = [
    km === null ? undefined : `${sayNumber(km)} km`,
    h === null ? undefined : `${sayNumber(h)} h`,
    days === null ? undefined : `${sayNumber(days)} days`,
  ].filter((mark) => mark !== undefined);
  return marks.length === 0 ? 'at the first start' : marks.join(' or ');
}

function doneOf({ doneOn, doneByName, doneKm, doneH, dropped }: RunInStep): string {
  if (dropped) return 'left out';
  if (doneOn === null) return 'open';
  const at = [
    doneKm === null ? undefined : `${sayNumber(doneKm)} km`,
    doneH === null ? undefined : `${sayNumber(doneH)} h`,
  ].filter((mark) => mark !== undefined);
  return [sayFullDay(doneOn), doneByName, at.join(', ')].filter(Boolean).join(', ');
}
