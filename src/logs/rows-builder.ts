import type { Channel, Rows } from '../calc/fuelling/drive.ts';

const BATCH = 2_048;
/** Rows that bear the same time are spread over the time to the next, but over no longer than this, s. */
const LONGEST_TICK_S = 1.5;

/** Gathers rows into batches. Rows that bear the same time, as clocks of whole seconds write them, are spread out evenly. */
export class RowsBuilder {
  readonly #channels: readonly Channel[];
  readonly #timeS = new Float64Array(BATCH);
  readonly #columns: readonly Float64Array[];
  readonly #cells: Float64Array;
  #count = 0;
  /** Where the rows begin that bear the newest time. */
  #tickFrom = 0;
  #tickS = Number.NaN;

  constructor(channels: readonly Channel[]) {
    this.#channels = channels;
    this.#columns = channels.map(() => new Float64Array(BATCH));
    this.#cells = new Float64Array(channels.length);
  }

  /** Takes a row in; hands a batch out when one is full. */
  add(
    time: number,
    record: readonly string[],
    fill: (record: readonly string[], into: Float64Array) => void,
  ): Rows | undefined {
    if (time !== this.#tickS) {
      this.#spread(time);
      this.#tickFrom = this.#count;
      this.#tickS = time;
    }
    let full: Rows | undefined;
    if (this.#count === BATCH) full = this.#handOut();
    this.#timeS[this.#count] = time;
    fill(record, this.#cells);
    for (let place = 0; place < this.#columns.length; place++) {
      const column = this.#columns[place];
      if (column !== undefined) column[this.#count] = this.#cells[place] ?? Number.NaN;
    }
    this.#count++;
    return full;
  }

  *finish(): Generator<Rows> {
    this.#spread(this.#tickS + LONGEST_TICK_S / 3);
    this.#tickFrom = this.#count;
    const last = this.#handOut();
    if (last.count > 0) yield last;
  }

  #spread(nextS: number): void {
    const rows = this.#count - this.#tickFrom;
    if (rows < 2) return;
    const tick = Math.min(LONGEST_TICK_S, nextS - this.#tickS);
    for (let row = 1; row < rows; row++)
      this.#timeS[this.#tickFrom + row] = this.#tickS + (tick * row) / rows;
  }

  /** Everything whose time is settled; rows of the newest time stay for the next batch unless they fill this one. */
  #handOut(): Rows {
    const settled = this.#tickFrom > 0 ? this.#tickFrom : this.#count;
    const kept = this.#count - settled;
    const columns: Partial<Record<Channel, Float64Array>> = { timeS: this.#timeS.slice(0, settled) };
    this.#channels.forEach((channel, place) => {
      columns[channel] = this.#columns[place]?.slice(0, settled) ?? new Float64Array(settled);
    });
    this.#timeS.copyWithin(0, settled, this.#count);
    for (const column of this.#columns) column.copyWithin(0, settled, this.#count);
    this.#count = kept;
    this.#tickFrom = 0;
    return { count: settled, columns };
  }
}
