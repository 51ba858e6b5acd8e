/** What is known of a build's fuel table, as the crew said it last; null where it has said nothing. */
export interface FuelTable {
  readonly buildId: number;
  readonly loadAxisKPa: readonly number[] | null;
  readonly speedAxisRpm: readonly number[] | null;
  /** λ wanted, as typed. */
  readonly target: string | null;
  readonly capRatio: number | null;
  readonly fuel: string | null;
  readonly scale: 'petrol' | 'fuel' | null;
}
