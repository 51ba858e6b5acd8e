import { z } from 'zod';
import { addDays, type Day, instantOf } from '../core/time.ts';
import { readLimit } from '../phrases/readings/read-limit.ts';
import { readLine } from '../phrases/readings/read-line.ts';
import { kindsWith } from '../records/readings/kinds.ts';
import { logReadings } from '../records/readings/log-readings.ts';
import type { TeamRecord } from '../records/team-record.ts';

/** What the demonstration has of readings, as a crew would type them. */
export const DemoReadings = z.object({
  lines: z.array(
    z.object({
      line: z.string(),
      /** In days from the day it is loaded; minus is past. */
      on: z.int().max(-1),
      by: z.string(),
    }),
  ),
  limits: z.array(
    z.object({ kind: z.string(), limit: z.string(), from: z.enum(['maker', 'crew']), by: z.string() }),
  ),
});

const context = { kinds: kindsWith([]), afrOf: () => undefined };

/** @throws Error naming a line that means more than one thing, or none: the demonstration is ours. */
export function writeDemoReadings(
  record: TeamRecord,
  buildId: number,
  { lines, limits }: z.output<typeof DemoReadings>,
  today: Day,
  zone: string,
): void {
  for (const { kind, limit, from, by } of limits) {
    const read = readLimit(limit, kind, context);
    if (read.verdict !== 'read')
      throw new Error(`data/demo/build.json: the limit "${limit}" of ${kind} is not read`);
    const { min, max, conditions } = read;
    record.readingRules.addLimit({
      buildId,
      kind,
      min,
      max,
      conditions,
      origin: from,
      typed: limit,
      byName: by,
      setOn: today,
    });
  }
  for (const { line, on, by } of lines) {
    const read = readLine(line, context);
    const kind = context.kinds.find(({ name }) => read.verdict === 'read' && name === read.kind);
    if (read.verdict !== 'read' || kind === undefined)
      throw new Error(`data/demo/build.json: the reading "${line}" is not read`);
    logReadings(record, {
      buildId,
      kind,
      values: read.values,
      typed: line,
      note: read.note ?? null,
      link: null,
      atMs: instantOf(addDays(today, on), '18:30', zone),
      byName: by,
    });
  }
}
