/** Why a request was turned down; closed, so that wording and tests can be complete. */
export type RefusalCode =
  | 'bad-input'
  | 'out-of-range'
  | 'not-found'
  | 'not-now'
  | 'already-done'
  | 'changed-since'
  | 'not-yours'
  | 'stale-message'
  | 'which-one';

/** One reading of something that could be meant in several ways. `value` is what would be typed instead. */
export interface Choice {
  readonly label: string;
  readonly value: string;
}

/** What has to be settled before the request can go on: which option it is about, and the fair readings of it. */
export interface OpenQuestion {
  readonly field: string;
  readonly choices: readonly Choice[];
}

/**
 * A refusal meant for the person who asked: what was wrong, what was kept, what to type instead.
 *
 * Never carries an internal cause. When `question` is set the request is kept as a draft and each choice becomes a
 * button that finishes it, so nothing has to be typed twice.
 */
export class UserError extends Error {
  override readonly name = 'UserError';
  readonly code: RefusalCode;
  readonly question: OpenQuestion | undefined;

  constructor(code: RefusalCode, message: string, question?: OpenQuestion) {
    super(message);
    this.code = code;
    this.question = question;
  }
}
