import { z } from 'zod';
import planTable from '../../data/running-in/plans.json' with { type: 'json' };
import practiceTable from '../../data/running-in/practice.json' with { type: 'json' };
import { readTable, refuseTwins } from './read-table.ts';

const words = z.string().min(3);
const Figure = z.tuple([z.number(), z.string().min(1)]).transform(([value, unit]) => ({ value, unit }));

const Practice = z.strictObject({
  id: z.string().regex(/^[a-z-]+$/),
  item: words,
  figures: z.record(z.string(), Figure),
  words: z.record(z.string(), words).exactOptional(),
  source: z.array(z.string().min(2)).min(1),
  note: words.exactOptional(),
});

/** A figure of how engines are run in; common practice, no source. */
export type RunInPractice = Readonly<z.output<typeof Practice>>;

export const runInPractice: readonly RunInPractice[] = readTable(
  'running-in/practice.json',
  z.object({ title: z.string(), note: z.string(), rows: z.array(Practice).min(1) }),
  practiceTable,
).rows;
refuseTwins(
  'running-in/practice.json',
  runInPractice.map(({ id }) => id),
);

/** @throws Error for an id that is not in the table: a slip of ours. */
export function practiceOf(id: string): RunInPractice {
  const found = runInPractice.find((row) => row.id === id);
  if (found === undefined) throw new Error(`data/running-in/practice.json has no ${id}`);
  return found;
}

const mark = z.number().min(0).exactOptional();
const share = z.number().min(0).max(1);

const Step = z
  .strictObject({
    what: words,
    hint: words.exactOptional(),
    due_km: mark,
    due_h: mark,
    due_days: mark,
    rests_on: z.string(),
  })
  .refine(({ due_km, due_h, due_days }) => (due_km ?? due_h ?? due_days) !== undefined, 'it is never due')
  .transform(({ due_km: km, due_h: h, due_days: days, hint, rests_on: restsOn, what }) => ({
    what,
    hint: hint ?? null,
    due: { km: km ?? null, h: h ?? null, days: days ?? null },
    restsOn,
  }));

const CeilingRow = z
  .strictObject({
    at: z.number().min(0),
    speed_ratio: share,
    speed_rpm: z.number().positive(),
    boost_ratio: share,
    load: words,
  })
  .transform(({ speed_ratio: speedRatio, speed_rpm: speedRpm, boost_ratio: boostRatio, ...same }) => ({
    ...same,
    speedRatio,
    speedRpm,
    boostRatio,
  }));

const Plan = z.strictObject({
  id: words,
  about: words,
  measure: z.enum(['km', 'h', 'days']),
  steps: z.array(Step).min(1),
  ceilings: z
    .array(CeilingRow)
    .min(2)
    .refine(
      (rows) => rows.every(({ at }, index) => index === 0 || at > (rows[index - 1]?.at ?? at)),
      'ceilings must go on',
    )
    .refine((rows) => rows[0]?.at === 0, 'the first ceiling must stand at the first start'),
});

/** A plan of common practice. */
export type PlanRow = Readonly<z.output<typeof Plan>>;

export const runInPlans: readonly PlanRow[] = readTable(
  'running-in/plans.json',
  z.object({ title: z.string(), note: z.string(), plans: z.array(Plan).min(1) }),
  planTable,
).plans;
refuseTwins(
  'running-in/plans.json',
  runInPlans.map(({ id }) => id),
);
for (const { steps } of runInPlans) for (const { restsOn } of steps) practiceOf(restsOn);
