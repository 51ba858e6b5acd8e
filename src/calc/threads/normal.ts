/**
 * Standard normal distribution function Φ(z).
 *
 * Source: Abramowitz & Stegun 7.1.26 for the error function (key AS64); absolute error below 1e-7, and exactly 0 or 1
 * beyond |z| = 8.
 */
export function normalBelow(z: number): number {
  if (z <= -8) return 0;
  if (z >= 8) return 1;
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const series =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = (series * Math.exp(-x * x)) / 2;
  return z < 0 ? tail : 1 - tail;
}

/** Density of a normal reading at `x` about `mean`, per unit of x. */
export function normalDensity(x: number, mean: number, sigma: number): number {
  const z = (x - mean) / sigma;
  return Math.exp(-(z * z) / 2) / (sigma * Math.sqrt(2 * Math.PI));
}

/**
 * Density at `x` of a quantity spread evenly over [from, to] and read with a normal error: the convolution of the two,
 * [Φ((x − from)/σ) − Φ((x − to)/σ)] / (to − from). A band of no width is a plain normal about it.
 */
export function evenThenNormal(x: number, from: number, to: number, sigma: number): number {
  const width = to - from;
  if (width < sigma * 1e-3) return normalDensity(x, (from + to) / 2, sigma);
  return Math.max(0, normalBelow((x - from) / sigma) - normalBelow((x - to) / sigma)) / width;
}
