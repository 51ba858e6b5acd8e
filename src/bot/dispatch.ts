import { AlreadyDone } from '../core/already-done.ts';
import type { Clock } from '../core/clock.ts';
import type { Reply } from '../core/reply.ts';
import { StoreProblem } from '../core/store-problem.ts';
import type { Choice } from '../core/user-error.ts';
import { UserError } from '../core/user-error.ts';
import type { Desks } from '../records/desks.ts';
import { readActionRef } from './action-ref.ts';
import { againForm, settleAgain, withAgain } from './again.ts';
import type { Catalogue } from './catalogue.ts';
import { draftReply, settleDraft } from './drafts.ts';
import { alreadyDoneReply, failureReply } from './failure-reply.ts';
import type { FileSource } from './file-source.ts';
import type { Hand } from './hand.ts';
import { AskedBack, type Handover } from './handover.ts';
import { isTalk, requestIn, type Said } from './hear.ts';
import { type KeptRequests, keptRequests } from './kept-requests.ts';
import { makeHand } from './make-hand.ts';
import { painted } from './paint.ts';
import type { Failure, Request, Result, SuggestRequest } from './request.ts';

export interface Dispatcher {
  /** Carries a request out. Never throws: whatever happens, there is something to show. Long work tells how far it has come. */
  answer(request: Request, onProgress?: (said: string) => void): Promise<Result>;
  /** Answers a message, if it asks anything; null is silence, which is what talk gets. Never throws. */
  hear(said: Said, onProgress?: (said: string) => void): Promise<Result | null>;
  /** Known values for an option being typed; none when anything is wrong, since nobody has asked yet. */
  suggest(request: SuggestRequest): readonly Choice[];
}

export interface DispatcherParts {
  readonly catalogue: Catalogue;
  readonly desks: Desks;
  readonly clock: Clock;
  readonly files: FileSource;
  /** Tells whoever keeps the machine about a fault of ours, under the reference people are shown. */
  readonly report: (fault: unknown, reference: string, request: Request | SuggestRequest) => void;
  /** A short reference nobody can guess and everybody can read out. */
  readonly newReference: () => string;
}

const LONGEST_LIST = 25;

/** A suggestion only looks: nobody has asked for a change, or for an answer. */
const NOTHING_YET = { kind: 'press', ref: '', fields: {} } as const;
const LOOKING = { pressedInPlace: false, onSaved: () => {}, onProgress: () => {} };

export function makeDispatcher(parts: DispatcherParts): Dispatcher {
  return {
    answer: (request, onProgress = () => {}) => answer(parts, request, onProgress),
    async hear(said, onProgress = () => {}) {
      const request = requestIn(said);
      if (request === null) return null;
      const result = await answer(parts, request, onProgress);
      return isTalk(said, result) ? null : result;
    },
    suggest(request) {
      const known = parts.catalogue.runnable(request.command, request.subcommand)?.suggest[request.option];
      if (known === undefined) return [];
      try {
        return known(
          request.typed,
          makeHand(parts, { ...request, id: 'suggestion', people: {}, asks: NOTHING_YET }, LOOKING),
          request.given,
        ).slice(0, LONGEST_LIST);
      } catch (fault) {
        if (!(fault instanceof UserError)) parts.report(fault, parts.newReference(), request);
        return [];
      }
    },
  };
}

async function answer(
  parts: DispatcherParts,
  request: Request,
  onProgress: (said: string) => void,
): Promise<Result> {
  let settled = request;
  let saved = false;
  const kept = keptRequests(request, parts);
  try {
    settled = settleAgain(settleDraft(request, parts.desks) ?? request, parts.catalogue, kept.find);
    const errand = {
      pressedInPlace: settled === request && request.asks.kind === 'press',
      onSaved: () => {
        saved = true;
      },
      onProgress,
    };
    const reply = await run(parts, settled.asks, {
      kept,
      handFor(asks) {
        // a request handed over is the one that a question is about
        settled = { ...settled, asks };
        return makeHand(parts, settled, errand);
      },
    });
    return {
      ok: true,
      reply: await painted(reply, (fault) => parts.report(fault, parts.newReference(), request)),
    };
  } catch (fault) {
    try {
      return explain(parts, settled, fault);
    } catch (unexplained) {
      return outage(parts, request, unexplained, saved);
    }
  }
}

interface Course {
  readonly kept: KeptRequests;
  readonly handFor: (asks: Request['asks']) => Hand;
}

async function run(parts: DispatcherParts, asks: Request['asks'], course: Course): Promise<Reply> {
  const { kept, handFor } = course;
  const { catalogue } = parts;
  if (asks.kind === 'run') {
    const runnable = catalogue.runnable(asks.command, asks.subcommand);
    if (runnable === undefined) throw outdated();
    const outcome = await runnable.run(asks.options, handFor(asks));
    if (outcome.kind === 'answer') return withAgain(outcome, asks, catalogue, kept.keep);
    return outcome.kind === 'form' ? outcome : carryOver(parts, outcome, course);
  }
  const ref = readActionRef(asks.ref);
  if (ref?.command === 'again' && ref.action === 'form') return againForm(ref, catalogue, kept.find);
  const actions = (ref && catalogue.find(ref.command)?.command.actions) ?? {};
  // what every object inherits is no action, whatever a button says
  const action = ref && Object.hasOwn(actions, ref.action) ? actions[ref.action] : undefined;
  if (!ref || !action) throw outdated();
  const outcome = await action.run({ ...ref.args, ...asks.fields }, handFor(asks));
  return outcome.kind === 'handover' ? carryOver(parts, outcome, course) : outcome;
}

/** The answer of the command that a request was handed over to, finished by whoever handed it over. */
async function carryOver(parts: DispatcherParts, { asks, finish }: Handover, course: Course): Promise<Reply> {
  const reply = await run(parts, asks, course);
  return reply.kind === 'answer' ? finish(reply) : reply;
}

const outdated = (): UserError =>
  new UserError(
    'stale-message',
    'That belongs to an older version of this bot. Nothing was changed. Reload the app, or type the command: /help lists them.',
  );

/** Words for what people did; anything else is a fault of ours and thrown on. */
function explain(parts: DispatcherParts, request: Request, fault: unknown): Result {
  if (fault instanceof AlreadyDone) return { ok: true, reply: alreadyDoneReply(fault) };
  if (fault instanceof AskedBack) return refused({ code: fault.code, message: fault.message }, fault.card);
  if (fault instanceof UserError) {
    const { code, message, question } = fault;
    const kept = question && draftReply(message, question, request, parts);
    return refused({ code, message }, kept ?? undefined);
  }
  throw fault;
}

function outage(parts: DispatcherParts, request: Request, fault: unknown, saved: boolean): Result {
  const reference = parts.newReference();
  parts.report(fault, reference, request);
  // trouble with the disk is the one fault of ours whose own words help the person who asked
  if (fault instanceof StoreProblem) return refused({ code: 'outage', message: fault.message, reference });
  const kept = saved
    ? 'What you entered was saved; only the answer failed.'
    : 'Nothing was saved. Try it once more.';
  return refused({
    code: 'outage',
    message: `Something broke on our side. ${kept} If it breaks again, give reference ${reference} to whoever runs the bot.`,
    reference,
  });
}

const refused = (error: Failure, reply: Reply = failureReply(error)): Result => ({ ok: false, error, reply });
