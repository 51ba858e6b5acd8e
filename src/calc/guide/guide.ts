/** What is wrong as somebody sees it, what may be behind it, and the tests that tell these apart. */
export interface Guide {
  readonly id: string;
  readonly name: string;
  /** What is seen, in a sentence. */
  readonly means: string;
  /** What people type for it. */
  readonly words: readonly string[];
  /** Who knows more than this guide. */
  readonly ask: string;
  readonly causes: readonly Cause[];
  readonly tests: readonly GuideTest[];
}

export interface Cause {
  readonly id: string;
  readonly name: string;
  /** How often it is this one on a freshly built engine, against the others; a rank and not a statistic. */
  readonly weight: number;
  readonly do: string;
  readonly recheck: string;
  /** The stage of the build that it belongs to, by its key. */
  readonly stage?: string;
  /** The guide to go on with. */
  readonly goesOn?: string;
  /** Words of parts and jobs that bring it to mind when they were changed. */
  readonly touches: readonly string[];
  /** Words of what, left off or blanked for now, would be it. */
  readonly leftOff: readonly string[];
  /** Readings that speak for it. */
  readonly readings: readonly ReadingSign[];
}

/** A reading beyond these bounds speaks for a cause, one within them against it. */
export interface ReadingSign {
  readonly kind: string;
  /** All of these must be among the reading's states. */
  readonly states: readonly string[];
  readonly unit: string;
  readonly below?: number;
  readonly from?: number;
}

export interface GuideTest {
  readonly id: string;
  /** The test in a line. */
  readonly test: string;
  readonly how: readonly string[];
  /** What is found when nothing is wrong there, with its unit. */
  readonly expect: string;
  /** Keys of docs/sources.md for `expect`. */
  readonly source: readonly string[];
  readonly minutes: number;
  readonly tools: readonly string[];
  /** Kinds of danger, each worded once for the whole guide. */
  readonly cautions: readonly string[];
  /** Tests that must have been done before this one is safe or possible. */
  readonly after: readonly string[];
  readonly outcomes: readonly Outcome[];
}

/** One of the things that may be found: either it leaves only some causes, or it rules some out. */
export interface Outcome {
  readonly id: string;
  readonly label: string;
  readonly leaves: readonly string[] | null;
  readonly rulesOut: readonly string[] | null;
  /** The measured values that mean it: from `from`, below `below`. */
  readonly reads: { readonly unit: string; readonly from?: number; readonly below?: number } | null;
}

/** Whether a cause is still possible after an outcome. */
export const keeps = ({ leaves, rulesOut }: Outcome, cause: string): boolean =>
  leaves === null ? !(rulesOut ?? []).includes(cause) : leaves.includes(cause);
