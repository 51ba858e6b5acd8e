import type { Answer } from './reply.ts';

/** Puts messages into channels for the reminders, which know nothing of the platform. */
export interface Post {
  /**
   * Sends once. The same nonce within a few minutes gets the first message back instead of a second one.
   *
   * @throws DeliveryProblem when it was not taken, saying whether trying again makes sense.
   */
  send(letter: {
    readonly channelId: string;
    readonly answer: Answer;
    readonly nonce: string;
  }): Promise<{ readonly messageId: string }>;
  /**
   * Redraws a message sent before.
   *
   * @throws DeliveryProblem when it was not taken; for good when the message is gone.
   */
  edit(message: {
    readonly channelId: string;
    readonly messageId: string;
    readonly answer: Answer;
  }): Promise<void>;
  /**
   * Looks through what we ourselves have posted in a channel since an instant for a message with a button of this
   * reference in it: what a sender that died between sending and marking must do before it sends again.
   */
  find(search: {
    readonly channelId: string;
    readonly sinceMs: number;
    readonly arg: readonly [name: string, value: string];
  }): Promise<{ readonly messageId: string } | undefined>;
}

/** A message did not go out. */
export class DeliveryProblem extends Error {
  override readonly name = 'DeliveryProblem';
  /** The channel is gone or closed to us: trying again will not help. */
  readonly forGood: boolean;

  constructor(message: string, forGood: boolean, options?: ErrorOptions) {
    super(message, options);
    this.forGood = forGood;
  }
}
