/** One reading on a chart. */
export interface ChartPoint {
  readonly atMs: number;
  readonly value: number;
  /** Within its limits, or beyond one. */
  readonly standing: 'ok' | 'doubtful' | 'bad';
  /** Taken like the newest one: these are joined; others stand apart, pale. */
  readonly like: boolean;
}

export interface ChartLimit {
  readonly value: number;
  /** "at least 0.7 bar hot at idle". */
  readonly words: string;
  readonly side: 'least' | 'most';
}

/** One kind of reading over time, with an axis of its own. */
export interface ChartPanel {
  /** What is measured, with its unit: "Oil pressure, bar". */
  readonly axis: string;
  /** What the joined ones were taken at: "2500 rpm, about 92 °C". Empty where nothing was said. */
  readonly conditions: string;
  /** By time, the oldest first. */
  readonly points: readonly ChartPoint[];
  readonly limits: readonly ChartLimit[];
  /** The line of the trend at two instants, where the data carry one. */
  readonly trend?: readonly [ChartEnd, ChartEnd] | undefined;
  /** The newest value in words: "4.1 bar". */
  readonly newest: string;
  readonly least: string;
  readonly most: string;
}

export interface ChartEnd {
  readonly atMs: number;
  readonly value: number;
}

export interface ReadingChartData {
  /** The answer in a sentence. */
  readonly title: string;
  /** One above the other over the same time. */
  readonly panels: readonly ChartPanel[];
  /** Whose days stand along the bottom. */
  readonly zone: string;
  readonly name: string;
}
