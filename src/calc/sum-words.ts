import type { JsonObject } from '../core/json.ts';
import type { Fact, Tone } from '../core/reply.ts';
import type { together } from './together.ts';
import { sayNumber } from './units/say.ts';

/** An answer in words and as data, without its subject. */
export interface SumWords {
  /** In one line of at most 90 characters. */
  readonly result: string;
  readonly tone?: Tone;
  readonly certainty?: string;
  readonly working: readonly string[];
  readonly facts?: readonly Fact[];
  readonly calculation: ReturnType<typeof together>;
  readonly data: JsonObject;
}

export const percent = (ratio: number, figures = 3): string => `${sayNumber(ratio * 100, figures)} %`;
