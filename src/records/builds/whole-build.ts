import type { Day } from '../../core/time.ts';
import type { Job } from '../jobs/job.ts';
import { type KnownStanding, standings } from '../parts/standings.ts';
import type { Stage } from '../stages/stage.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Build } from './build.ts';

/** A build with what several parts of a report need, looked up once. */
export interface WholeBuild {
  readonly record: TeamRecord;
  readonly build: Build;
  readonly today: Day;
  /** IANA name; the instants of readings are written as wall time there. */
  readonly zone: string;
  /** Every part with how many of it are where. */
  readonly standings: readonly KnownStanding[];
  readonly jobs: readonly Job[];
  readonly stages: readonly Stage[];
}

export function wholeBuild(record: TeamRecord, build: Build, today: Day, zone: string): WholeBuild {
  return {
    record,
    build,
    today,
    zone,
    standings: standings(record, build.id, today),
    jobs: record.jobs.ofBuild(build.id),
    stages: record.stages.ofBuild(build.id),
  };
}
