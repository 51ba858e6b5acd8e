import type { z } from 'zod';
import type { JsonObject } from '../core/json.ts';
import type { Reply } from '../core/reply.ts';
import type { Choice } from '../core/user-error.ts';
import type { Hand } from './hand.ts';
import type { Handover } from './handover.ts';
import { readInput } from './read-input.ts';

/** What a person may do: options declared once by a zod object, and the handler that gets them typed. */
export interface Runnable {
  readonly description: string;
  readonly input: z.ZodObject;
  /** A line that works as it stands; shown by /help and run by the tests. */
  readonly example?: string;
  readonly suggest: Readonly<Record<string, Suggest>>;
  /** Options that are assumed when they are left out; the answer offers to change them without typing all again. */
  readonly assumes: readonly string[];
  run(input: unknown, hand: Hand): Outcome | Promise<Outcome>;
}

/** An answer or a form, or the request of another command that has the answer. */
export type Outcome = Reply | Handover;

/** Offers known values for an option while it is being typed, beside what is `given` so far; at most 25 are shown. */
export type Suggest = (typed: string, hand: Hand, given: JsonObject) => readonly Choice[];

/** What a button, menu or form of a command leads to. */
export interface Action {
  readonly input: z.ZodObject;
  run(input: unknown, hand: Hand): Outcome | Promise<Outcome>;
}

/** One slash command. Its name is the name of its file. */
export interface Command {
  readonly description: string;
  readonly does: Runnable | Readonly<Record<string, Runnable>>;
  readonly actions: Readonly<Record<string, Action>>;
}

interface RunnableSource<Input extends z.ZodObject> {
  readonly description: string;
  readonly input: Input;
  readonly example?: string;
  readonly suggest?: Partial<Record<keyof z.output<Input> & string, Suggest>>;
  readonly assumes?: readonly (keyof z.output<Input> & string)[];
  run(input: z.output<Input>, hand: Hand): Outcome | Promise<Outcome>;
}

interface ActionSource<Input extends z.ZodObject> {
  readonly input: Input;
  run(input: z.output<Input>, hand: Hand): Outcome | Promise<Outcome>;
}

/** A subcommand: `/order place` is `subcommands.place` of commands/order.ts. */
export function subcommand<Input extends z.ZodObject>(source: RunnableSource<Input>): Runnable {
  const { description, input, example, suggest, assumes = [] } = source;
  return {
    description,
    input,
    ...(example === undefined ? {} : { example }),
    suggest: definedOnly(suggest ?? {}),
    assumes,
    run: (raw, hand) => source.run(readInput(input, raw), hand),
  };
}

/** @throws UserError from its `run` when a press or form brings arguments that do not fit `input`. */
export function action<Input extends z.ZodObject>(source: ActionSource<Input>): Action {
  return { input: source.input, run: (raw, hand) => source.run(readInput(source.input, raw), hand) };
}

interface SubcommandsSource {
  readonly description: string;
  readonly subcommands: Readonly<Record<string, Runnable>>;
  readonly actions?: Readonly<Record<string, Action>>;
}

/** Declares a command; with `subcommands` it cannot itself be run, as the platform has it. */
export function defineCommand(source: SubcommandsSource): Command;
export function defineCommand<Input extends z.ZodObject>(
  source: RunnableSource<Input> & { readonly actions?: Readonly<Record<string, Action>> },
): Command;
export function defineCommand<Input extends z.ZodObject>(
  source:
    | SubcommandsSource
    | (RunnableSource<Input> & { readonly actions?: Readonly<Record<string, Action>> }),
): Command {
  return {
    description: source.description,
    does: 'subcommands' in source ? source.subcommands : subcommand(source),
    actions: source.actions ?? {},
  };
}

/** Whether a command runs by itself or through its subcommands. */
export function isRunnable(does: Command['does']): does is Runnable {
  return typeof does['run'] === 'function';
}

function definedOnly(suggest: Partial<Record<string, Suggest>>): Record<string, Suggest> {
  return Object.fromEntries(
    Object.entries(suggest).filter((entry): entry is [string, Suggest] => entry[1] !== undefined),
  );
}
