/** Where a notice stands on its way into the channel. */
export interface Letter {
  readonly id: number;
  readonly key: string;
  readonly nonce: string;
  readonly channelId: string;
  readonly noticeJson: string;
  /** When it was first handed to the platform; null while it never was. */
  readonly firstTryAtMs: number | null;
  readonly tries: number;
}

/** The platform remembers a nonce "for a few minutes"; within these the same nonce cannot post twice. */
export const NONCE_HOLDS_MS = 2 * 60_000;

const PAUSES_MS = [2_000, 10_000, 60_000, 5 * 60_000, 60 * 60_000] as const;

/** How long to wait before trying again, after this many tries; the last pause repeats. */
export function pauseAfter(tries: number): number {
  return PAUSES_MS[Math.min(tries, PAUSES_MS.length) - 1] ?? PAUSES_MS[0];
}

/** After a day of trying it is given up and shown to the crew instead. */
export const GIVE_UP_AFTER_MS = 24 * 60 * 60_000;
