import type { Day } from '../../core/time.ts';

/** What a crew has said of the columns of one logger's files. */
export interface LogHeader {
  readonly id: number;
  /** The mark of the header it is about. */
  readonly fingerprint: string;
  /** The name of a column by what it is. */
  readonly roles: Readonly<Record<string, string>>;
  readonly toldBy: string;
  readonly toldOn: Day;
}
