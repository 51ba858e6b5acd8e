import { sayFullDay } from '../../core/time.ts';
import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Pass, Stage } from '../../records/stages/stage.ts';
import type { Section } from '../paper.ts';

/** Every stage in its order: who passed it, when, against what, and what was open then. */
export function stages({ stages: all }: WholeBuild): Section {
  return {
    heading: 'Stages',
    blocks: [
      {
        kind: 'table',
        head: ['Stage', 'Passed', 'By', 'Against'],
        shares: [3, 2, 2, 6],
        rows: all.flatMap(rowsOf),
      },
    ],
  };
}

function rowsOf({ name, passes }: Stage): readonly (readonly string[])[] {
  if (passes.length === 0) return [[name, 'not yet', '', '']];
  return passes.map((pass) => [name, sayFullDay(pass.passedOn), pass.byName, restedOn(pass)]);
}

function restedOn({ against, reason, reopenedOn, reopenedBy }: Pass): string {
  const although = reason === null ? '' : `Passed although something was open: ${reason}. `;
  const reopened =
    reopenedOn === null ? '' : `Reopened on ${sayFullDay(reopenedOn)}: ${reopenedBy ?? 'no reason given'}. `;
  return `${although}${reopened}${against.join('; ')}`;
}
