import type { Calculation } from '../core/calculation.ts';
import type { JsonObject } from '../core/json.ts';
import type { Answer, Fact, Tone } from '../core/reply.ts';

export interface SumView {
  readonly subject: string;
  /** The result in one line, rounded and with its unit. */
  readonly result: string;
  readonly tone?: Tone;
  /** How sure, or what to measure next, in one line. */
  readonly certainty?: string;
  readonly working?: readonly string[];
  readonly facts?: readonly Fact[];
  readonly calculation: Pick<Calculation<unknown>, 'assumptions' | 'sources' | 'caveats'>;
  readonly data: JsonObject;
}

/** A sum's result as every sum shows it: result, working, cautions, then what was assumed and where it comes from. */
export function sumAnswer({ calculation, data, ...view }: SumView): Answer {
  const { assumptions, sources, caveats } = calculation;
  return {
    kind: 'answer',
    ...view,
    ...(caveats.length === 0 ? {} : { caution: caveats.join(' ') }),
    smallPrint: [
      ...assumptions.map((assumption) => `Assumed: ${assumption}`),
      ...(sources.length === 0 ? [] : [`Sources: ${sources.join(', ')} (docs/sources.md)`]),
    ],
    audience: 'crew',
    data: { ...data, assumptions: [...assumptions], sources: [...sources] },
  };
}
