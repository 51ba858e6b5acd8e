import type { JsonObject } from '../../core/json.ts';
import type { DayContext } from '../day-asked.ts';
import type { FuelNames } from '../fuel-name.ts';

/** What a line of free text is about. */
export type QuickKind =
  | 'thread'
  | 'afr-lambda'
  | 'convert'
  | 'torque'
  | 'injector'
  | 'pressure'
  | 'coolant'
  | 'displacement'
  | 'compression'
  | 'hose'
  | 'date';

/** Which question of its kind is asked; each is answered in one way. */
export type QuickForm =
  | 'thread'
  | 'thread-pitch'
  | 'tap-drill'
  | 'mixture'
  | 'mixture-change'
  | 'stoichiometric'
  | 'convert'
  | 'bolt'
  | 'flow-units'
  | 'flow-at-pressure'
  | 'injector-size'
  | 'injector-power'
  | 'longest-pulse'
  | 'duty'
  | 'rail-pressure'
  | 'oil-pressure'
  | 'freezing'
  | 'coolant-fill'
  | 'coolant-change'
  | 'displacement'
  | 'per-cylinder'
  | 'compression-ratio'
  | 'compression-test'
  | 'dash'
  | 'nearest-dash'
  | 'date'
  | 'days-until'
  | 'holiday';

/** One meaning that can be acted on. */
export interface QuickAnswer {
  readonly verdict: 'answer';
  readonly kind: QuickKind;
  readonly form: QuickForm;
  /** Key numbers in base units, named with their unit. */
  readonly numbers: JsonObject;
  /** The pieces as they were typed, by what they stand for. */
  readonly said: Readonly<Record<string, string>>;
}

/** A reading worth a button: what would be typed to mean nothing else, or what is still to be filled in. */
export interface QuickCandidate {
  readonly kind: QuickKind;
  readonly label: string;
  readonly text: string;
  /** The text is a beginning: figures are missing where it has `…`. */
  readonly open?: true;
}

export interface QuickAsk {
  readonly verdict: 'ask';
  readonly kind: QuickKind;
  /** A sentence that says what is open. */
  readonly question: string;
  /** The likeliest first. */
  readonly candidates: readonly QuickCandidate[];
}

/** What a line is: something to answer, something to ask back about, or people talking to each other. */
export type QuickReading = QuickAnswer | QuickAsk | { readonly verdict: 'none' };

/** What a line is read against. */
export interface QuickContext {
  readonly fuels: FuelNames;
  /** Property classes and grades as they are written. */
  readonly boltClasses: readonly string[];
  /** Days are read only where it is known when and where. */
  readonly dates?: DayContext;
}

export function answer(
  kind: QuickKind,
  form: QuickForm,
  numbers: JsonObject,
  said: Readonly<Record<string, string>>,
): QuickAnswer {
  return { verdict: 'answer', kind, form, numbers, said };
}

export function ask(
  kind: QuickKind,
  question: string,
  candidates: readonly Omit<QuickCandidate, 'kind'>[],
): QuickAsk {
  return {
    verdict: 'ask',
    kind,
    question,
    candidates: candidates.map((candidate) => ({ kind, ...candidate })),
  };
}

/** A button whose label is the very text it stands for. */
export const offer = (text: string): Omit<QuickCandidate, 'kind'> => ({ label: text, text });
