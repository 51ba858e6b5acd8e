import type { GivenFile } from '../core/given-file.ts';
import { UserError } from '../core/user-error.ts';

/** Where the files that people hand over are read from. */
export interface FileSource {
  /** A file handed over not long ago; undefined when it is not known any more. */
  find(id: string): GivenFile | undefined;
  /**
   * The bytes of a file as they arrive, so that a big one never stands in memory as a whole.
   *
   * @throws UserError from the iteration: 'not-found' when it is gone, 'out-of-range' when it is larger than `mostBytes`,
   *   'not-now' when it does not arrive.
   */
  open(file: GivenFile, limits: { readonly mostBytes: number }): AsyncIterable<Uint8Array>;
}

/** A place that hands no files over: the terminal's tests, a suggestion. */
export const NO_FILES: FileSource = {
  find: () => undefined,
  open: (file) => {
    throw fileGone(file.name);
  },
};

export const fileGone = (name?: string): UserError =>
  new UserError(
    'not-found',
    `${name === undefined ? 'That file' : `"${name}"`} is no longer there to be read. Nothing was changed. Attach it once more.`,
  );
