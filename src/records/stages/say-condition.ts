import { sayLimits, sayReadingName } from './find-readings.ts';
import type { Condition } from './stage.ts';
import type { StageFacts } from './stage-facts.ts';

/** A condition in words, whatever holds of it now. */
export function sayCondition(condition: Condition, { jobs, say }: Pick<StageFacts, 'jobs' | 'say'>): string {
  switch (condition.kind) {
    case 'jobs':
      return 'Every job of this stage is done';
    case 'job':
      return `Job done: ${jobs.find(({ id }) => id === condition.jobId)?.name ?? 'one that is no longer there'}`;
    case 'part':
      return `Part here or fitted: ${condition.name}`;
    case 'measures':
      return 'What is temporary stands as it should';
    case 'measure':
      return `In place: ${condition.word}`;
    case 'fluids':
      return 'Everything is filled';
    case 'fluid':
      return `Filled: ${condition.case}`;
    case 'reading': {
      const limits = sayLimits(condition.reading, condition, say);
      return `${sayReadingName(condition)}: ${limits}, no older than ${condition.freshDays} days`;
    }
    case 'said':
      return `Somebody says: ${condition.what}`;
  }
}
