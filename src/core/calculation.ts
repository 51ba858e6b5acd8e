/**
 * The result of a sum together with everything a careful reader needs to trust it.
 *
 * Rounding is left to whoever shows it.
 */
export interface Calculation<Value> {
  readonly value: Value;
  /** What was taken for granted, one sentence each, with the number taken. */
  readonly assumptions: readonly string[];
  /** Keys into docs/sources.md. */
  readonly sources: readonly string[];
  /** Where the result should not be trusted, and what could hurt somebody. */
  readonly caveats: readonly string[];
}

/** What a sum is, beside the function that does it; docs/sums.md is made from these. */
export interface SumSheet {
  /** As a heading: "Injector flow for a power". */
  readonly title: string;
  /** The formula as the source has it, in plain text: "Q = P · BSFC / (n · d)". */
  readonly formula: string;
  /** Each symbol of the formula with its meaning and unit. */
  readonly symbols: Readonly<Record<string, string>>;
  /** Keys into docs/sources.md. */
  readonly sources: readonly string[];
  /** Over which it holds, and what it does not model. */
  readonly range: string;
}
