/**
 * Ids as the platform makes them: milliseconds since its epoch in the upper bits, a counter in the lower 22.
 *
 * Source: developer documentation, "Snowflakes". The client sorts its requests by ids of 17 to 19 digits, so an id
 * never gets shorter than 17 whatever the clock says.
 */
const EPOCH_MS = 1_420_070_400_000;
const SHORTEST = 10n ** 16n;

export type MakeId = () => string;

/**
 * Ids that follow the clock, and go on increasing when it stands still or goes back.
 * @param newest the largest id given out in an earlier life, so that a restart repeats none.
 */
export function idMaker(nowMs: () => number, newest = 0n): MakeId {
  let last = newest;
  return () => {
    const byClock = idAt(nowMs());
    last = byClock > last ? byClock : last + 1n;
    return last.toString();
  };
}

/** The smallest id of this moment. */
export function idAt(ms: number): bigint {
  const since = BigInt(Math.max(0, Math.floor(ms) - EPOCH_MS)) << 22n;
  return since > SHORTEST ? since : SHORTEST;
}

/** The moment an id was made, in milliseconds UTC. */
export const msOf = (id: string): number => Number(BigInt(id) >> 22n) + EPOCH_MS;

export const isId = (value: unknown): value is string =>
  typeof value === 'string' && /^\d{17,19}$/.test(value);
