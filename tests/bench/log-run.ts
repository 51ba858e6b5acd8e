import { createReadStream, statSync } from 'node:fs';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { parse } from 'csv-parse';
import { breather } from '../../src/core/breathe.ts';
import { analyse } from '../../src/logs/analyse.ts';

/** One reading of a log in a process of its own, so that its peak of memory is its own: `plain` or `fuelling`. */
const [how = '', path = ''] = process.argv.slice(2);
const started = performance.now();
const delay = monitorEventLoopDelay({ resolution: 1 });
delay.enable();
let rows = 0;
let progress = 0;
if (how === 'plain') {
  for await (const _ of createReadStream(path).pipe(parse({ relax_column_count: true }))) rows++;
} else {
  const analysed = await analyse({
    bytes: createReadStream(path),
    size: statSync(path).size,
    assigned: () => ({}),
    stoichiometricAfr: 14.7,
    axes: {},
    target: undefined,
    capRatio: 0.1,
    breathe: breather(),
    progress: () => void progress++,
  });
  if (analysed.kind === 'undecided') throw new Error('the columns were not known');
  rows = analysed.tally.rows;
}
delay.disable();
const seconds = (performance.now() - started) / 1000;
const { maxRSS } = process.resourceUsage();
console.log(
  JSON.stringify({
    rows,
    seconds,
    peakMB: maxRSS / 1024,
    heldMs: delay.percentile(99.9) / 1e6,
    longestMs: delay.max / 1e6,
    progress,
  }),
);
