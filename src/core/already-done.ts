/** The same interaction came a second time: its first delivery took effect, and this is what it did. */
export class AlreadyDone extends Error {
  override readonly name = 'AlreadyDone';
  readonly changeId: number;
  readonly said: string;

  constructor(changeId: number, said: string) {
    super(said);
    this.changeId = changeId;
    this.said = said;
  }
}
