import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Sheet } from '../csv.ts';
import { fluidSheet } from './fluid-sheet.ts';
import { jobSheet } from './job-sheet.ts';
import { orderSheet } from './order-sheet.ts';
import { partSheet } from './part-sheet.ts';
import { portSheet } from './port-sheet.ts';
import { readingSheet } from './reading-sheet.ts';
import { runningInSheet } from './running-in-sheet.ts';
import { specificationSheet } from './specification-sheet.ts';
import { stageSheet } from './stage-sheet.ts';
import { temporarySheet } from './temporary-sheet.ts';

/**
 * A build's record as sheets, one for each kind of thing; those with nothing in them are left out. Ten at most: so many files a
 * message of the platform carries, and one export is one message.
 */
export function sheetsOf(source: WholeBuild): readonly Sheet[] {
  return [
    orderSheet,
    partSheet,
    jobSheet,
    temporarySheet,
    stageSheet,
    fluidSheet,
    readingSheet,
    runningInSheet,
    portSheet,
    specificationSheet,
  ]
    .map((sheet) => sheet(source))
    .filter(({ rows }) => rows.length > 0);
}
