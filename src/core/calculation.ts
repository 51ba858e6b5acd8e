/**
 * The result of a sum together with everything a careful reader needs to trust it.
 *
 * Rounding is left to whoever shows it.
 */
export interface Calculation<Value> {
  readonly value: Value;
  /** What was taken for granted, one sentence each. */
  readonly assumptions: readonly string[];
  /** Keys into docs/sources.md. */
  readonly sources: readonly string[];
  /** Where the result should not be trusted, and what could hurt somebody. */
  readonly caveats: readonly string[];
}
