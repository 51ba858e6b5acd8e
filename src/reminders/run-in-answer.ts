import type { Answer } from '../core/reply.ts';
import { allowedNow, sayAllowed } from '../records/running-in/allowed.ts';
import { type Progress, progressOf, type StepStanding, standPlan } from '../records/running-in/progress.ts';
import type { RunInPlan } from '../records/running-in/run-in.ts';
import { itemOf, stepData } from '../records/running-in/run-in-answer.ts';
import { sayLeft } from '../records/running-in/say-run-in.ts';
import type { TeamRecord } from '../records/team-record.ts';
import type { RunInNotice } from './notice.ts';

interface Found {
  readonly plan: RunInPlan;
  readonly progress: Progress;
  readonly standing: StepStanding;
}

function find(record: TeamRecord, { buildId, stepId }: RunInNotice, nowMs: number): Found | undefined {
  const plan = record.runIn.ofBuild(buildId);
  if (plan === undefined) return undefined;
  const progress = progressOf(record, plan, nowMs, record.settings.read().zone);
  const standing = standPlan(plan, progress).find(({ step }) => step.id === stepId);
  return standing === undefined ? undefined : { plan, progress, standing };
}

/** Whether the step still needs a word: a plan given up, a step done or put off meanwhile does not. */
export function runInNeeded(record: TeamRecord, notice: RunInNotice, nowMs: number): boolean {
  const state = find(record, notice, nowMs)?.standing.state;
  return notice.when === 'due' ? state === 'due' : state === 'soon' || state === 'due';
}

/** A step that comes up or is due, in words from the record as it is now, with its buttons. */
export function runInAnswer(
  record: TeamRecord,
  notice: RunInNotice,
  noticeId: number,
  nowMs: number,
): Answer {
  const found = find(record, notice, nowMs);
  const buildName = record.builds.find(notice.buildId)?.name ?? '';
  if (found === undefined) {
    return {
      kind: 'answer',
      subject: 'Running in',
      result: 'This step is no longer in the plan',
      tone: 'plain',
      certainty: buildName,
      audience: 'crew',
      data: { step: notice.stepId },
    };
  }
  const { plan, progress, standing } = found;
  const allowed = allowedNow(plan, progress);
  return {
    kind: 'answer',
    subject: 'Running in',
    result: headline(standing),
    tone: standing.state === 'due' ? 'late' : standing.state === 'soon' ? 'soon' : 'done',
    certainty: buildName,
    items: [itemOf(standing, progress, true, noticeId)],
    facts: allowed === null ? [] : [['Today', sayAllowed(plan, allowed)]],
    audience: 'crew',
    data: stepData(standing),
  };
}

function headline({ step, state, left }: StepStanding): string {
  switch (state) {
    case 'due':
      return `Due: ${step.what}`;
    case 'soon': {
      const togo = sayLeft(left);
      return `${togo === '' ? 'Coming up' : togo}: ${step.what}`;
    }
    case 'later':
      return `Put off: ${step.what}`;
    case 'done':
      return `Done: ${step.what}`;
    case 'left out':
      return `Left out: ${step.what}`;
  }
}
