import type { Answer, Item } from '../../core/reply.ts';
import { type ProcedureStep, type StartingStage, startingStages } from '../../tables/stages.ts';
import type { Stage } from './stage.ts';

/** The procedure of a stage, if the starting set has one for it. */
export const procedureOf = ({ key }: Pick<Stage, 'key'>): StartingStage | undefined =>
  startingStages.find((one) => one.key === key);

/** One step: what to do, what to watch, its figures with where they are from, and when to stop. */
export function stepItem({ do: what, watch, figures = [], stop }: ProcedureStep, number: number): Item {
  const lines = [
    ...figures.map(({ says, source }) => `${upper(says)} (${sayOrigin(source)}).`),
    watch !== undefined && `Watch: ${watch}`,
    stop !== undefined && `Stop: ${stop}`,
  ].filter((line) => line !== false);
  return { text: `${number}. ${what}`, ...(lines.length === 0 ? {} : { note: lines.join('\n') }) };
}

export interface StepsView {
  readonly stage: Stage;
  readonly procedure: StartingStage;
  readonly items: readonly Item[];
  readonly where: string | undefined;
  readonly buttons: Answer['buttons'];
}

/** A page of a stage's procedure, with its cautions and everything that stops it. */
export function stepsAnswer({ stage, procedure, items, where, buttons = [] }: StepsView): Answer {
  const sources = new Set(procedure.steps.flatMap(({ figures = [] }) => figures.map(({ source }) => source)));
  return {
    kind: 'answer',
    subject: 'How it is done',
    result: stage.name,
    ...(where === undefined ? {} : { certainty: `Steps ${where}` }),
    items: [...items, { text: 'Stop and find out', note: procedure.stop.join('\n'), tone: 'late' }],
    caution: procedure.cautions.join(' '),
    smallPrint: [
      'The maker’s figures outrank these.',
      ...(sources.size === 0 ? [] : [`Sources: ${[...sources].join(', ')} (docs/sources.md)`]),
    ],
    buttons,
    audience: 'crew',
    data: {
      kind: 'steps',
      stage: stage.key,
      steps: procedure.steps.map(({ do: what, watch, stop, figures }) => ({
        do: what,
        ...(watch === undefined ? {} : { watch }),
        ...(stop === undefined ? {} : { stop }),
        ...(figures === undefined ? {} : { figures: figures.map((figure) => ({ ...figure })) }),
      })),
      stop: [...procedure.stop],
    },
  };
}

const sayOrigin = (source: string): string => (source === 'COMMON' ? 'common practice, no source' : source);

const upper = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
