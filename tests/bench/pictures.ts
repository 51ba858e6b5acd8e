import { monitorEventLoopDelay } from 'node:perf_hooks';
import { threadReply } from '../../commands/thread.ts';
import type { Drawing } from '../../src/core/reply.ts';
import { renderPng } from '../../src/pictures/render.ts';
import { quantile } from './figures.ts';

/** Questions of every kind of picture: sure, doubtful, many, a taper, a name, a diameter alone. */
const SIZES = ['21.9 x 1.5', '3/4-16', '13.1 x 19tpi', '9.7 x 28tpi', '21.9', '13.7 x 18tpi', '9.9'] as const;
const ROUNDS = 20;

const median = (values: readonly number[]): number => quantile(values, 0.5);

function drawingOf(size: string): Drawing {
  const [drawing] = threadReply({ size }).drawings ?? [];
  if (drawing === undefined) throw new Error(`${size} is answered without a picture`);
  return drawing;
}

const firstFrom = performance.now();
await renderPng(drawingOf(SIZES[0]));
const first = performance.now() - firstFrom;

const delay = monitorEventLoopDelay({ resolution: 1 });
delay.enable();
const [answering, painting, bytes]: [number[], number[], number[]] = [[], [], []];
for (let round = 0; round < ROUNDS; round++) {
  for (const size of SIZES) {
    const from = performance.now();
    const drawing = drawingOf(size);
    const drawn = performance.now();
    bytes.push((await renderPng(drawing)).length);
    answering.push(drawn - from);
    painting.push(performance.now() - drawn);
  }
}
delay.disable();

console.log(`thread picture, ${painting.length} of them:
  first in the process  ${first.toFixed(1)} ms (answer, drawing, painting)
  answer and drawing    ${median(answering).toFixed(1)} ms median
  painting              ${median(painting).toFixed(1)} ms median, ${Math.max(...painting).toFixed(1)} ms at most
  PNG                   ${(median(bytes) / 1000).toFixed(0)} kB median, ${(Math.max(...bytes) / 1000).toFixed(0)} kB at most
  main loop held up     ${(delay.percentile(99) / 1e6).toFixed(1)} ms (99th percentile)`);
