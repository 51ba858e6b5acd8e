import type { JsonObject } from '../../core/json.ts';
import type { Answer, Button, Item } from '../../core/reply.ts';
import { sayDay } from '../../core/time.ts';
import { startingStages } from '../../tables/stages.ts';
import { isInPlace } from '../measures/measure.ts';
import type { Finding } from './finding.ts';
import { leadButtons } from './lead-buttons.ts';
import { sayThings } from './pass-stage.ts';
import type { Readiness } from './readiness.ts';
import type { Pass, Stage } from './stage.ts';
import type { StageFacts } from './stage-facts.ts';
import { type Standing, standingOf } from './standing.ts';

/** So many jobs of one stage are shown one by one; more become one thing. */
const MOST_JOBS = 3;

/** What is open, in as many things as are counted: many jobs are one. */
export function thingsOf(findings: readonly Finding[]): readonly Item[] {
  const jobs = findings.filter(({ key }) => key.startsWith('job:'));
  const one = (finding: Finding): Item => ({
    text: finding.says,
    tone: finding.state === 'doubtful' ? 'soon' : 'late',
    buttons: leadButtons(finding),
  });
  if (jobs.length <= MOST_JOBS) return findings.map(one);
  const names = jobs.slice(0, MOST_JOBS).map(({ says }) => says.replace('Job still open: ', ''));
  const many: Item = {
    text: `${jobs.length} jobs still open`,
    note: `${names.join(', ')} and ${jobs.length - MOST_JOBS} more`,
    tone: 'late',
    buttons: [{ label: 'What can be done', does: { command: 'now', action: 'page', args: {} } }],
  };
  return [
    ...findings.filter(({ key }) => key === 'before').map(one),
    many,
    ...findings.filter(({ key }) => key !== 'before' && !key.startsWith('job:')).map(one),
  ];
}

export interface ReadyView {
  readonly readiness: Readiness;
  readonly facts: StageFacts;
  /** One page of what is missing, with the buttons to its neighbours. */
  readonly shown: readonly Item[];
  readonly count: number;
  readonly pageButtons: readonly Button[];
  readonly where: string | undefined;
}

/** "Are we ready?": no, with what is missing and its buttons; or yes, with what to mind. */
export function readyAnswer({ readiness, facts, shown, count, pageButtons, where }: ReadyView): Answer {
  const { stage, unproved, ready } = readiness;
  const standing = standingOf(stage, facts);
  const passed = standing.kind === 'passed';
  const result = passed
    ? `${stage.name} is passed, ${sayPass(standing.pass, facts)}`
    : ready
      ? `Yes: ready for ${stage.name}`
      : `No: ${sayThings(count)} before ${stage.name}`;
  const cautions = startingStages.find(({ key }) => key === stage.key)?.cautions ?? [];
  const working = [
    ...(passed ? standing.pass.against.map((line) => `Passed against: ${line}`) : []),
    ...remembered(stage, facts),
    ...temporaryLines(facts),
  ];
  return {
    kind: 'answer',
    subject: 'Ready?',
    result,
    tone: passed || ready ? 'done' : 'late',
    ...certaintyOf(standing, facts, where),
    // what a passed stage would ask for today is nobody's question; what it was passed against is
    items: passed ? [] : shown,
    ...(unproved.length === 0 || passed
      ? {}
      : { facts: [['Passed once', unproved.map(sayProof).join('; ')] as const] }),
    ...(working.length === 0 ? {} : { working }),
    ...((ready || passed) && cautions.length > 0 ? { caution: cautions.join(' ') } : {}),
    buttons: [...(passed ? [] : pageButtons), ...stageButtons(stage, passed)],
    audience: 'crew',
    data: readyData(readiness, standing, facts),
  };
}

/** What going through a stage has to show: what would meet it, not what is lacking. */
function sayProof({ says }: Finding): string {
  return says
    .replace(/ has not been read$/, ' is read and within limits')
    .replace(/^Nobody has said yet: /, 'somebody says: ');
}

function certaintyOf(
  standing: Standing,
  { today }: StageFacts,
  where: string | undefined,
): { readonly certainty?: string } {
  const said = [
    standing.kind === 'reopened' &&
      `Passed ${sayDay(standing.pass.passedOn, today)}, open again: ${standing.why}.`,
    where !== undefined && `${where}.`,
  ].filter(Boolean);
  return said.length === 0 ? {} : { certainty: said.join(' ') };
}

function stageButtons({ key }: Stage, passed: boolean): readonly Button[] {
  const args = { stage: key };
  return [
    { label: 'How it is done', does: { command: 'stage', action: 'steps', args } },
    ...(passed ? [] : [{ label: 'Pass it', does: { command: 'stage', action: 'pass', args } }]),
    { label: 'All stages', does: { command: 'stage', action: 'list', args: {} } },
  ];
}

/** Passes with something open, of this stage and of those before it: they stay visible. */
export function remembered(stage: Stage, facts: StageFacts): readonly string[] {
  return facts.stages
    .filter(({ rank }) => rank <= stage.rank)
    .flatMap((one) => {
      const standing = standingOf(one, facts);
      return standing.kind === 'passed' && standing.pass.reason !== null
        ? [`${one.name} was passed with something open, ${sayPass(standing.pass, facts)}`]
        : [];
    });
}

/** What is temporary now, whatever the stage. */
export function temporaryLines({ measures, stages, today }: StageFacts): readonly string[] {
  return measures.filter(isInPlace).map(({ what, putOn, undoneBefore, until }) => {
    const before = stages.find(({ key }) => key === undoneBefore)?.name;
    const limits = [until !== null && `until ${until}`, before !== undefined && `undo before ${before}`];
    return [
      'Temporary: ',
      [what, `since ${sayDay(putOn, today)}`, ...limits].filter(Boolean).join(', '),
    ].join('');
  });
}

/** "Mon 23 Nov by Ada"; with the reason where something was open. */
export function sayPass({ passedOn, byName, reason }: Pass, { today }: Pick<StageFacts, 'today'>): string {
  const when = `${sayDay(passedOn, today)} by ${byName}`;
  return reason === null ? when : `${when}: “${reason}”`;
}

function readyData(
  { stage, missing, unproved, ready }: Readiness,
  standing: Standing,
  facts: StageFacts,
): JsonObject {
  const things = (findings: readonly Finding[]): JsonObject[] =>
    findings.map(({ key, state, says, conditionId }) => ({
      thing: key,
      state,
      says,
      condition: conditionId,
    }));
  return {
    kind: 'ready',
    stage: stage.key,
    ready,
    standing: standing.kind,
    ...(standing.kind === 'reopened' ? { reopenedBy: standing.why } : {}),
    missing: things(missing),
    unproved: things(unproved),
    temporary: facts.measures.filter(isInPlace).map(({ id }) => id),
  };
}

/** Every stage with where it stands. */
export function stageList(facts: StageFacts): Answer {
  const standings = facts.stages.map((stage) => ({ stage, standing: standingOf(stage, facts) }));
  const next = standings.find(({ standing }) => standing.kind !== 'passed');
  const passed = standings.filter(({ standing }) => standing.kind === 'passed').length;
  const later = standings.filter(({ stage, standing }) => standing.kind === 'open' && stage !== next?.stage);
  const working = temporaryLines(facts);
  return {
    kind: 'answer',
    subject: 'Stages',
    result: next === undefined ? 'Every stage is passed' : `Next: ${next.stage.name}`,
    tone: next === undefined ? 'done' : 'plain',
    certainty: `${passed} of ${standings.length} passed`,
    items: [
      ...standings
        .filter(({ stage, standing }) => standing.kind !== 'open' || stage === next?.stage)
        .map(
          ({ stage, standing }): Item => ({
            text: stage.name,
            note: sayStanding(standing, facts),
            tone: standing.kind === 'passed' ? 'done' : standing.kind === 'reopened' ? 'late' : 'plain',
          }),
        ),
      ...(later.length === 0
        ? []
        : [{ text: 'Then', note: later.map(({ stage }) => stage.name).join(', ') }]),
    ],
    ...(working.length === 0 ? {} : { working }),
    menu: {
      prompt: 'Are we ready for one of them?',
      does: { command: 'ready', action: 'show', args: {} },
      arg: 'stage',
      choices: standings.slice(0, 25).map(({ stage }) => ({ label: stage.name, value: stage.key })),
    },
    audience: 'crew',
    data: {
      kind: 'stages',
      next: next?.stage.key ?? null,
      stages: standings.map(({ stage, standing }) => ({
        stage: stage.key,
        name: stage.name,
        standing: standing.kind,
      })),
    },
  };
}

function sayStanding(standing: Standing, facts: StageFacts): string {
  switch (standing.kind) {
    case 'passed':
      return `Passed ${sayPass(standing.pass, facts)}`;
    case 'reopened':
      return `Open again: ${standing.why}. It was passed ${sayPass(standing.pass, facts)}`;
    case 'open':
      return 'Not passed';
  }
}
