import type { Sheet } from '../csv.ts';
import type { SheetSource } from './sheet-source.ts';

/** Every passing of a stage: who, when, and what it rested on. */
export function stageSheet({ record, build }: SheetSource): Sheet {
  return {
    name: 'stages',
    head: ['stage', 'passed on', 'by', 'passed although', 'against', 'reopened on', 'reopened by'],
    rows: record.stages
      .ofBuild(build.id)
      .flatMap(({ name, passes }) =>
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
