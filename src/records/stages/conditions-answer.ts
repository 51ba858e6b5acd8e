import type { Answer, Button, Item } from '../../core/reply.ts';
import type { Finding } from './finding.ts';
import { findingsOf } from './findings.ts';
import { leadButtons } from './lead-buttons.ts';
import { sayThings } from './pass-stage.ts';
import { sayCondition } from './say-condition.ts';
import { isProof, type Stage, type StageCondition } from './stage.ts';
import type { StageFacts } from './stage-facts.ts';

/** One condition of a stage: what it asks, how it stands, and a button to leave it out. */
export function conditionItem(condition: StageCondition, stage: Stage, facts: StageFacts): Item {
  const findings = findingsOf(condition, stage, facts);
  const open = findings.filter(({ state }) => state !== 'met');
  const [first] = open.length > 0 ? open : findings;
  const more = open.length > 1 ? ` and ${open.length - 1} more` : '';
  const leads = open.length === 1 && first !== undefined ? leadButtons(first) : [];
  return {
    text: sayCondition(condition.condition, facts),
    note: `${isProof(condition.condition) ? 'Shown by going through it. ' : ''}${sayOf(condition, first)}${more}.`,
    tone: open.length === 0 ? 'done' : 'soon',
    buttons: [
      ...leads,
      {
        label: 'Leave it out',
        weight: 'grave',
        does: { command: 'stage', action: 'drop', args: { condition: condition.id } },
      },
    ],
  };
}

/** How it stands, without saying again what was asked. */
function sayOf({ condition }: StageCondition, finding: Finding | undefined): string {
  if (condition.kind !== 'said') return finding?.says ?? '';
  return finding?.state === 'met' ? finding.says.slice(condition.what.length + 2) : 'Nobody has said so yet';
}

export interface ConditionsView {
  readonly stage: Stage;
  readonly items: readonly Item[];
  readonly where: string | undefined;
  readonly said?: string;
  readonly buttons: readonly Button[];
  readonly facts: StageFacts;
}

/** What a stage asks for, condition by condition. */
export function conditionsAnswer({ stage, items, where, said, buttons, facts }: ConditionsView): Answer {
  const { key, name, conditions } = stage;
  return {
    kind: 'answer',
    subject: 'Stage',
    result: name,
    certainty: [
      conditions.length === 0 ? 'It asks for nothing yet' : `It asks for ${sayThings(conditions.length)}`,
      where,
    ]
      .filter(Boolean)
      .join(', '),
    items,
    buttons: [
      ...buttons,
      { label: 'Are we ready?', does: { command: 'ready', action: 'show', args: { stage: key } } },
    ],
    audience: 'crew',
    data: {
      kind: 'stage',
      stage: key,
      name,
      conditions: conditions.map(({ id, condition }) => ({
        condition: id,
        kind: condition.kind,
        says: sayCondition(condition, facts),
      })),
      ...(said === undefined ? {} : { said }),
    },
  };
}
