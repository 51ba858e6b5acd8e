/** Numbers that look random and are the same for the same seed: the mulberry32 generator (Tommy Ettinger, public domain). */
export interface Chance {
  /** A whole number from 0 up to but without `below`. */
  below(below: number): number;
  oneOf<T>(things: readonly [T, ...T[]]): T;
}

export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const below = (limit: number): number => Math.floor(next() * limit);
  return { below, oneOf: (things) => things[below(things.length)] ?? things[0] };
}
