import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { modelOf, runModel } from '../support/model-engine/engine.ts';
import { logStyles } from '../support/model-engine/log-styles.ts';
import { logText } from '../support/model-engine/log-text.ts';

/** Writes a log of a long drive: 500,000 rows, about 50 MB. */
export async function writeBigLog(path: string): Promise<void> {
  const model = modelOf(7, { kind: 'road', seconds: 10_000, rowsPerS: 50, closedLoop: true });
  const style = logStyles['plain English, seconds'];
  if (style === undefined) throw new Error('the style is gone');
  const columns = [
    ...style.columns,
    ['Ignition angle (deg)', (row: { speedRpm: number }) => 10 + row.speedRpm / 400] as const,
    ['Charge temp (°C)', (row: { chargeC: number }) => row.chargeC] as const,
    ['Road speed (km/h)', (row: { speedRpm: number }) => row.speedRpm / 47.3] as const,
    ['Acceleration (g)', (row: { throttleRatio: number }) => row.throttleRatio - 0.1] as const,
  ];
  const file = createWriteStream(path);
  let gathered = '';
  for (const line of logText(runModel(model), { ...style, columns })) {
    gathered += line;
    if (gathered.length < 1_000_000) continue;
    if (!file.write(gathered)) await once(file, 'drain');
    gathered = '';
  }
  file.end(gathered);
  await once(file, 'finish');
}
