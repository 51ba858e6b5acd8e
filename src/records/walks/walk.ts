/** A search for one fault of a build, by one guide; anybody of the crew goes on with it. */
export interface Walk {
  readonly id: number;
  readonly buildId: number;
  /** The guide's name across records: `no-spark`. */
  readonly symptom: string;
  /** The search that led to this one. */
  readonly cameFrom: number | null;
  readonly state: 'open' | 'left' | 'finished';
  readonly startedBy: string;
  readonly startedAtMs: number;
  /** Who put it aside; null unless it is left. */
  readonly leftBy: string | null;
  /** What it was in the end, by the guide's id; null when it was nothing this guide knows, or while it goes on. */
  readonly cause: string | null;
  readonly endedBy: string | null;
  readonly endedAtMs: number | null;
  /** What was wrong in the crew's own words. */
  readonly note: string | null;
  /** In the order in which they were made. */
  readonly findings: readonly Finding[];
}

/** What somebody found at a step. */
export interface Finding {
  readonly id: number;
  readonly walkId: number;
  /** A search begins a new round without the cause that proved innocent; a step comes once in each. */
  readonly round: number;
  /** A test of the guide, a measure (`measure-12`), or the cause that was looked into (`cause`). */
  readonly step: string;
  /** An outcome of that test, of a measure (see MEASURE_OUTCOMES), a cause's id, or CANNOT. */
  readonly outcome: string;
  readonly note: string | null;
  readonly byName: string;
  readonly atMs: number;
  /** What it was first noted as, when it was corrected. */
  readonly firstOutcome: string | null;
}

/** A test that cannot be done just now; it is offered again when nothing else is left. */
export const CANNOT = 'cannot';

/** The step at which a cause was put right or looked into and the fault stayed. */
export const CAUSE_STEP = 'cause';

/** In place of a cause at CAUSE_STEP: the search begins anew and rules none out. */
export const AGAIN = 'again';

/** What may be found when something done for now is looked at first. */
export const MEASURE_OUTCOMES = [
  { id: 'cured', label: 'Undone, and it is gone' },
  { id: 'same', label: 'Undone, no change' },
  { id: 'stays', label: 'It has to stay for now' },
] as const;

export const measureStep = (measureId: number): string => `measure-${measureId}`;

/** The measure a step is about; undefined for any other step. */
export function measureOfStep(step: string): number | undefined {
  const id = /^measure-(\d{1,9})$/.exec(step)?.[1];
  return id === undefined ? undefined : Number(id);
}

export const isOpen = ({ state }: Walk): boolean => state !== 'finished';

/** The round a search is in. */
export const roundOf = ({ findings }: Pick<Walk, 'findings'>): number =>
  1 + findings.filter(({ step }) => step === CAUSE_STEP).length;
