/** What a reading was taken at; what nobody said is left out. */
export interface Conditions {
  readonly speedRpm?: number;
  readonly temperatureC?: number;
  /** Above the atmosphere. */
  readonly boostKPa?: number;
  /** Cylinder, journal or place that it belongs to. */
  readonly place?: string;
  /** `hot`, `cold`, `idle`, `cranking`, `at rest`, `charging`, `wet` … */
  readonly states: readonly string[];
}

/** A measured value with its conditions. */
export interface Reading {
  readonly id: number;
  readonly buildId: number;
  /** The kind's name: `oil pressure`. */
  readonly kind: string;
  /** In the kind's base unit. */
  readonly value: number;
  readonly unit: string;
  /** The line as it was typed. */
  readonly typed: string;
  readonly conditions: Conditions;
  readonly takenAtMs: number;
  readonly byName: string;
  readonly note: string | null;
  readonly link: string | null;
  /** The value it was first given as, when it was corrected. */
  readonly firstValue: number | null;
}
