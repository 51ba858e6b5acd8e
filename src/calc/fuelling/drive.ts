/**
 * What a logger can tell about an engine, in the units sums use. Every one is a plain number, NaN where there is no reading;
 * switches are 0 and 1.
 */
export const channels = [
  'timeS',
  'speedRpm',
  'loadKPa',
  'lambda',
  'throttleRatio',
  'targetLambda',
  'trimRatio',
  'coolantC',
  'oilC',
  'chargeC',
  'oilKPa',
  'fuelKPa',
  'pulseMs',
  'dutyRatio',
  'batteryV',
  'knock',
  'fuelCut',
  'sensorC',
  'sensorFault',
  'enrichmentRatio',
  'transientFuel',
  'closedLoop',
  'vehicleKmH',
  'gear',
] as const;

export type Channel = (typeof channels)[number];

/** Some rows of a log: as many readings in each column that the log has. */
export interface Rows {
  readonly count: number;
  readonly columns: Readonly<Partial<Record<Channel, Float64Array>>>;
}

/** What the fit works on. Readings closer together than a twentieth of a second are averaged. */
const KEPT = [
  'speedRpm',
  'loadKPa',
  'lambda',
  'throttleRatio',
  'targetLambda',
  'trimRatio',
  'coolantC',
  'fuelCut',
  'pulseMs',
  'sensorC',
  'sensorFault',
  'enrichmentRatio',
  'transientFuel',
] as const satisfies readonly Channel[];

export type KeptChannel = (typeof KEPT)[number];

/** A whole drive as the fit needs it. */
export interface Drive {
  readonly count: number;
  readonly timeS: Float64Array;
  readonly at: Readonly<Partial<Record<KeptChannel, Float32Array>>>;
  /** From one reading to the next, typically, s. */
  readonly stepS: number;
  /** Readings further apart than this have nothing to do with each other, s. */
  readonly gapS: number;
}

const BIN_S = 0.05;
/** Fourteen hours of twentieths of a second: more is not kept, which bounds the memory whatever is handed over. */
const MOST = 1_000_000;

/** Any of these in a twentieth of a second holds for all of it. */
const HOLDING: ReadonlySet<KeptChannel> = new Set(['fuelCut', 'sensorFault', 'transientFuel']);

/** Takes a log's rows in as they come and keeps what the fit needs of them. */
export class DriveRecorder {
  #count = 0;
  #room = 4096;
  #timeS = new Float64Array(this.#room);
  readonly #kept = new Map<KeptChannel, Float32Array>();
  readonly #sums = new Map<KeptChannel, { sum: number; count: number }>();
  #binAtS = Number.NaN;
  #binSumS = 0;
  #binCount = 0;

  /** Whether the drive is longer than is kept. */
  get full(): boolean {
    return this.#count >= MOST;
  }

  add({ count, columns }: Rows): void {
    const { timeS } = columns;
    if (timeS === undefined) return;
    for (const channel of KEPT) {
      if (columns[channel] === undefined || this.#kept.has(channel)) continue;
      this.#kept.set(channel, new Float32Array(this.#room).fill(Number.NaN));
      this.#sums.set(channel, { sum: 0, count: 0 });
    }
    for (let row = 0; row < count; row++) {
      const time = timeS[row] ?? Number.NaN;
      // the comparison is written so that the first reading, where the bin has no time yet, opens one
      if (!(time - this.#binAtS < BIN_S - 1e-6)) {
        this.#close();
        this.#binAtS = time;
      }
      this.#binSumS += time;
      this.#binCount++;
      for (const [channel, tally] of this.#sums) {
        const value = columns[channel]?.[row] ?? Number.NaN;
        if (Number.isNaN(value)) continue;
        if (HOLDING.has(channel)) {
          tally.sum = Math.max(tally.sum, value);
          tally.count = 1;
        } else {
          tally.sum += value;
          tally.count++;
        }
      }
    }
  }

  finish(): Drive {
    this.#close();
    const timeS = this.#timeS.subarray(0, this.#count);
    const stepS = typicalStep(timeS);
    const at = Object.fromEntries(
      [...this.#kept].map(([channel, values]) => [channel, values.subarray(0, this.#count)]),
    );
    return { count: this.#count, timeS, at, stepS, gapS: Math.max(1, 4 * stepS) };
  }

  #close(): void {
    if (this.#binCount === 0 || this.full) return;
    if (this.#count === this.#room) this.#grow();
    this.#timeS[this.#count] = this.#binSumS / this.#binCount;
    for (const [channel, tally] of this.#sums) {
      const values = this.#kept.get(channel);
      if (values !== undefined)
        values[this.#count] = tally.count === 0 ? Number.NaN : tally.sum / tally.count;
      tally.sum = 0;
      tally.count = 0;
    }
    this.#count++;
    this.#binSumS = 0;
    this.#binCount = 0;
  }

  #grow(): void {
    this.#room *= 2;
    const timeS = new Float64Array(this.#room);
    timeS.set(this.#timeS);
    this.#timeS = timeS;
    for (const [channel, values] of this.#kept) {
      const more = new Float32Array(this.#room).fill(Number.NaN);
      more.set(values);
      this.#kept.set(channel, more);
    }
  }
}

function typicalStep(timeS: Float64Array): number {
  const every = Math.max(1, Math.floor(timeS.length / 2000));
  const steps: number[] = [];
  for (let index = 1; index < timeS.length; index += every) {
    steps.push((timeS[index] ?? 0) - (timeS[index - 1] ?? 0));
  }
  return steps.sort((a, b) => a - b)[steps.length >> 1] ?? BIN_S;
}
