import { sayFullDay } from '../core/time.ts';
import type { WholeBuild } from '../records/builds/whole-build.ts';
import { costs } from './chapters/costs.ts';
import { faults } from './chapters/faults.ts';
import { fluids } from './chapters/fluids.ts';
import { jobs } from './chapters/jobs.ts';
import { openPoints } from './chapters/open-points.ts';
import { parts } from './chapters/parts.ts';
import { ports } from './chapters/ports.ts';
import { readings } from './chapters/readings.ts';
import { runningIn } from './chapters/running-in.ts';
import { specification } from './chapters/specification.ts';
import { stages } from './chapters/stages.ts';
import { temporaryMeasures } from './chapters/temporary-measures.ts';
import type { Paper } from './paper.ts';

/** The record of one build as a paper for a mapper, an inspector or the next owner; what is open stands first. */
export function buildPaper(source: WholeBuild): Paper {
  return {
    title: source.build.name,
    subtitle: `The record of its build, as it stood on ${sayFullDay(source.today)}`,
    sections: [
      openPoints(source),
      specification(source),
      stages(source),
      readings(source),
      runningIn(source),
      fluids(source),
      parts(source),
      ports(source),
      temporaryMeasures(source),
      jobs(source),
      faults(source),
      costs(source),
    ],
  };
}
