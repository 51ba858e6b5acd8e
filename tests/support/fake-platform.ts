import { DeliveryProblem, type Post } from '../../src/core/post.ts';
import type { Answer } from '../../src/core/reply.ts';

/** The process is gone at this point: nothing after it happens. */
export class Crash extends Error {
  override readonly name = 'Crash';
}

/** What befalls one attempt to post. */
export type Mishap =
  | 'none'
  | 'server error before it took effect'
  | 'server error after it took effect'
  | 'answer lost'
  | 'too many'
  | 'crash before it reached the platform'
  | 'crash before the answer came back';

export interface Posted {
  readonly messageId: string;
  readonly channelId: string;
  readonly atMs: number;
  readonly noticeId: string;
  answer: Answer;
}

/** A platform that posts, remembers nonces for the shortest "few minutes" there are, and suffers what it is told to. */
export interface FakePlatform {
  readonly post: Post;
  readonly posted: readonly Posted[];
  /** For the attempts to come, one each; none after that. */
  suffer(...mishaps: readonly Mishap[]): void;
  hideHistory(): void;
}

const NONCE_MEMORY_MS = 2 * 60_000;

export function fakePlatform(nowMs: () => number): FakePlatform {
  const posted: Posted[] = [];
  const nonces = new Map<string, Posted>();
  const ahead: Mishap[] = [];
  let historyHidden = false;

  const take = (channelId: string, answer: Answer, nonce: string): Posted => {
    const earlier = nonces.get(nonce);
    if (earlier !== undefined && nowMs() - earlier.atMs < NONCE_MEMORY_MS) return earlier;
    const message = {
      messageId: String(posted.length + 1),
      channelId,
      atMs: nowMs(),
      noticeId: noticeIn(answer),
      answer,
    };
    posted.push(message);
    nonces.set(nonce, message);
    return message;
  };

  return {
    posted,
    suffer: (...mishaps) => void ahead.push(...mishaps),
    hideHistory() {
      historyHidden = true;
    },
    post: {
      async send({ channelId, answer, nonce }) {
        const mishap = ahead.shift() ?? 'none';
        if (mishap === 'crash before it reached the platform') throw new Crash(mishap);
        if (mishap === 'server error before it took effect' || mishap === 'too many') {
          throw new DeliveryProblem(mishap, false);
        }
        const message = take(channelId, answer, nonce);
        if (mishap === 'crash before the answer came back') throw new Crash(mishap);
        if (mishap !== 'none') throw new DeliveryProblem(mishap, false);
        return message;
      },
      async edit({ messageId, answer }) {
        const message = posted.find((one) => one.messageId === messageId);
        if (message === undefined) throw new DeliveryProblem('Unknown Message', true);
        message.answer = answer;
      },
      async find({ channelId, sinceMs, arg: [, value] }) {
        if (historyHidden) throw new DeliveryProblem('Missing Access', true);
        return posted.find(
          (one) => one.channelId === channelId && one.atMs >= sinceMs - 1_000 && one.noticeId === value,
        );
      },
    },
  };
}

/** The notice that the buttons of an answer name. */
function noticeIn({ items = [] }: Answer): string {
  return String(items.flatMap(({ buttons = [] }) => buttons)[0]?.does.args['notice'] ?? '');
}
