import type { Cause } from '../../calc/guide/guide.ts';
import type { Button } from '../../core/reply.ts';
import { AGAIN, CANNOT, CAUSE_STEP, type Finding, MEASURE_OUTCOMES, measureStep, type Walk } from './walk.ts';

const press = (
  label: string,
  action: string,
  args: Readonly<Record<string, string | number>>,
  weight?: Button['weight'],
): Button => ({
  label,
  does: { command: 'fault', action, args },
  ...(weight === undefined ? {} : { weight }),
});

const finding = ({ id }: Walk, step: string, outcome: string, label: string): Button =>
  press(label, 'found', { walk: id, step, outcome });

interface Choice {
  readonly id: string;
  readonly label: string;
}

/** What may be found at a test, then what else can be done there. */
export const testButtons = (
  walk: Walk,
  test: { readonly id: string; readonly outcomes: readonly Choice[] },
  mayPutOff: boolean,
): readonly Button[] => [
  ...test.outcomes.map(({ id, label }) => finding(walk, test.id, id, label)),
  ...(mayPutOff ? [finding(walk, test.id, CANNOT, 'Can’t do that now')] : []),
  noteButton(walk, test.id),
];

export const measureButtons = (walk: Walk, measureId: number): readonly Button[] => [
  ...MEASURE_OUTCOMES.map(({ id, label }) => finding(walk, measureStep(measureId), id, label)),
  finding(walk, measureStep(measureId), CANNOT, 'Can’t do that now'),
];

/** What comes of a cause: it was that, it was not, or another guide goes on. */
export const causeButtons = (walk: Walk, cause: Cause, nextGuide: string | undefined): readonly Button[] => [
  ...(nextGuide === undefined
    ? [press('That was it', 'finish', { walk: walk.id, cause: cause.id }, 'main')]
    : [press(`Go on: ${nextGuide}`.slice(0, 34), 'go-on', { walk: walk.id, cause: cause.id }, 'main')]),
  finding(walk, CAUSE_STEP, cause.id, 'It was not that'),
];

export const beyondButtons = (walk: Walk): readonly Button[] => [
  finding(walk, CAUSE_STEP, AGAIN, 'Begin it anew'),
  closeButton(walk),
];

/** At the end of every card of an open search. */
export const tailButtons = (walk: Walk): readonly Button[] => [
  ...(walk.findings.length === 0 ? [] : [soFarButton(walk)]),
  ...(walk.state === 'open' ? [press('Leave it here', 'leave', { walk: walk.id })] : []),
];

export const soFarButton = ({ id }: Walk): Button => press('So far', 'so-far', { walk: id });
export const goOnButton = ({ id }: Walk): Button => press('Go on', 'resume', { walk: id }, 'main');
export const showButton = ({ id }: Walk): Button => press('Back to the test', 'show', { walk: id });
export const closeButton = ({ id }: Walk): Button => press('Close it', 'close', { walk: id });
export const againButton = ({ symptom }: Walk): Button => press('Search again', 'start', { symptom });

const noteButton = ({ id }: Walk, step: string): Button => press('With a note', 'note', { walk: id, step });

export const correctButton = ({ walkId, id }: Finding): Button =>
  press('Correct', 'correct', { walk: walkId, finding: id });

export const takeBackButton = ({ walkId, id }: Finding): Button =>
  press('Take back the last', 'back', { walk: walkId, finding: id });

/** The outcomes a finding can be corrected to. */
export const correctionButtons = (
  { walkId, id, outcome: noted }: Finding,
  outcomes: readonly Choice[],
): readonly Button[] =>
  outcomes
    .filter((one) => one.id !== noted)
    .map(({ id: outcome, label }) => press(label, 'corrected', { walk: walkId, finding: id, outcome }));
