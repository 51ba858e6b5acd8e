/** What is measured. A unit belongs to exactly one, and only units of one dimension convert into each other. */
export type Dimension =
  | 'length'
  | 'area'
  | 'volume'
  | 'angle'
  | 'time'
  | 'speed'
  | 'rotation'
  | 'mass'
  | 'force'
  | 'spring-rate'
  | 'torque'
  | 'pressure'
  | 'power'
  | 'energy'
  | 'specific-energy'
  | 'temperature'
  | 'volume-flow'
  | 'mass-flow'
  | 'density'
  | 'viscosity'
  | 'dynamic-viscosity'
  | 'economy'
  | 'voltage'
  | 'current'
  | 'resistance'
  | 'charge'
  | 'ratio'
  | 'air-fuel-ratio'
  | 'lambda'
  | 'volume-per-turn';

/** How a figure in the unit becomes one in its dimension's base unit, and back. */
export type Scale =
  /** base = figure · factor */
  | { readonly kind: 'factor'; readonly factor: number }
  /** base = (figure − zero) · factor: a temperature scale with a zero of its own */
  | { readonly kind: 'offset'; readonly factor: number; readonly zero: number }
  /** base = factor / figure: threads per inch, miles per gallon */
  | { readonly kind: 'reciprocal'; readonly factor: number }
  /** the American wire gauge, a logarithm of the diameter */
  | { readonly kind: 'wire-gauge' };

export interface Unit {
  readonly dimension: Dimension;
  /** As it is printed behind a figure. */
  readonly sign: string;
  readonly scale: Scale;
  /** Exact by definition, or a column of liquid whose density was agreed on. None here is measured. */
  readonly standing: 'exact' | 'convention';
  /** A key of docs/sources.md. */
  readonly source: string;
}

/** A unit that is so many base units, exactly by definition. */
export function exact(dimension: Dimension, sign: string, factor: number, source: string): Unit {
  return { dimension, sign, scale: { kind: 'factor', factor }, standing: 'exact', source };
}

/** A unit that a real column of liquid comes near to, and that was fixed by convention. */
export function conventional(dimension: Dimension, sign: string, factor: number, source: string): Unit {
  return { ...exact(dimension, sign, factor, source), standing: 'convention' };
}

/** A unit counted the other way round: the more of it, the smaller the base figure. */
export function reciprocal(dimension: Dimension, sign: string, factor: number, source: string): Unit {
  return { dimension, sign, scale: { kind: 'reciprocal', factor }, standing: 'exact', source };
}
