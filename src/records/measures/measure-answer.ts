import type { JsonObject } from '../../core/json.ts';
import type { Answer, Button, Item } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import type { Stage } from '../stages/stage.ts';
import { isInPlace, type Measure } from './measure.ts';

export interface MeasureView {
  readonly measure: Measure;
  readonly stages: readonly Stage[];
  readonly today: Day;
  /** What has just been done, in words. */
  readonly said?: string;
  /** Stages it could be tied to with a tap, where none was named. */
  readonly offered?: readonly Stage[];
  readonly extraButtons?: readonly Button[];
}

/** One temporary measure as a card, said back as it was understood. */
export function measureAnswer(view: MeasureView): Answer {
  const { measure, stages, today, said, offered = [], extraButtons = [] } = view;
  const { id, what, putOn, putByName, note, answers } = measure;
  const inPlace = isInPlace(measure);
  return {
    kind: 'answer',
    subject: 'Temporary',
    result: what,
    tone: inPlace ? 'soon' : 'done',
    certainty: inPlace ? sayTies(measure, stages) : sayUndone(measure, today),
    facts: [
      ['Put in', `${sayDay(putOn, today)} by ${putByName}`],
      ...(answers.length === 0 ? [] : [['Counts as', answers.join(', ')] as const]),
      ...(note === null ? [] : [['Note', note] as const]),
    ],
    buttons: [
      ...(inPlace ? [undoneButton(id)] : []),
      ...(inPlace
        ? offered.map(
            (stage): Button => ({
              label: `Before ${stage.name}`.slice(0, 34),
              does: { command: 'temporary', action: 'before', args: { measure: id, stage: stage.key } },
            }),
          )
        : [
            {
              label: 'Put in place again',
              does: { command: 'temporary', action: 'again', args: { measure: id } },
            },
          ]),
      ...extraButtons,
    ],
    audience: 'crew',
    data: { ...measureData(measure), ...(said === undefined ? {} : { said }) },
  };
}

/** "Undo when the hose is here, and before First start. Required at Oil pressure by cranking." */
export function sayTies(measure: Measure, stages: readonly Stage[]): string {
  const { until, partId, jobId, undoneBefore, requiredAt } = measure;
  const stage = (key: string): string => stages.find((one) => one.key === key)?.name ?? key;
  const when =
    until === null
      ? undefined
      : partId !== null
        ? `when ${until} is here`
        : jobId !== null
          ? `when “${until}” is done`
          : `once “${until}” is there (no part or job of this name yet)`;
  const before = undoneBefore === null ? undefined : `before ${stage(undoneBefore)}`;
  const required = requiredAt === null ? '' : ` Required at ${stage(requiredAt)}.`;
  if (when === undefined && before === undefined) {
    const last = stages.at(-1)?.name ?? 'the last stage';
    return `Nobody said what undoes it or before which stage: ${last} asks for it at the latest.${required}`;
  }
  return `Undo ${[when, before].filter(Boolean).join(', and ')}.${required}`;
}

const sayUndone = ({ undoneOn, undoneByName }: Measure, today: Day): string =>
  `Undone ${sayDay(undoneOn ?? today, today)} by ${undoneByName ?? ''}`;

export const undoneButton = (id: number): Button => ({
  label: 'Undone',
  weight: 'main',
  does: { command: 'temporary', action: 'undone', args: { measure: id } },
});

/** One of a list. */
export function measureItem(measure: Measure, stages: readonly Stage[], today: Day): Item {
  const { id, what, putOn, putByName } = measure;
  if (!isInPlace(measure))
    return { text: `#${id} ${what}`, note: `${sayUndone(measure, today)}.`, tone: 'done' };
  return {
    text: `#${id} ${what}`,
    note: `${sayTies(measure, stages)} Since ${sayDay(putOn, today)}, by ${putByName}.`,
    tone: 'soon',
    buttons: [undoneButton(id)],
  };
}

export function measureData(measure: Measure): JsonObject {
  const { id, what, until, partId, jobId, answers, requiredAt, undoneBefore, note } = measure;
  const { putOn, putByName, undoneOn, undoneByName } = measure;
  return {
    kind: 'temporary',
    measure: id,
    what,
    until,
    part: partId,
    job: jobId,
    answers: [...answers],
    requiredAt,
    undoneBefore,
    putOn,
    putBy: putByName,
    undoneOn,
    undoneBy: undoneByName,
    note,
  };
}
