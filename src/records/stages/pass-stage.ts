import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Finding } from './finding.ts';
import { readiness } from './readiness.ts';
import type { Pass, Stage } from './stage.ts';
import { type StageFacts, stageFacts } from './stage-facts.ts';
import { restsNow, standingOf } from './standing.ts';

/** Who passes a stage, when, and why with something open. */
export interface Passing {
  readonly buildId: number;
  readonly key: string;
  readonly by: string;
  readonly on: Day;
  readonly reason: string | undefined;
}

/** Reasons offered with a tap; any other can be typed. */
const REASONS = ['Checked another way', 'Not so on this car', 'Left for later, we know of it'] as const;
/** More than these are not listed in a question. */
const MOST_LISTED = 5;

/**
 * Passes a stage and writes down who, when, and against what.
 *
 * @throws UserError 'already-done' when it stands as passed; 'which-one' asking for a reason when something is open.
 */
export function passStage(
  record: TeamRecord,
  { buildId, key, by, on, reason }: Passing,
): { readonly value: { readonly stage: Stage; readonly pass: Pass }; readonly said: string } {
  const facts = stageFacts(record, buildId, on);
  const stage = stageOfKey(facts, key);
  if (standingOf(stage, facts).kind === 'passed') {
    throw new UserError('already-done', `${stage.name} is passed already. Nothing was changed.`);
  }
  const { findings, missing, unproved } = readiness(stage, facts);
  const open = [...missing, ...unproved];
  if (open.length > 0 && reason === undefined) throw needsReason(stage, open);
  const pass = record.stages.pass(buildId, stage.key, {
    passedOn: on,
    byName: by,
    reason: open.length === 0 ? null : (reason ?? null),
    against: findings.map(sayFinding),
    restsOn: restsNow(stage, findings, facts),
  });
  const left = open.length === 0 ? '' : `, with ${sayThings(open.length)} open: ${pass.reason ?? ''}`;
  return { value: { stage, pass }, said: `stage ${stage.name} passed${left}` };
}

export function stageOfKey({ stages }: Pick<StageFacts, 'stages'>, key: string): Stage {
  const stage = stages.find((one) => one.key === key);
  if (stage !== undefined) return stage;
  throw new UserError(
    'stale-message',
    'That stage is no longer in the list. /stage list shows those there are.',
  );
}

function needsReason(stage: Stage, open: readonly Finding[]): UserError {
  const listed = open.slice(0, MOST_LISTED).map(({ says }) => says);
  const more = open.length > listed.length ? `; and ${open.length - listed.length} more` : '';
  return new UserError(
    'which-one',
    `${stage.name} has ${sayThings(open.length)} open: ${listed.join('; ')}${more}. Not passed. To pass it all the same give a reason, which stays visible: pick one, or type it as reason:"…".`,
    { field: 'reason', choices: REASONS.map((one) => ({ label: one, value: one })) },
  );
}

/** One thing as it stood, for the record of a pass. */
export const sayFinding = ({ state, says }: Finding): string =>
  state === 'met' ? says : `${state === 'open' ? 'Open' : 'In doubt'}: ${says}`;

const WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'] as const;

/** "three things". */
export const sayThings = (count: number): string =>
  `${WORDS[count] ?? count} ${count === 1 ? 'thing' : 'things'}`;
