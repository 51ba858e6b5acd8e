import { DeliveryProblem, type Post } from '../core/post.ts';
import type { Answer } from '../core/reply.ts';
import { Notice } from './notice.ts';
import { GIVE_UP_AFTER_MS, type Letter, NONCE_HOLDS_MS, pauseAfter } from './outbox.ts';
import type { OutboxStore } from './outbox-store.ts';

/** Button argument that names the notice a message came from; also how a lost message is found again. */
export const NOTICE_ARG = 'notice';

export interface DeliveryParts {
  readonly outbox: OutboxStore;
  readonly post: Post;
  /** Words a notice from the record as it is now; null when there is nothing left to say. */
  readonly word: (notice: Notice, noticeId: number) => Answer | null;
  readonly report: (fault: unknown, during: string) => void;
}

/**
 * Sends what is due, each notice once. It is claimed before it is sent and marked after; between the two the process
 * may die, so a claimed notice is first looked for in the channel once the platform has forgotten its nonce.
 */
export async function deliver(parts: DeliveryParts, nowMs: number): Promise<void> {
  for (const letter of parts.outbox.due(nowMs)) await deliverOne(letter, parts, nowMs);
}

async function deliverOne(
  letter: Letter,
  { outbox, post, word, report }: DeliveryParts,
  nowMs: number,
): Promise<void> {
  const answer = word(Notice.parse(JSON.parse(letter.noticeJson)), letter.id);
  const { id, channelId, nonce, firstTryAtMs } = letter;
  try {
    const forgotten = firstTryAtMs !== null && nowMs - firstTryAtMs >= NONCE_HOLDS_MS;
    const arg = [NOTICE_ARG, String(id)] as const;
    const found = forgotten ? await post.find({ channelId, sinceMs: firstTryAtMs, arg }) : undefined;
    if (found) return outbox.sent(id, found.messageId);
    if (answer === null) return outbox.drop(id);
    outbox.claim(id, nowMs);
    outbox.sent(id, (await post.send({ channelId, answer, nonce })).messageId);
  } catch (error) {
    if (!(error instanceof DeliveryProblem)) throw error;
    report(error, `delivering ${letter.key}`);
    const tooLong = nowMs - (firstTryAtMs ?? nowMs) >= GIVE_UP_AFTER_MS;
    if (error.forGood || tooLong) outbox.giveUp(id, error.message);
    else outbox.again(id, nowMs + pauseAfter(letter.tries + 1), error.message);
  }
}
