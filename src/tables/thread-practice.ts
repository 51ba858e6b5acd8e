import { z } from 'zod';
import commonness from '../../data/threads/commonness.json' with { type: 'json' };
import spannerTable from '../../data/threads/spanners.json' with { type: 'json' };
import drillTable from '../../data/threads/tap-drills.json' with { type: 'json' };
import torqueTable from '../../data/threads/torques.json' with { type: 'json' };
import { fittings } from './fittings.ts';
import { readTable } from './read-table.ts';
import { threadTables } from './threads.ts';

const source = z.array(z.string().min(2)).min(1);
const weight = z.number().positive().max(10);

const Commonness = z.object({
  series: z.array(z.strictObject({ family: z.string(), series: z.string(), weight })),
  threads: z.array(z.strictObject({ thread: z.string(), weight, use: z.string().min(3) })),
});
const Drills = z.object({
  drills: z.array(
    z.strictObject({
      thread: z.string(),
      drill: z.string().min(1),
      drill_mm: z.number().positive().max(80),
      kind: z.string().min(3),
      source,
      differs: z.string().optional(),
      note: z.string().optional(),
    }),
  ),
});
const Torques = z.object({
  torques: z.array(
    z
      .strictObject({
        fitting: z.string(),
        part: z.string().min(3),
        min_nm: z.number().positive(),
        max_nm: z.number().positive(),
        condition: z.string().min(3),
        source,
      })
      .refine((row) => row.min_nm <= row.max_nm, 'the least torque is above the greatest'),
  ),
});
const Spanners = z.object({
  spanners: z.array(
    z.strictObject({
      family: z.string(),
      nominal: z.string(),
      spanner: z.string().min(3),
      older: z.string().optional(),
    }),
  ),
});

const common = readTable('threads/commonness.json', Commonness, commonness);
const drills = readTable('threads/tap-drills.json', Drills, drillTable).drills;
const torques = readTable('threads/torques.json', Torques, torqueTable).torques;
const spanners = readTable('threads/spanners.json', Spanners, spannerTable).spanners;

export type TapDrill = z.output<typeof Drills>['drills'][number];
export type FittingTorque = z.output<typeof Torques>['torques'][number];

const byThread = new Map(common.threads.map((row) => [row.thread, row]));
const bySeries = new Map(common.series.map((row) => [`${row.family} ${row.series}`, row.weight]));
const drillFor = new Map(drills.map((row) => [row.thread, row]));
const spannerFor = new Map(spanners.map((row) => [`${row.family} ${row.nominal}`, row]));

/** How often a thread turns up on cars and hoses relative to an ordinary one. Common practice, no source. */
export function commonWeight(thread: {
  readonly id: string;
  readonly family: string;
  readonly series: string;
}): number {
  return byThread.get(thread.id)?.weight ?? bySeries.get(`${thread.family} ${thread.series}`) ?? 1;
}

/** What a thread is found on. Common practice, no source. */
export function foundOn(threadId: string): string | undefined {
  return byThread.get(threadId)?.use;
}

export function tapDrill(threadId: string): TapDrill | undefined {
  return drillFor.get(threadId);
}

/** Published torques for a fitting; they differ between sources, and all are listed. */
export function fittingTorques(fittingId: string): readonly FittingTorque[] {
  return torques.filter((row) => row.fitting === fittingId);
}

/** Width across flats of the standard hexagon bolt, from memory of ISO 272 and ASME B18.2.1. */
export function spannerSize(thread: {
  readonly family: string;
  readonly nominal: string;
}): string | undefined {
  const row = spannerFor.get(`${thread.family} ${thread.nominal}`);
  if (row === undefined) return undefined;
  return row.older === undefined ? row.spanner : `${row.spanner}, older ${row.older}`;
}

const threadIds = new Set<string>(
  [
    ...threadTables.isoMetric,
    ...threadTables.unified,
    ...threadTables.iso228,
    ...threadTables.iso7,
    ...threadTables.npt,
    ...threadTables.whitworth,
  ].map(({ id }) => id),
);
const fittingIds = new Set(fittings.map(({ id }) => id));
for (const { thread } of [...common.threads, ...drills]) {
  if (!threadIds.has(thread)) throw new Error(`data/threads: a row names a thread of no table: ${thread}`);
}
for (const { fitting } of torques) {
  if (!fittingIds.has(fitting)) throw new Error(`data/threads/torques.json: no such fitting: ${fitting}`);
}
