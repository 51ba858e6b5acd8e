import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { writeBigLog } from './log-file.ts';

const Run = z.object({
  rows: z.number(),
  seconds: z.number(),
  peakMB: z.number(),
  heldMs: z.number(),
  longestMs: z.number(),
  progress: z.number(),
});

const run = (how: string, path: string): z.output<typeof Run> => {
  const script = fileURLToPath(new URL('./log-run.ts', import.meta.url));
  return Run.parse(JSON.parse(execFileSync(process.execPath, [script, how, path], { encoding: 'utf8' })));
};

const folder = mkdtempSync(join(tmpdir(), 'chargehand-bench-'));
try {
  const path = join(folder, 'drive.csv');
  await writeBigLog(path);
  const [plain, ours] = [run('plain', path), run('fuelling', path)];
  const perSecond = ({ rows, seconds }: typeof ours): string =>
    Math.round(rows / seconds).toLocaleString('en-GB');
  console.log(`fuelling from a log of ${(statSync(path).size / 1e6).toFixed(0)} MB, ${ours.rows.toLocaleString('en-GB')} rows, each in a process of its own:
  plain streaming parse  ${plain.seconds.toFixed(1)} s, ${perSecond(plain)} rows a second, ${plain.peakMB.toFixed(0)} MB at most
  read, fitted, judged   ${ours.seconds.toFixed(1)} s, ${perSecond(ours)} rows a second, ${ours.peakMB.toFixed(0)} MB at most
  beside each other      ${(ours.seconds / plain.seconds).toFixed(2)} times as long, ${(ours.peakMB / plain.peakMB).toFixed(2)} times the memory
  main loop held up      ${ours.heldMs.toFixed(0)} ms (99.9th percentile), ${ours.longestMs.toFixed(0)} ms at most; said how far it was ${ours.progress} times`);
} finally {
  rmSync(folder, { recursive: true });
}
