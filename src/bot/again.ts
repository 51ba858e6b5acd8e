import type { Json, JsonObject } from '../core/json.ts';
import type { ActionRef, Answer, Button, Form } from '../core/reply.ts';
import { UserError } from '../core/user-error.ts';
import { readActionRef, writeActionRef } from './action-ref.ts';
import type { Catalogue } from './catalogue.ts';
import type { Runnable } from './command.ts';
import type { KeptRequests } from './kept-requests.ts';
import { type OptionSpec, optionsOf } from './options.ts';
import type { Request, RunCommand } from './request.ts';

/** Argument that names what is run again: `injector`, or `order list`. */
const WHAT = '_run';
/** Argument that names a request kept because no button could carry it. */
const KEPT = '_kept';

/** The platform's forms hold five fields. */
const MOST_FIELDS = 5;

/**
 * Adds the button that changes what a sum assumed. The request itself travels in the button, so it works anywhere and after
 * a restart; where it is too long for that it is kept for the crew, and the button names it.
 *
 * @param keep keeps the request and says its number; null where there is nothing to keep it in.
 */
export function withAgain(
  answer: Answer,
  asks: RunCommand,
  catalogue: Catalogue,
  keep: KeptRequests['keep'],
): Answer {
  const runnable = catalogue.runnable(asks.command, asks.subcommand);
  if (!runnable || runnable.assumes.length === 0 || assumedNothing(answer)) return answer;
  const carried = { command: 'again', action: 'form', args: shortArgs(asks, optionsOf(runnable)) };
  const does = fits(carried) || keep === null ? carried : { ...carried, args: { [KEPT]: keep(asks) } };
  if (!fits(does)) return answer;
  const button: Button = { label: 'Change what was assumed', does };
  return { ...answer, buttons: [...(answer.buttons ?? []), button] };
}

/** An exact answer has nothing to change: it lists its assumptions, and there are none. */
function assumedNothing({ data }: Answer): boolean {
  const { assumptions } = data;
  return Array.isArray(assumptions) && assumptions.length === 0;
}

/** Asks for the assumed values, with what they were. */
export function againForm(ref: ActionRef, catalogue: Catalogue, find: KeptRequests['find']): Form {
  const { asks, runnable, specs } = askedIn(ref.args, catalogue, find);
  const shown = fieldsOf(runnable, specs);
  const without = shown.map(({ name }) => name);
  const args = KEPT in ref.args ? ref.args : shortArgs(lacking(asks, without), specs);
  return {
    kind: 'form',
    title: 'What was assumed',
    does: { command: 'again', action: 'run', args },
    fields: shown.map(({ name, description, choices, unlessSaid }) => {
      const typed = asks.options[name];
      const value = typed === undefined ? unlessSaid : String(typed);
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

const fieldsOf = ({ assumes }: Runnable, specs: readonly OptionSpec[]): readonly OptionSpec[] =>
  specs.filter(({ name }) => assumes.includes(name)).slice(0, MOST_FIELDS);

/** A press that runs a request as it stands; null where it is too long to be carried by a button. */
export function runRef(asks: RunCommand): ActionRef | null {
  const does = { command: 'again', action: 'run', args: { [WHAT]: nameOf(asks), ...asText(asks.options) } };
  return fits(does) ? does : null;
}

/** Turns a form filled with what was assumed back into the request it changes; any other stays what it is. */
export function settleAgain(request: Request, catalogue: Catalogue, find: KeptRequests['find']): Request {
  const { asks } = request;
  const ref = asks.kind === 'press' ? readActionRef(asks.ref) : null;
  if (asks.kind !== 'press' || ref?.command !== 'again' || ref.action !== 'run') return request;
  return { ...request, asks: againRequest(ref, asks.fields, catalogue, find) };
}

/** The request that a filled form makes of the one it came from; an emptied field is what it is when it is left out. */
function againRequest(
  ref: ActionRef,
  fields: Readonly<Record<string, string>>,
  catalogue: Catalogue,
  find: KeptRequests['find'],
): RunCommand {
  const { asks, runnable, specs } = askedIn(ref.args, catalogue, find);
  const shown = fieldsOf(runnable, specs).map(({ name }) => name);
  const filled = specs.flatMap((spec): [string, Json][] => {
    const text = fields[spec.name];
    // what stands there unless it is said has not been said, least of all in its unit
    if (text === undefined || text === '' || text === spec.unlessSaid) return [];
    return [[spec.name, typed(spec, text)]];
  });
  const before = KEPT in ref.args ? lacking(asks, shown) : asks;
  return { ...asks, options: { ...before.options, ...Object.fromEntries(filled) } };
}

/** Text back into what the platform would have handed over for this option. */
function typed({ kind }: OptionSpec, text: string): Json {
  if (kind === 'integer' || kind === 'number') return Number(text.replace(',', '.'));
  return kind === 'yes-no' ? text === 'true' : text;
}

const nameOf = ({ command, subcommand }: RunCommand): string =>
  subcommand === null ? command : `${command} ${subcommand}`;

/** What a button carries or names. @throws UserError 'stale-message' for what this version does not know. */
function askedIn(args: ActionRef['args'], catalogue: Catalogue, find: KeptRequests['find']) {
  const kept = args[KEPT] === undefined ? undefined : find(Number(args[KEPT]));
  const [command = '', subcommand = null] = kept
    ? [kept.command, kept.subcommand]
    : String(args[WHAT] ?? '').split(' ');
  const runnable = catalogue.runnable(command, subcommand);
  if (!runnable) throw outdated();
  const specs = optionsOf(runnable);
  const asks: RunCommand = kept ?? { kind: 'run', command, subcommand, options: fullOptions(args, specs) };
  return { asks, runnable, specs };
}

const lacking = (asks: RunCommand, names: readonly string[]): RunCommand => ({
  ...asks,
  options: Object.fromEntries(Object.entries(asks.options).filter(([name]) => !names.includes(name))),
});

/** A request as short as it can be written: options by the fewest letters that name them, none that is as if left out. */
function shortArgs(asks: RunCommand, specs: readonly OptionSpec[]): ActionRef['args'] {
  const texts = Object.entries(asText(asks.options)).filter(
    ([name, text]) => specs.find((spec) => spec.name === name)?.unlessSaid !== text,
  );
  return {
    [WHAT]: nameOf(asks),
    ...Object.fromEntries(texts.map(([name, text]) => [shortest(name, specs), text])),
  };
}

function shortest(name: string, specs: readonly OptionSpec[]): string {
  const others = specs.filter((spec) => spec.name !== name);
  for (let letters = 1; letters < name.length; letters += 1) {
    const short = name.slice(0, letters);
    if (!others.some((spec) => spec.name.startsWith(short))) return short;
  }
  return name;
}

/** The other way round. @throws UserError 'stale-message' when letters name several options, or none. */
function fullOptions(args: ActionRef['args'], specs: readonly OptionSpec[]): JsonObject {
  const given = Object.entries(args).filter(([name]) => name !== WHAT);
  return Object.fromEntries(
    given.map(([short, text]) => {
      const [spec, ...more] = specs.some(({ name }) => name === short)
        ? specs.filter(({ name }) => name === short)
        : specs.filter(({ name }) => name.startsWith(short));
      if (spec === undefined || more.length > 0) throw outdated();
      return [spec.name, typed(spec, String(text))];
    }),
  );
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
