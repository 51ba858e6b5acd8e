import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Sheet } from '../csv.ts';

/** Every passing of a stage: who, when, and what it rested on. */
export function stageSheet({ stages }: WholeBuild): Sheet {
  return {
    name: 'stages',
    head: ['stage', 'passed on', 'by', 'passed although', 'against', 'reopened on', 'reopened by'],
    rows: stages.flatMap(({ name, passes }) =>
      passes.map((pass) => [
        name,
        pass.passedOn,
        pass.byName,
        pass.reason,
        pass.against.join('; '),
        pass.reopenedOn,
        pass.reopenedBy,
      ]),
    ),
  };
}
