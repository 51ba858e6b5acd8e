import type { Guide } from '../../calc/guide/guide.ts';
import type { TeamRecord } from '../team-record.ts';
import { CANNOT, CAUSE_STEP, MEASURE_OUTCOMES, measureOfStep } from './walk.ts';

/** A step in words: the test's line, or what was done for now. */
export function sayStep(record: Pick<TeamRecord, 'measures'>, guide: Guide, step: string): string {
  if (step === CAUSE_STEP) return 'Looked into';
  const measure = measureOfStep(step);
  if (measure !== undefined)
    return `Done for now: ${record.measures.find(measure)?.what ?? 'no longer known'}`;
  return guide.tests.find(({ id }) => id === step)?.test ?? 'a test that is no longer in the guide';
}

/** What was found there, in words. */
export function sayOutcome(guide: Guide, step: string, outcome: string): string {
  if (outcome === CANNOT) return 'put off';
  if (step === CAUSE_STEP) {
    const cause = guide.causes.find(({ id }) => id === outcome);
    return cause === undefined ? 'begun anew' : `not it: ${cause.name}`;
  }
  const outcomes =
    measureOfStep(step) === undefined
      ? guide.tests.find(({ id }) => id === step)?.outcomes
      : MEASURE_OUTCOMES;
  return outcomes?.find(({ id }) => id === outcome)?.label ?? 'an outcome that is no longer in the guide';
}
