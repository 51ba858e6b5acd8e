import { z } from 'zod';
import { AlreadyDone } from '../core/already-done.ts';
import type { Clock } from '../core/clock.ts';
import type { Reply } from '../core/reply.ts';
import { StoreProblem } from '../core/store-problem.ts';
import type { Choice } from '../core/user-error.ts';
import { UserError } from '../core/user-error.ts';
import type { Desks } from '../records/desks.ts';
import { readActionRef } from './action-ref.ts';
import type { Catalogue } from './catalogue.ts';
import { type Asks, draftReply, settleDraft } from './drafts.ts';
import { alreadyDoneReply, failureReply } from './failure-reply.ts';
import type { Hand, Person, Place } from './hand.ts';
import type { Failure, Request, Result, SuggestRequest } from './request.ts';

export interface Dispatcher {
  /** Carries a request out. Never throws: whatever happens, there is something to show. */
  answer(request: Request): Promise<Result>;
  /** Known values for an option being typed; none when anything is wrong, since nobody has asked yet. */
  suggest(request: SuggestRequest): readonly Choice[];
}

export interface DispatcherParts {
  readonly catalogue: Catalogue;
  readonly desks: Desks;
  readonly clock: Clock;
  /** Tells whoever keeps the machine about a fault of ours, under the reference people are shown. */
  readonly report: (fault: unknown, reference: string, request: Request | SuggestRequest) => void;
  /** A short reference nobody can guess and everybody can read out. */
  readonly newReference: () => string;
}

const LONGEST_LIST = 25;

export function makeDispatcher(parts: DispatcherParts): Dispatcher {
  return {
    answer: (request) => answer(parts, request),
    suggest(request) {
      const known = parts.catalogue.runnable(request.command, request.subcommand)?.suggest[request.option];
      if (known === undefined) return [];
      try {
        return known(request.typed, makeHand(parts, request, 'suggestion')).slice(0, LONGEST_LIST);
      } catch (fault) {
        if (!(fault instanceof UserError)) parts.report(fault, parts.newReference(), request);
        return [];
      }
    },
  };
}

async function answer(parts: DispatcherParts, request: Request): Promise<Result> {
  let asks: Asks = request.asks;
  let saved = false;
  try {
    const settled = settleDraft(asks, request, parts.desks);
    asks = settled?.asks ?? asks;
    const hand = makeHand(parts, request, settled?.changeKey ?? request.id, () => {
      saved = true;
    });
    return { ok: true, reply: await run(parts, asks, hand) };
  } catch (fault) {
    try {
      return explain(parts, request, asks, fault);
    } catch (unexplained) {
      return outage(parts, request, unexplained, saved);
    }
  }
}

function run(parts: DispatcherParts, asks: Asks, hand: Hand): Reply | Promise<Reply> {
  if (asks.kind === 'run') {
    const runnable = parts.catalogue.runnable(asks.command, asks.subcommand);
    if (runnable === undefined) throw outdated();
    return runnable.run(asks.options, hand);
  }
  const ref = readActionRef(asks.ref);
  const action = ref && parts.catalogue.find(ref.command)?.command.actions[ref.action];
  if (!ref || !action) throw outdated();
  return action.run({ ...ref.args, ...asks.fields }, hand);
}

const outdated = (): UserError =>
  new UserError(
    'stale-message',
    'That belongs to an older version of this bot. Nothing was changed. Reload the app, or type the command: /help lists them.',
  );

/** Words for what people did; anything else is a fault of ours and thrown on. */
function explain(parts: DispatcherParts, request: Request, asks: Asks, fault: unknown): Result {
  if (fault instanceof AlreadyDone) return { ok: true, reply: alreadyDoneReply(fault) };
  if (fault instanceof UserError) {
    const { code, message, question } = fault;
    const kept = question && draftReply(message, question, asks, request, parts);
    return refused({ code, message }, kept ?? undefined);
  }
  if (fault instanceof z.ZodError) return refused({ code: 'bad-input', message: badInput(fault) });
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

function badInput(error: z.ZodError): string {
  const lines = error.issues.map(({ path, message }) =>
    path.length > 0 ? `${path.join('.')}: ${message}` : message,
  );
  return `${lines.join('. ')}. Nothing was changed.`;
}

interface Asker {
  readonly who: Person;
  readonly place: Place | null;
  readonly people?: Readonly<Record<string, string>>;
}

function makeHand(
  parts: DispatcherParts,
  { who, place, people = {} }: Asker,
  changeKey: string,
  onSaved: () => void = () => {},
): Hand {
  const { catalogue, clock, desks } = parts;
  const here = (): Place => {
    if (place === null) {
      throw new UserError(
        'not-now',
        'The record belongs to a crew: ask in a channel of its server. Sums work here too.',
      );
    }
    return place;
  };
  const desk = () => desks.at(here().teamId);
  const by = () => ({
    interactionId: changeKey,
    personId: who.id,
    personName: who.name,
    atMs: clock.nowMs(),
  });
  return {
    clock,
    who,
    catalogue,
    nameOf: (personId) => people[personId] ?? personId,
    notice: (noticeId) => desk().notices.find(noticeId),
    get place() {
      return here();
    },
    get record() {
      return desk().record;
    },
    change(work) {
      const changed = desk().ledger.change(by(), () => work(desk().record));
      onSaved();
      return changed;
    },
    undo(changeId) {
      const { ledger } = desk();
      const last = changeId ?? ledger.lastBy(who.id)?.id;
      if (last === undefined) throw new UserError('not-found', 'There is nothing of yours left to undo.');
      const undone = ledger.undo(by(), last);
      onSaved();
      return undone;
    },
  };
}
