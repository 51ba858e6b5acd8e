import type { Hand } from '../../bot/hand.ts';
import type { Json } from '../../core/json.ts';
import type { Answer } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';

/** Keeps what somebody has been shown, so that a press brings in just that. */
export function propose(hand: Hand, kind: string, content: Json): number {
  const { id } = hand.proposals.keep({ personId: hand.who.id, kind, content }, hand.clock.nowMs());
  return id;
}

/** @throws UserError 'stale-message' when it was brought in or left already. */
export function proposed(hand: Hand, id: number, kind: string): Json {
  const found = hand.proposals.find(id);
  if (found?.kind === kind) return found.content;
  throw new UserError(
    'stale-message',
    'That list is settled: it was brought in or left. /import begins again with the file or the lines.',
  );
}

/** Lets a proposal go; the record stays as it is. */
export function leave(hand: Hand, id: number): Answer {
  hand.proposals.forget(id);
  return {
    kind: 'answer',
    subject: 'Import',
    result: 'Left. Nothing was written down',
    audience: 'asker',
    inPlace: hand.pressedInPlace,
    data: { left: id },
  };
}
