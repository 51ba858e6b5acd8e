/** What a value was taken at, as far as the line says. */
export interface LineConditions {
  readonly speedRpm?: number;
  readonly temperatureC?: number;
  readonly boostKPa?: number;
  readonly place?: string;
  readonly fuel?: string;
  readonly states: readonly string[];
}

export interface LineValue {
  /** In the unit the kind is kept in. */
  readonly value: number;
  /** The unit it was typed in. */
  readonly shownIn: string;
  readonly conditions: LineConditions;
}

/** A fair meaning of a line, and what would be typed to mean nothing else. */
export interface LineOption {
  readonly label: string;
  readonly typed: string;
}

/** What a line of readings means. */
export type LineReading =
  | {
      readonly verdict: 'read';
      readonly kind: string;
      readonly values: readonly LineValue[];
      readonly note?: string;
      /** What was taken for granted, in sentences. */
      readonly readAs: readonly string[];
    }
  | {
      readonly verdict: 'ask';
      readonly question: string;
      readonly options: readonly LineOption[];
      /** Asked only where no other kind has a better question. */
      readonly faint?: true;
    }
  | { readonly verdict: 'refuse'; readonly problem: string };
