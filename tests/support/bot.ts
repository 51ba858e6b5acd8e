import type { Catalogue } from '../../src/bot/catalogue.ts';
import { catalogueOf } from '../../src/bot/catalogue.ts';
import { makeDispatcher } from '../../src/bot/dispatch.ts';
import { type FileSource, NO_FILES } from '../../src/bot/file-source.ts';
import type { Said } from '../../src/bot/hear.ts';
import { loadCommands } from '../../src/bot/load-commands.ts';
import type { Request, Result } from '../../src/bot/request.ts';
import { clockAt, type SetClock } from '../../src/core/clock.ts';
import type { JsonObject } from '../../src/core/json.ts';
import type { Answer, Form } from '../../src/core/reply.ts';
import { instantOf } from '../../src/core/time.ts';
import { openTeams, type Teams } from '../../src/teams.ts';

const commands = new URL('../../commands/', import.meta.url);
let known: Catalogue | undefined;

/** Every command there is, loaded once for a test file. */
export async function allCommands(): Promise<Catalogue> {
  known ??= catalogueOf(await loadCommands(commands));
  return known;
}

export interface Reported {
  readonly fault: unknown;
  readonly reference: string;
}

export interface Asked {
  readonly as?: string;
  readonly id?: string;
  readonly outside?: boolean;
  readonly channel?: string;
  /** The channel that the thread spoken in hangs on. */
  readonly threadOf?: string;
  readonly people?: Readonly<Record<string, string>>;
}

/** The bot behind the platform: real commands, real records in memory, a clock that stands still until it is moved. */
export interface CrewBot {
  readonly clock: SetClock;
  readonly teams: Teams;
  /** Faults of ours that were logged. */
  readonly reported: readonly Reported[];
  /** `order place`, with its options. */
  run(command: string, options?: JsonObject, asked?: Asked): Promise<Result>;
  press(ref: string, fields?: Readonly<Record<string, string>>, asked?: Asked): Promise<Result>;
  answer(request: Request): Promise<Result>;
  hear(said: Said): Promise<Result | null>;
}

export const TEAM = '500';
export const CHANNEL = '600';

/** A Monday morning in London on which nobody has a holiday. */
export const MONDAY = instantOf('2026-11-23', '10:00', 'Europe/London');

/** @param files what people may hand over; nothing unless said otherwise. */
export async function openCrewBot(catalogue?: Catalogue, files: FileSource = NO_FILES): Promise<CrewBot> {
  const clock = clockAt(MONDAY);
  const reported: Reported[] = [];
  const report = (fault: unknown, reference: string): void => void reported.push({ fault, reference });
  const teams = openTeams({ shelf: { file: ':memory:' }, clock, report });
  const dispatcher = makeDispatcher({
    catalogue: catalogue ?? (await allCommands()),
    desks: teams,
    clock,
    files,
    report,
    newReference: () => 'K7Q2',
  });
  let asked = 0;
  const ask = (
    asks: Request['asks'],
    { as = 'Ada', id, outside, channel, threadOf, people = {} }: Asked = {},
  ) => {
    asked += 1;
    const place = {
      teamId: TEAM,
      channelId: channel ?? CHANNEL,
      channelName: 'hill-climb',
      ...(threadOf && { threadOf }),
    };
    return dispatcher.answer({
      id: id ?? `interaction-${asked}`,
      who: { id: as.toLowerCase(), name: as },
      place: outside ? null : place,
      people,
      asks,
    });
  };
  return {
    clock,
    teams,
    reported,
    answer: (request) => dispatcher.answer(request),
    hear: (message) => dispatcher.hear(message),
    run(line, options = {}, how = {}) {
      const [command = '', subcommand = null] = line.split(' ');
      return ask({ kind: 'run', command, subcommand, options }, how);
    },
    press: (ref, fields = {}, how = {}) => ask({ kind: 'press', ref, fields }, how),
  };
}

/** The card of an answer. @throws when a form came instead. */
export function cardIn({ reply }: Result): Answer {
  if (reply.kind === 'answer') return reply;
  throw new Error(`a form came instead of an answer: ${reply.title}`);
}

/** @throws when an answer came instead. */
export function formIn({ reply }: Result): Form {
  if (reply.kind === 'form') return reply;
  throw new Error(`an answer came instead of a form: ${reply.result}`);
}

/** What was said against the request. @throws when it was done. */
export function refusalIn(result: Result): { readonly code: string; readonly message: string } {
  if (!result.ok) return result.error;
  throw new Error(`it was done: ${JSON.stringify(result.reply)}`);
}
