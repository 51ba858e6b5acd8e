import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { followers, inOrder, type Prerequisites } from './graph.ts';

/** When something can begin and must end, in the unit of its duration from the start of all. */
export interface Times {
  readonly earliestStart: number;
  readonly earliestFinish: number;
  readonly latestStart: number;
  readonly latestFinish: number;
  /** How much later it may begin without holding the end up; 0 on the critical path. */
  readonly slack: number;
}

/**
 * Critical path of a network: ES = max EF of what it needs, EF = ES + d, LF = min LS of what needs it, LS = LF − d.
 *
 * Source: Kelley and Walker 1959 (key KELLEY); checked against the printed answers of HILLIER, WIZEDU and TAYLOR8. Hands without limit. `durations` in any one unit, 0 or more.
 * @throws UserError 'bad-input' when something waits for itself.
 */
export function criticalPath(network: {
  readonly durations: readonly number[];
  readonly needs: Prerequisites;
}): Calculation<{ readonly times: readonly Times[]; readonly length: number }> {
  const { durations, needs } = network;
  const order = inOrder(needs);
  if (order.length < needs.length) {
    throw new UserError('bad-input', 'Something in it waits for itself, so it has no order.');
  }
  const earliest = needs.map(() => 0);
  const finish = (place: number): number => (earliest[place] ?? 0) + (durations[place] ?? 0);
  for (const place of order) earliest[place] = Math.max(0, ...(needs[place] ?? []).map(finish));
  const length = Math.max(0, ...order.map(finish));
  const waiting = followers(needs);
  const latest = needs.map(() => length);
  for (const place of order.toReversed()) {
    latest[place] = Math.min(
      length,
      ...(waiting[place] ?? []).map((next) => (latest[next] ?? length) - (durations[next] ?? 0)),
    );
  }
  const times = needs.map((_before, place): Times => {
    const earliestStart = earliest[place] ?? 0;
    const latestFinish = latest[place] ?? length;
    const latestStart = latestFinish - (durations[place] ?? 0);
    return {
      earliestStart,
      earliestFinish: finish(place),
      latestStart,
      latestFinish,
      slack: latestStart - earliestStart,
    };
  });
  return {
    value: { times, length },
    assumptions: ['hands without limit'],
    sources: ['KELLEY'],
    caveats: [],
  };
}

export const criticalPathSheet: SumSheet = {
  title: 'Critical path',
  formula: 'ES = max EF(before), EF = ES + d, LF = min LS(after), LS = LF − d, slack = LS − ES',
  symbols: {
    'ES, EF': 'earliest start and finish',
    'LS, LF': 'latest start and finish that hold nothing up',
    d: 'duration',
  },
  sources: ['KELLEY'],
  range: 'a network without loops, hands without limit',
};
