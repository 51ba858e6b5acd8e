import { createHash } from 'node:crypto';
import type { ChannelClock } from '../contract.ts';

/** So many requests within so long. */
interface Rate {
  readonly limit: number;
  readonly windowMs: number;
}

/**
 * `platform`: five messages to a channel in five seconds and so on, as observed by bot authors (`common practice, no
 * source`; the documentation says only to obey the headers). `generous`: one crew on one machine need not wait.
 */
export type RateTable = 'platform' | 'generous';

const GENEROUS: Rate = { limit: 1_000, windowMs: 1_000 };
const PLATFORM: readonly (readonly [RegExp, Rate])[] = [
  [/^(POST|PATCH) \/channels\/:\w+\/messages/, { limit: 5, windowMs: 5_000 }],
  [/^(PUT|DELETE) .*\/reactions/, { limit: 1, windowMs: 250 }],
  [/\/webhooks\//, { limit: 5, windowMs: 2_000 }],
  [/./, { limit: 50, windowMs: 1_000 }],
];
const GLOBAL: Rate = { limit: 50, windowMs: 1_000 };

interface Window {
  startMs: number;
  used: number;
}

/** What a request is told of its bucket. */
export interface Verdict {
  readonly headers: Readonly<Record<string, string>>;
  /** Set when it has to wait. */
  readonly retryAfterMs?: number;
  readonly global?: boolean;
}

/** Rate limits by route and the channel, guild or webhook in it, on the channel's clock. */
export class Buckets {
  readonly #clock: ChannelClock;
  readonly #table: RateTable;
  readonly #windows = new Map<string, Window>();

  constructor(clock: ChannelClock, table: RateTable) {
    this.#clock = clock;
    this.#table = table;
  }

  /**
   * Counts one request.
   * @param route method and pattern, `POST /channels/:channel/messages`.
   * @param major the id the bucket belongs to.
   * @param exempt from the global count: answers to interactions.
   */
  take(route: string, major: string, exempt: boolean): Verdict {
    const nowMs = this.#clock.nowMs();
    const rate =
      this.#table === 'generous' ? GENEROUS : (PLATFORM.find(([of]) => of.test(route))?.[1] ?? GENEROUS);
    if (this.#table === 'platform' && !exempt) {
      const all = this.#window('global', GLOBAL, nowMs);
      if (all.used >= GLOBAL.limit) {
        return { headers: {}, global: true, retryAfterMs: all.startMs + GLOBAL.windowMs - nowMs };
      }
      all.used += 1;
    }
    const bucket = createHash('sha256').update(route).digest('hex').slice(0, 32);
    const window = this.#window(`${bucket}:${major}`, rate, nowMs);
    const resetMs = window.startMs + rate.windowMs;
    const full = window.used >= rate.limit;
    if (!full) window.used += 1;
    const headers = {
      'X-RateLimit-Limit': String(rate.limit),
      'X-RateLimit-Remaining': String(rate.limit - window.used),
      'X-RateLimit-Reset': (resetMs / 1000).toFixed(3),
      'X-RateLimit-Reset-After': ((resetMs - nowMs) / 1000).toFixed(3),
      'X-RateLimit-Bucket': bucket,
    };
    return full ? { headers, retryAfterMs: resetMs - nowMs } : { headers };
  }

  #window(key: string, { windowMs }: Rate, nowMs: number): Window {
    const known = this.#windows.get(key);
    // A clock that went back starts a new window too.
    if (known !== undefined && nowMs >= known.startMs && nowMs < known.startMs + windowMs) return known;
    const fresh = { startMs: nowMs, used: 0 };
    this.#windows.set(key, fresh);
    if (this.#windows.size > 10_000) this.#sweep(nowMs);
    return fresh;
  }

  /** No window is longer than five seconds. */
  #sweep(nowMs: number): void {
    for (const [key, window] of this.#windows) if (nowMs - window.startMs > 5_000) this.#windows.delete(key);
  }
}
