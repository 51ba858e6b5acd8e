import { suspects } from '../../commands/thread.ts';
import { identifyThread } from '../../src/calc/threads/identify.ts';
import { quantile } from './figures.ts';

/** Readings spread over the whole table: every thread at the middle of its size, with its own pitch and a caliper's error. */
const ROUNDS = 10;

const takenUs: number[] = [];
for (let round = 0; round <= ROUNDS; round += 1) {
  for (const { thread } of suspects) {
    const readings = {
      diameter: { mm: thread.basic.majorMm - 0.1, plusMinusMm: 0.05 },
      pitch: { mm: thread.pitchMm, plusMinusMm: 0.02 },
    };
    const from = performance.now();
    identifyThread(suspects, readings);
    if (round > 0) takenUs.push((performance.now() - from) * 1000); // the first round only warms up
  }
}

process.stdout.write(
  `Identification of a thread among ${suspects.length}, in process, ${takenUs.length} readings: ` +
    `median ${quantile(takenUs, 0.5).toFixed(0)} µs, p99 ${quantile(takenUs, 0.99).toFixed(0)} µs.\n`,
);
