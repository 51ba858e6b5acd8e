import { DeliveryProblem, type Post } from '../core/post.ts';
import type { Answer } from '../core/reply.ts';
import { NOTICE_ARG } from '../records/orders/order-buttons.ts';
import { fingerprint } from './fingerprint.ts';
import { Notice } from './notice.ts';
import { GIVE_UP_AFTER_MS, type Letter, NONCE_HOLDS_MS, pauseAfter } from './outbox.ts';
import type { OutboxStore } from './outbox-store.ts';

export interface DeliveryParts {
  readonly outbox: OutboxStore;
  readonly post: Post;
  /** Words a notice from the record as it is now. */
  readonly word: (notice: Notice, noticeId: number) => Answer;
  /** Whether anything of it is left that is worth a message. */
  readonly needed: (notice: Notice) => boolean;
  readonly report: (fault: unknown, during: string) => void;
}

/**
 * Sends what is due, each notice once. It is claimed before it is sent and marked after; between the two the process
 * may die, so a claimed notice is first looked for in the channel once the platform has forgotten its nonce.
 */
export async function deliver(parts: DeliveryParts, nowMs: number): Promise<readonly Delivered[]> {
  const sent: Delivered[] = [];
  for (const letter of parts.outbox.due(nowMs)) {
    const delivered = await deliverOne(letter, parts, nowMs);
    if (delivered) sent.push(delivered);
  }
  return sent;
}

export interface Delivered {
  readonly channelId: string;
  readonly messageId: string;
  readonly answer: Answer;
}

async function deliverOne(
  letter: Letter,
  { outbox, post, word, needed, report }: DeliveryParts,
  nowMs: number,
): Promise<Delivered | undefined> {
  const { id, key, channelId, nonce, firstTryAtMs } = letter;
  try {
    const before = await lookBack(letter, post, nowMs);
    if (before.found) {
      outbox.sent(id, before.found.messageId, null);
      return undefined;
    }
    const notice = Notice.parse(JSON.parse(letter.noticeJson));
    if (!needed(notice)) {
      outbox.drop(id);
      return undefined;
    }
    const worded = word(notice, id);
    const answer = before.unsure ? { ...worded, certainty: MAY_REPEAT } : worded;
    outbox.claim(id, nowMs);
    const { messageId } = await post.send({ channelId, answer, nonce });
    outbox.sent(id, messageId, fingerprint(worded));
    return { channelId, messageId, answer };
  } catch (error) {
    if (!(error instanceof DeliveryProblem)) throw error;
    report(error, `delivering ${key}`);
    const tooLong = nowMs - (firstTryAtMs ?? nowMs) >= GIVE_UP_AFTER_MS;
    if (error.forGood || tooLong) outbox.giveUp(id, error.message);
    else outbox.again(id, nowMs + pauseAfter(letter.tries + 1), error.message);
    return undefined;
  }
}

const MAY_REPEAT =
  'This may be a repeat: the first attempt was cut off, and what was posted here cannot be read.';

/** Whether an attempt that was cut off got through after all; only asked once the platform has forgotten its nonce. */
async function lookBack(
  { id, channelId, firstTryAtMs }: Letter,
  post: Post,
  nowMs: number,
): Promise<{ readonly found?: { readonly messageId: string } | undefined; readonly unsure: boolean }> {
  if (firstTryAtMs === null || nowMs - firstTryAtMs < NONCE_HOLDS_MS) return { unsure: false };
  try {
    const found = await post.find({ channelId, sinceMs: firstTryAtMs, arg: [NOTICE_ARG, String(id)] });
    return { found, unsure: false };
  } catch (error) {
    if (error instanceof DeliveryProblem && error.forGood) return { unsure: true };
    throw error;
  }
}
