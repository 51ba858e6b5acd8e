import { z } from 'zod';
import type { Clock } from '../core/clock.ts';
import type { Answer, Button } from '../core/reply.ts';
import { type OpenQuestion, UserError } from '../core/user-error.ts';
import type { Desks } from '../records/desks.ts';
import { readActionRef } from './action-ref.ts';
import { runRef } from './again.ts';
import type { PressAction, Request, RunCommand } from './request.ts';

type Asks = RunCommand | PressAction;

const KeptAsks = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('run'),
    command: z.string(),
    subcommand: z.string().nullable(),
    options: z.record(z.string(), z.json()),
  }),
  z.object({ kind: z.literal('press'), ref: z.string(), fields: z.record(z.string(), z.string()) }),
]);

const Kept = z.object({ id: z.string(), asks: KeptAsks, people: z.record(z.string(), z.string()) });

const Chosen = z.object({ id: z.coerce.number().int(), choice: z.coerce.number().int() });

/** More than these do not fit one row of buttons on a phone. */
const MOST_BUTTONS = 5;

/**
 * A question instead of a guess: the request is kept, and each fair reading is a button that finishes it. Outside a server
 * there is nothing to keep it in, so each button carries the whole request; null where it is too long for one, so that the
 * refusal itself is shown.
 */
export function draftReply(
  message: string,
  question: OpenQuestion,
  { id, who, place, asks, people }: Request,
  { desks, clock }: { desks: Desks; clock: Clock },
): Answer | null {
  if (question.choices.length === 0) return null;
  if (place === null) return carriedReply(message, question, asks);
  const choices = question.choices.slice(0, MOST_BUTTONS);
  const draft = desks
    .at(place.teamId)
    .drafts.keep(
      { personId: who.id, request: { id, asks: { ...asks }, people }, field: question.field, choices },
      clock.nowMs(),
    );
  const buttons = choices.map(({ label }, choice) => ({
    label,
    does: { command: 'draft', action: 'choose', args: { id: draft.id, choice } },
  }));
  return questionCard(
    message,
    question,
    buttons,
    'What you typed is kept. Pick one, or type it again more exactly.',
  );
}

function carriedReply(message: string, { field, choices }: OpenQuestion, asks: Asks): Answer | null {
  if (asks.kind !== 'run') return null;
  const buttons = choices.slice(0, MOST_BUTTONS).flatMap(({ label, value }): readonly Button[] => {
    const does = runRef({ ...asks, options: { ...asks.options, [field]: value } });
    return does === null ? [] : [{ label, does }];
  });
  if (buttons.length === 0) return null;
  return questionCard(message, { field, choices }, buttons, 'Pick one, or type it again more exactly.');
}

function questionCard(
  message: string,
  { field, choices }: OpenQuestion,
  buttons: readonly Button[],
  certainty: string,
): Answer {
  return {
    kind: 'answer',
    subject: 'Which one?',
    result: message,
    certainty,
    tone: 'soon',
    buttons,
    audience: 'asker',
    data: { question: { field, choices: choices.slice(0, MOST_BUTTONS).map((choice) => ({ ...choice })) } },
  };
}

/**
 * Turns a pressed reading back into the request it settles; null when the press is about something else.
 *
 * It keeps the id it was first asked under, so however many questions and readings are pressed, it saves once.
 */
export function settleDraft(request: Request, desks: Desks): Request | null {
  const { asks, who, place } = request;
  const ref = asks.kind === 'press' ? readActionRef(asks.ref) : null;
  if (ref?.command !== 'draft' || place === null) return null;
  const named = Chosen.safeParse(ref.args).data;
  const draft = named && desks.at(place.teamId).drafts.find(named.id);
  const chosen = named && draft?.choices[named.choice];
  if (!draft || !chosen)
    throw new UserError('stale-message', 'That question is gone. Type the command again.');
  if (draft.personId !== who.id) {
    throw new UserError('not-yours', 'That question was put to somebody else. Type the command yourself.');
  }
  const kept = Kept.parse(draft.request);
  return {
    ...request,
    id: kept.id,
    people: kept.people,
    asks: withChoice(kept.asks, draft.field, chosen.value),
  };
}

function withChoice(asks: z.output<typeof KeptAsks>, field: string, value: string): Asks {
  if (asks.kind === 'run') return { ...asks, options: { ...asks.options, [field]: value } };
  return { ...asks, fields: { ...asks.fields, [field]: value } };
}
