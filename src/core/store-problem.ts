/** What stops the records from being opened or written; closed, so that wording and tests can be complete. */
export type StoreTrouble =
  | 'full'
  | 'read-only'
  | 'busy'
  | 'disk-error'
  | 'damaged'
  | 'not-a-database'
  | 'cannot-open'
  | 'newer'
  | 'migration-failed'
  | 'network-disk'
  | 'in-use'
  | 'not-durable'
  | 'old-library';

/** Trouble with the file that holds the records. The message is for people: what happened, what was kept, what to do. */
export class StoreProblem extends Error {
  override readonly name = 'StoreProblem';
  readonly trouble: StoreTrouble;

  constructor(trouble: StoreTrouble, message: string, options?: ErrorOptions) {
    super(message, options);
    this.trouble = trouble;
  }
}
