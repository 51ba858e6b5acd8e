import { createHash } from 'node:crypto';
import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Undelivered } from '../records/desks.ts';
import type { DueNotice } from './notice.ts';
import type { Letter } from './outbox.ts';

const LetterRow = z
  .object({
    id: z.int(),
    key: z.string(),
    nonce: z.string(),
    channel_id: z.string(),
    notice: z.string(),
    first_try_at_ms: z.int().nullable(),
    tries: z.int(),
  })
  .transform(
    ({ channel_id: channelId, notice: noticeJson, first_try_at_ms: firstTryAtMs, ...same }): Letter => ({
      ...same,
      channelId,
      noticeJson,
      firstTryAtMs,
    }),
  );

const Standing = z.object({
  id: z.int(),
  channelId: z.string(),
  noticeJson: z.string(),
  messageId: z.string(),
  shown: z.string().nullable(),
});

/** A message of ours that stands in a channel, and what it shows as far as we know. */
export type StandingLetter = z.output<typeof Standing>;

export interface OutboxStore {
  /** Writes a due notice down; the same key a second time is the same notice. */
  put(due: DueNotice, nowMs: number): void;
  /** Notices to be sent now: waiting ones whose time has come, and those whose sender died. */
  due(nowMs: number): readonly Letter[];
  find(id: number): Letter | undefined;
  claim(id: number, nowMs: number): void;
  /** It stands in the channel as this message; `shown` is what it shows, null when that is not known. */
  sent(id: number, messageId: string, shown: string | null): void;
  /** The newest message of each kind in each channel, while it is young enough to be worth redrawing. */
  standing(sinceMs: number): readonly StandingLetter[];
  redrawn(id: number, shown: string): void;
  /** No longer needed when its turn came. */
  drop(id: number): void;
  again(id: number, atMs: number, trouble: string): void;
  giveUp(id: number, trouble: string): void;
  dead(): readonly Undelivered[];
}

/** `scope` keeps the nonces of teams apart: the platform remembers them by author, not by channel. */
export function openOutboxStore(db: Database, scope: string): OutboxStore {
  const insert = db.prepare(
    `INSERT INTO outbox (key, nonce, channel_id, notice, state, created_at_ms, next_try_at_ms)
     VALUES (@key, @nonce, @channelId, @notice, 'pending', @nowMs, @nowMs) ON CONFLICT (key) DO NOTHING`,
  );
  const due = db.prepare(
    `SELECT * FROM outbox WHERE state IN ('pending', 'claimed') AND next_try_at_ms <= ? ORDER BY id LIMIT 20`,
  );
  const byId = db.prepare('SELECT * FROM outbox WHERE id = ?');
  const claim = db.prepare(
    `UPDATE outbox SET state = 'claimed', tries = tries + 1, first_try_at_ms = coalesce(first_try_at_ms, @nowMs)
     WHERE id = @id`,
  );
  const sent = db.prepare(
    `UPDATE outbox SET state = 'sent', message_id = ?, shown = ?, trouble = NULL WHERE id = ?`,
  );
  const standing = db.prepare(
    `SELECT id, channel_id AS channelId, notice AS noticeJson, message_id AS messageId, shown FROM outbox
     WHERE state = 'sent' AND created_at_ms >= ? AND id IN
       (SELECT max(id) FROM outbox GROUP BY channel_id, json_extract(notice, '$.kind'))`,
  );
  const redrawn = db.prepare('UPDATE outbox SET shown = ? WHERE id = ?');
  const drop = db.prepare(`UPDATE outbox SET state = 'dropped' WHERE id = ?`);
  const again = db.prepare(
    `UPDATE outbox SET state = 'pending', next_try_at_ms = ?, trouble = ? WHERE id = ?`,
  );
  const giveUp = db.prepare(`UPDATE outbox SET state = 'dead', trouble = ? WHERE id = ?`);
  const dead = db.prepare(`SELECT key, trouble FROM outbox WHERE state = 'dead' ORDER BY id DESC LIMIT 10`);
  return {
    put({ key, channelId, notice }, nowMs) {
      const nonce = nonceOf(`${scope}:${channelId}:${key}`);
      insert.run({ key, nonce, channelId, notice: JSON.stringify(notice), nowMs });
    },
    due: (nowMs) => z.array(LetterRow).parse(due.all(nowMs)),
    find: (id) => LetterRow.optional().parse(byId.get(id)),
    claim: (id, nowMs) => void claim.run({ id, nowMs }),
    sent: (id, messageId, shown) => void sent.run(messageId, shown, id),
    standing: (sinceMs) => z.array(Standing).parse(standing.all(sinceMs)),
    redrawn: (id, shown) => void redrawn.run(shown, id),
    drop: (id) => void drop.run(id),
    again: (id, atMs, trouble) => void again.run(atMs, trouble, id),
    giveUp: (id, trouble) => void giveUp.run(trouble, id),
    dead: () => z.array(z.object({ key: z.string(), trouble: z.string() })).parse(dead.all()),
  };
}

/** The platform takes at most 25 characters. */
const nonceOf = (key: string): string => createHash('sha256').update(key).digest('base64url').slice(0, 25);
