import { z } from 'zod';
import stageTable from '../../data/stages/stages.json' with { type: 'json' };
import { readTable, refuseTwins } from './read-table.ts';

const words = z.string().min(1).max(200);
const key = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/);
const bound = z.number().nullable();

/** What must hold before a stage is begun, in the form in which the table and every build keep it. */
export const ConditionForm = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('jobs') }),
  z.strictObject({ kind: z.literal('job'), jobId: z.int(), proof: z.boolean().optional() }),
  z.strictObject({
    kind: z.literal('part'),
    partId: z.int().nullable(),
    name: words,
    proof: z.boolean().optional(),
  }),
  z.strictObject({ kind: z.literal('measures') }),
  z.strictObject({
    kind: z.literal('measure'),
    word: words,
    signs: z.array(words),
    undoneBefore: key.nullable(),
    proof: z.boolean().optional(),
  }),
  z.strictObject({ kind: z.literal('fluids'), proof: z.boolean().optional() }),
  z.strictObject({
    kind: z.literal('fluid'),
    case: words,
    alsoCalled: z.array(words),
    proof: z.boolean().optional(),
  }),
  z.strictObject({
    kind: z.literal('reading'),
    reading: words,
    states: z.array(words),
    min: bound,
    max: bound,
    freshDays: z.int().min(1).max(365),
    proof: z.boolean().optional(),
  }),
  z.strictObject({ kind: z.literal('said'), what: words, proof: z.boolean().optional() }),
]);

const Figure = z.strictObject({ says: z.string().min(3), source: z.string().min(2) });
const Step = z.strictObject({
  do: z.string().min(10),
  watch: z.string().min(5).optional(),
  figures: z.array(Figure).min(1).optional(),
  stop: z.string().min(5).optional(),
});

const StageRow = z.strictObject({
  key,
  name: z.string().min(3).max(80),
  alsoCalled: z.array(z.string().min(3)).min(1),
  cautions: z.array(z.string().min(10)).min(1),
  conditions: z.array(ConditionForm).min(1),
  steps: z.array(Step).min(3),
  stop: z.array(z.string().min(10)).min(1),
});

/** A step of a stage's procedure: what to do, what to watch, figures with their sources, when to stop. */
export type ProcedureStep = z.output<typeof Step>;
/** A stage of the starting set. */
export type StartingStage = z.output<typeof StageRow>;

const table = readTable(
  'stages/stages.json',
  z.object({ title: z.string(), note: z.string(), stages: z.array(StageRow).min(1) }),
  stageTable,
);

/** The stages that a build starts from, in their order. */
export const startingStages: readonly StartingStage[] = table.stages;

refuseTwins(
  'stages/stages.json',
  startingStages.map(({ key: one }) => one),
);
refuseTwins(
  'stages/stages.json',
  startingStages.flatMap(({ alsoCalled }) => alsoCalled),
);
for (const { key: stage, conditions } of startingStages) {
  for (const condition of conditions) {
    const named = condition.kind === 'measure' ? condition.undoneBefore : null;
    if (named !== null && !startingStages.some(({ key: one }) => one === named))
      throw new Error(`data/stages/stages.json: ${stage} names the stage ${named}, and there is none`);
  }
}
