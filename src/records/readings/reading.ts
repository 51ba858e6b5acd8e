/** What a reading was taken at; what nobody said is left out. */
export interface Conditions {
  readonly speedRpm?: number;
  readonly temperatureC?: number;
  /** Above the atmosphere. */
  readonly boostKPa?: number;
  /** Cylinder, journal or place that it belongs to: `cylinder 3`, `main bearing 2`. */
  readonly place?: string;
  /** The fuel that an air–fuel ratio was measured with, by the name it goes by here: `E85`. */
  readonly fuel?: string;
  /** `hot`, `cold`, `idle`, `cranking`, `at rest`, `charging`, `wet` …, in alphabetical order. */
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
  /** The kind's base unit: `kPa`, `degC`, `V`, `A`, `rpm`, `mm`, `km`, `h`, `lambda`, `1` (a share), or the crew's own word. */
  readonly unit: string;
  /** What it is shown in: the unit it was typed in. */
  readonly shownIn: string;
  /** The line as it was typed. */
  readonly typed: string;
  readonly conditions: Conditions;
  readonly takenAtMs: number;
  readonly byName: string;
  readonly note: string | null;
  readonly link: string | null;
  /** The value it was first given as, when it was corrected. */
  readonly firstValue: number | null;
  /** Shared by readings typed in one line, such as four compressions: the id of the first. Null for one alone. */
  readonly setId: number | null;
}

/** What a series, its trend and its chart are made of. */
export type Sample = Pick<Reading, 'id' | 'value' | 'takenAtMs' | 'conditions'>;

/** A kind of reading that the crew made for itself. */
export interface OwnKind {
  readonly id: number;
  readonly buildId: number;
  readonly name: string;
  /** A unit the bot converts (`kPa`), or the crew's own word (`clicks`). */
  readonly unit: string;
}

/** Whose figure a limit is; the maker's comes before the crew's, and both before common practice. */
export type LimitOrigin = 'maker' | 'crew';

/** What a kind should stay between, where its conditions are these. */
export interface OwnLimit {
  readonly id: number;
  readonly buildId: number;
  readonly kind: string;
  /** In the kind's base unit. */
  readonly min: number | null;
  readonly max: number | null;
  /** Holds only for readings with these; an empty one for all. */
  readonly conditions: Conditions;
  readonly origin: LimitOrigin;
  readonly typed: string;
  readonly byName: string;
  readonly setOn: string;
}
