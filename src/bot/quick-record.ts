import type { Json, JsonObject } from '../core/json.ts';
import type { Answer, Button } from '../core/reply.ts';
import type { RecordQuestion } from '../phrases/quick/read-record.ts';
import type { RecordAsks } from '../phrases/quick/record-questions.ts';
import { runRef } from './again.ts';
import type { Handover } from './handover.ts';
import type { RunCommand } from './request.ts';

/** Which command has the answer to a question to the record. */
const RUNS: Readonly<Record<RecordAsks, readonly [command: string, subcommand: string | null]>> = {
  now: ['now', null],
  ready: ['ready', null],
  when: ['when', 'date'],
  orders: ['order', 'list'],
  missing: ['part', 'list'],
  drive: ['runin', 'today'],
};

/** What a question says of its own, which goes into the option of the same name. */
const SAID: Readonly<Record<RecordAsks, (question: RecordQuestion) => Record<string, Json | undefined>>> = {
  now: ({ minutes, people }) => ({ minutes, people }),
  ready: ({ stage }) => ({ stage }),
  when: () => ({}),
  orders: () => ({}),
  missing: () => ({ where: 'missing' }),
  drive: () => ({}),
};

/** The request that a question to the record comes to. */
export function recordRun(question: RecordQuestion): RunCommand {
  const [command, subcommand] = RUNS[question.asks];
  const options: JsonObject = Object.fromEntries(
    Object.entries(SAID[question.asks](question)).filter(([, value]) => value !== undefined),
  );
  return { kind: 'run', command, subcommand, options };
}

/** The record's own answer, with the command that gave it. */
export function recordHandover(question: RecordQuestion): Handover {
  const asks = recordRun(question);
  const asked = asks.subcommand === null ? asks.command : `${asks.command} ${asks.subcommand}`;
  return { kind: 'handover', asks, finish: (answer) => ({ ...answer, data: { ...answer.data, asked } }) };
}

/** Kinds of answer that only somebody who spoke to the bot gets: overheard, the line was talk. */
export const ONLY_TO_BOT: ReadonlySet<string> = new Set(['symptom', 'reading-said']);

/** A guide of the fault finder, as far as it is offered. */
interface Offered {
  readonly id: string;
  readonly name: string;
}

/** A symptom is said to people as often as to the bot: it asks before a search is begun. */
export function symptomCard(line: string, guides: readonly Offered[]): Answer {
  const [only, another] = guides;
  return {
    kind: 'answer',
    subject: 'A fault?',
    result:
      only !== undefined && another === undefined
        ? `${only.name}: look for the cause together?`
        : `“${line.trim().slice(0, 60)}”: what is it nearest to?`,
    certainty: 'The button begins a search, the cheapest decisive test first. Nothing was begun yet.',
    tone: 'soon',
    buttons: guides.slice(0, MOST_BUTTONS).map(({ id, name }) => ({
      label: another === undefined ? 'Find the cause' : name.slice(0, LONGEST_LABEL),
      does: { command: 'fault', action: 'start', args: { symptom: id } },
    })),
    audience: 'asker',
    data: {
      kind: 'symptom',
      candidates: guides
        .slice(0, MOST_BUTTONS)
        .map(({ id, name }) => ({ kind: 'symptom', label: name, value: id })),
    },
  };
}

const MOST_BUTTONS = 5;
const LONGEST_LABEL = 34;

/** Logs a line that was typed, as it was typed; undefined where no button can carry it. */
export function logButton(line: string): Button | undefined {
  const does = runRef({
    kind: 'run',
    command: 'reading',
    subcommand: 'log',
    options: { reading: line.trim() },
  });
  return does === null ? undefined : { label: 'Log this reading', does };
}

/** A reading that no sum is about: all that can be done with it is to log it. */
export function readingCard(line: string, kind: string, button: Button): Answer {
  return {
    kind: 'answer',
    subject: 'A reading?',
    result: `“${line.trim().slice(0, 80)}”: log it as ${kind}?`,
    certainty: 'Nothing was logged yet.',
    tone: 'soon',
    buttons: [button],
    audience: 'asker',
    data: { kind: 'reading-said', reading: kind },
  };
}
