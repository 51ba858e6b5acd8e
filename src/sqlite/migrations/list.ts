import type { Migration } from '../migrate.ts';
import changeLog from './0001-change-log.ts';
import orders from './0002-orders.ts';
import ports from './0003-ports.ts';
import parts from './0004-parts.ts';
import jobs from './0005-jobs.ts';
import measuresAndStages from './0006-measures-and-stages.ts';
import fluids from './0007-fluids.ts';
import readings from './0008-readings.ts';
import runningIn from './0009-running-in.ts';
import walks from './0010-walks.ts';
import logColumns from './0011-log-columns.ts';
import ownUnits from './0012-units.ts';
import proposals from './0013-proposals.ts';
import specification from './0014-specification.ts';

/** Every step in order. Add at the end; once released, a step's text is sealed by a test. */
export const migrations: readonly Migration[] = [
  changeLog,
  orders,
  ports,
  parts,
  jobs,
  measuresAndStages,
  fluids,
  readings,
  runningIn,
  walks,
  logColumns,
  ownUnits,
  proposals,
  specification,
];
