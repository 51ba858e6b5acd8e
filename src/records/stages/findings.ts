import { findMeasure, findMeasures } from './find-measures.ts';
import { findReading } from './find-readings.ts';
import { findFluid, findFluids, findJob, findJobs, findPartHere, findSaid } from './find-things.ts';
import type { Finding, Found } from './finding.ts';
import { isProof, type Stage, type StageCondition } from './stage.ts';
import type { StageFacts } from './stage-facts.ts';

/** How one condition stands: one finding when it is met, one for each thing that is open. */
export function findingsOf(
  { id, condition }: StageCondition,
  stage: Stage,
  facts: StageFacts,
): readonly Finding[] {
  const proof = isProof(condition);
  return found({ id, condition }, stage, facts).map((one) => ({
    leads: [],
    lasting: false,
    ...one,
    conditionId: id,
    proof,
  }));
}

function found({ id, condition }: StageCondition, stage: Stage, facts: StageFacts): readonly Found[] {
  switch (condition.kind) {
    case 'jobs':
      return findJobs(stage, facts);
    case 'job':
      return findJob(condition, facts);
    case 'part':
      return findPartHere(condition, facts);
    case 'measures':
      return findMeasures(stage, facts);
    case 'measure':
      return findMeasure(condition, stage, facts);
    case 'fluids':
      return findFluids(facts);
    case 'fluid':
      return findFluid(condition, facts);
    case 'reading':
      return findReading(condition, facts);
    case 'said':
      return findSaid(condition, id, facts);
  }
}
