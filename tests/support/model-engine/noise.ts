import { chanceFrom } from '../random.ts';

/** Random numbers of a seed, as a model engine needs them. */
export interface Noise {
  /** From 0 up to but without 1. */
  unit(): number;
  between(least: number, most: number): number;
  /** Normally distributed, mean 0 and standard deviation 1 (Box and Muller). */
  normal(): number;
  pick<Value>(from: readonly [Value, ...Value[]]): Value;
}

export function noiseFrom(seed: number): Noise {
  const chance = chanceFrom(seed);
  const unit = (): number => chance.below(2 ** 30) / 2 ** 30;
  return {
    unit,
    between: (least, most) => least + (most - least) * unit(),
    normal: () => Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit()),
    pick: (from) => chance.oneOf(from),
  };
}
