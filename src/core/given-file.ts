/** A file somebody handed over, as plain data. Its bytes are read through `Hand.open`. */
export interface GivenFile {
  readonly id: string;
  readonly name: string;
  /** Its size as announced; whoever reads it counts for himself. */
  readonly bytes: number;
  /** Its media type as announced, lower case, without parameters; empty when none was. Never to be trusted. */
  readonly mime: string;
}
