import { DeliveryProblem } from '../core/post.ts';
import type { DeliveryParts } from './deliver.ts';
import { fingerprint } from './fingerprint.ts';
import { Notice } from './notice.ts';

/** A morning message is redrawn until the next one is near; older ones stand as they were. */
const REDRAWN_FOR_MS = 20 * 60 * 60_000;

/**
 * Redraws the standing messages that the record has overtaken: an order logged by a command, on another day's card or by
 * the answer to a question does not leave yesterday's state, and its buttons, in the channel.
 */
export async function refresh({ outbox, post, word, report }: DeliveryParts, nowMs: number): Promise<void> {
  for (const { id, channelId, messageId, noticeJson, shown } of outbox.standing(nowMs - REDRAWN_FOR_MS)) {
    const answer = word(Notice.parse(JSON.parse(noticeJson)), id);
    const now = fingerprint(answer);
    if (now === shown) continue;
    try {
      await post.edit({ channelId, messageId, answer });
    } catch (error) {
      if (!(error instanceof DeliveryProblem)) throw error;
      report(error, `redrawing message ${messageId}`);
      if (!error.forGood) continue; // the next tick tries again
    }
    outbox.redrawn(id, now);
  }
}
