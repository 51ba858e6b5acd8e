import type { Json, JsonObject } from '../core/json.ts';
import type { ActionRef, Answer, Button, Form } from '../core/reply.ts';
import { UserError } from '../core/user-error.ts';
import { readActionRef, writeActionRef } from './action-ref.ts';
import type { Catalogue } from './catalogue.ts';
import { type OptionSpec, optionsOf } from './options.ts';
import type { Request, RunCommand } from './request.ts';

/** Argument that names what is run again: `injector`, or `order list`. */
const WHAT = '_run';

/** The platform's forms hold five fields. */
const MOST_FIELDS = 5;

/**
 * Adds the button that changes what a sum assumed. The request itself travels in the button, so it works anywhere and after
 * a restart; where it is too long for that there is no button, and the options can still be typed.
 */
export function withAgain(answer: Answer, asks: RunCommand, catalogue: Catalogue): Answer {
  const runnable = catalogue.runnable(asks.command, asks.subcommand);
  if (!runnable || runnable.assumes.length === 0 || assumedNothing(answer)) return answer;
  const does = { command: 'again', action: 'form', args: { [WHAT]: nameOf(asks), ...asText(asks.options) } };
  if (!fits(does) || !fits({ ...does, action: 'run' })) return answer;
  const button: Button = { label: 'Change what was assumed', does };
  return { ...answer, buttons: [...(answer.buttons ?? []), button] };
}

/** An exact answer has nothing to change: it lists its assumptions, and there are none. */
function assumedNothing({ data }: Answer): boolean {
  const { assumptions } = data;
  return Array.isArray(assumptions) && assumptions.length === 0;
}

/** Asks for the assumed values, with what they were. */
export function againForm({ args }: ActionRef, catalogue: Catalogue): Form {
  const { command, subcommand } = askedIn(args);
  const runnable = catalogue.runnable(command, subcommand);
  if (!runnable) throw outdated();
  const assumed = optionsOf(runnable).filter(({ name }) => runnable.assumes.includes(name));
  return {
    kind: 'form',
    title: 'What was assumed',
    does: { command: 'again', action: 'run', args: withoutAssumed(args, runnable.assumes) },
    fields: assumed.slice(0, MOST_FIELDS).map(({ name, description, choices, unlessSaid }) => {
      const value = args[name] === undefined ? unlessSaid : String(args[name]);
      return {
        name,
        label: name,
        hint: description,
        required: false,
        ...(value === undefined ? {} : { value }),
        ...(choices.length === 0
          ? {}
          : { choices: choices.map((choice) => ({ label: choice, value: choice })) }),
      };
    }),
  };
}

/** A press that runs a request as it stands; null where it is too long to be carried by a button. */
export function runRef(asks: RunCommand): ActionRef | null {
  const does = { command: 'again', action: 'run', args: { [WHAT]: nameOf(asks), ...asText(asks.options) } };
  return fits(does) ? does : null;
}

/** Turns a form filled with what was assumed back into the request it changes; any other stays what it is. */
export function settleAgain(request: Request, catalogue: Catalogue): Request {
  const { asks } = request;
  const ref = asks.kind === 'press' ? readActionRef(asks.ref) : null;
  if (asks.kind !== 'press' || ref?.command !== 'again' || ref.action !== 'run') return request;
  return { ...request, asks: againRequest(ref, asks.fields, catalogue) };
}

/** The request that a filled form makes of the one it came from. */
function againRequest(
  { args }: ActionRef,
  fields: Readonly<Record<string, string>>,
  catalogue: Catalogue,
): RunCommand {
  const { command, subcommand } = askedIn(args);
  const runnable = catalogue.runnable(command, subcommand);
  if (!runnable) throw outdated();
  const given = { ...args, ...fields };
  const options = optionsOf(runnable).flatMap((spec): [string, Json][] => {
    const text = given[spec.name];
    return text === undefined || text === '' ? [] : [[spec.name, typed(spec, String(text))]];
  });
  return { kind: 'run', command, subcommand, options: Object.fromEntries(options) };
}

/** Text back into what the platform would have handed over for this option. */
function typed({ kind }: OptionSpec, text: string): Json {
  if (kind === 'integer' || kind === 'number') return Number(text.replace(',', '.'));
  return kind === 'yes-no' ? text === 'true' : text;
}

const nameOf = ({ command, subcommand }: RunCommand): string =>
  subcommand === null ? command : `${command} ${subcommand}`;

function askedIn(args: ActionRef['args']): { readonly command: string; readonly subcommand: string | null } {
  const [command = '', subcommand = null] = String(args[WHAT] ?? '').split(' ');
  return { command, subcommand };
}

function withoutAssumed(args: ActionRef['args'], assumes: readonly string[]): ActionRef['args'] {
  return Object.fromEntries(Object.entries(args).filter(([name]) => !assumes.includes(name)));
}

function asText(options: JsonObject): Record<string, string> {
  return Object.fromEntries(
    Object.entries(options).flatMap(([name, value]) =>
      value === undefined || value === null ? [] : [[name, String(value)]],
    ),
  );
}

function fits(does: ActionRef): boolean {
  try {
    writeActionRef(does);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

const outdated = (): UserError =>
  new UserError(
    'stale-message',
    'That sum has changed since. Nothing was lost: type it again, /help shows how.',
  );
