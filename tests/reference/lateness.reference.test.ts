import { mean, sampleVariance } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { supplierLateness, teamLateness, waitBeyond } from '../../src/calc/lateness/lateness.ts';

const seen = (...came: number[]) => ({ came, waiting: [] });

describe('what a team’s suppliers have in common', () => {
  /**
   * Worked by hand. Suppliers 0 2 1 1, 6 4 5 5 5 and 1 2 3 2: means 1, 5, 2; N = 13, mean (4 + 25 + 8)/13 = 37/13.
   * Within: (2 + 2 + 2)/(3 + 4 + 3) = 0.6. Spread: 4(24/13)² + 5(28/13)² + 4(11/13)² = (2304 + 3920 + 484)/169 = 516/13.
   * Between: (516/13 − 2·0.6)/(13 − (16 + 25 + 16)/13) = (500.4/13)/(112/13) = 500.4/112. Weight: 0.6·112/500.4 < 1, so
   * the least, 1. The mean: (37 + 0.8)/(13 + 2) = 2.52.
   */
  it('weighs the least where suppliers differ much, as worked by hand', () => {
    const team = teamLateness([seen(0, 2, 1, 1), seen(6, 4, 5, 5, 5), seen(1, 2, 3, 2)]);
    expect(team.meanDays).toBeCloseTo(2.52, 12);
    expect(team.weightOrders).toBe(1);
    expect(team.orders).toBe(13);
  });

  /**
   * Worked by hand. Suppliers 0 4 0 4 2, 1 5 1 5 3 and 0 6 0 6 3: means 2, 3, 3; within (16 + 16 + 36)/12 = 17/3; mean 8/3;
   * spread 5(4/9 + 1/9 + 1/9) = 10/3; between (10/3 − 34/3)/(15 − 5) < 0: they do not differ.
   */
  it('weighs the most where they do not', () => {
    expect(teamLateness([seen(0, 4, 0, 4, 2), seen(1, 5, 1, 5, 3), seen(0, 6, 0, 6, 3)]).weightOrders).toBe(
      20,
    );
  });

  it('weighs four orders while suppliers cannot be compared', () => {
    expect(teamLateness([]).weightOrders).toBe(4);
    expect(teamLateness([seen(9, 9, 9, 9, 9, 9, 9, 9), seen(0, 0, 0, 0, 0, 0)]).weightOrders).toBe(4);
    expect(teamLateness([seen(9, 9), seen(0, 0, 0), seen(1, 1)]).weightOrders).toBe(4);
  });

  /**
   * Where every supplier has as many orders n, Bühlmann's own estimators: s² is the mean of the suppliers' variances,
   * v = variance of their means − s²/n. Source: key BUHLMANN; sample variances by simple-statistics.
   */
  it('agrees with the estimators for equal numbers of orders', () => {
    const groups = [
      [0, 1, 3, 0],
      [5, 9, 6, 8],
      [2, 2, 4, 0],
      [7, 3, 6, 4],
    ];
    const sample = (values: readonly number[]): number => sampleVariance([...values]);
    const within = mean(groups.map(sample));
    const between = sample(groups.map((own) => mean(own))) - within / 4;
    const { weightOrders } = teamLateness(groups.map((own) => seen(...own)));
    expect(weightOrders).toBeCloseTo(Math.max(1, within / between), 10);
  });
});

describe('one supplier', () => {
  const team = { meanDays: 2, weightOrders: 4, orders: 40 };

  /** Worked by hand: (4·2 + 3 + 7)/(4 + 2) = 3. */
  it('is drawn from its own average, 5, towards the team’s, 2', () => {
    expect(waitBeyond(supplierLateness(seen(3, 7), team)).meanDays).toBeCloseTo(3, 12);
  });

  it('is the team’s average while nothing has come', () => {
    expect(waitBeyond(supplierLateness(seen(), team)).meanDays).toBeCloseTo(2, 12);
  });

  /** Worked by hand: an order five days late and not here counts its days and is no order: (8 + 10 + 5)/6 = 23/6. */
  it('is moved by an order that is late and has not come', () => {
    const { meanDays } = waitBeyond(supplierLateness({ came: [3, 7], waiting: [5] }, team));
    expect(meanDays).toBeCloseTo(23 / 6, 12);
  });

  /**
   * α = 3, β = 3: P(>0) = 3/6, P(>1) = 3/6·4/7 = 2/7, P(>2) = 2/7·5/8 = 10/56, P(>3) = 10/56·6/9 = 0.119,
   * P(>4) = 0.119·7/10 = 0.0833. So nine of ten come within four days.
   */
  it('counts the days within which nine of ten come', () => {
    expect(waitBeyond({ alpha: 3, beta: 3 }).latestDays).toBe(4);
  });

  /** Source: the mixture itself, ∫ (1−p)^(w+1) p^(α−1)(1−p)^(β−1) dp / B(α, β), summed by the midpoint rule. */
  it.each([
    [5.2, 1.6],
    [9, 20],
    [2.5, 4],
    [30, 3],
  ])('agrees with the integral over p for α = %d, β = %d', (alpha, beta) => {
    const later = (days: number): number => {
      let [above, all] = [0, 0];
      for (let index = 0; index < 200_000; index++) {
        const p = (index + 0.5) / 200_000;
        const weight = p ** (alpha - 1) * (1 - p) ** (beta - 1);
        above += weight * (1 - p) ** (days + 1);
        all += weight;
      }
      return above / all;
    };
    const { latestDays } = waitBeyond({ alpha, beta });
    expect(later(latestDays)).toBeLessThanOrEqual(0.1 + 1e-6);
    if (latestDays > 0) expect(later(latestDays - 1)).toBeGreaterThan(0.1 - 1e-6);
  });
});
