import { z } from 'zod';
import bearing from '../../data/jobs/after-bearing-failure.json' with { type: 'json' };
import jointFile from '../../data/jobs/joints.json' with { type: 'json' };
import starting from '../../data/jobs/starting-set.json' with { type: 'json' };
import { readTable, refuseTwins } from './read-table.ts';
import { startingStages } from './stages.ts';

const source = z.array(z.string().min(2)).min(1);
const key = z.string().regex(/^[a-z][a-z0-9-]*$/);
const name = z.string().min(3).max(120);

const Minutes = z
  .tuple([z.number().positive(), z.number().positive(), z.number().positive()])
  .refine(([least, likely, most]) => least <= likely && likely <= most, 'not in order')
  .transform(([least, likely, most]) => ({ least, likely, most }));

const SetPart = z.strictObject({
  name,
  quantity: z.int().positive(),
  singleUse: z.boolean().default(false),
});

const SetJob = z.strictObject({
  key,
  name,
  stage: key,
  system: z.string().min(3),
  minutes: Minutes,
  people: z.int().min(1).max(4).default(1),
  tools: z.array(z.string().min(3)).default([]),
  /** Jobs of this file that come before, by key. */
  after: z.array(key).default([]),
  /** Jobs of the starting set that wait for this one when both are on the list. */
  before: z.array(key).default([]),
  /** Stages that must have been passed. */
  afterStages: z.array(key).default([]),
  parts: z.array(SetPart).default([]),
  /** Cases that are filled, and what else crews call them. */
  fluids: z
    .array(z.strictObject({ case: z.string().min(3), alsoCalled: z.array(z.string().min(3)).default([]) }))
    .default([]),
  note: z.string().min(3).max(300).optional(),
  /** After a failure: what is done with the part, and whether it may go back. */
  action: z.enum(['look', 'open and clean', 'renew']).optional(),
  goesBack: z.string().min(2).max(300).optional(),
});
const File = z.strictObject({ about: z.string(), source, jobs: z.array(SetJob).min(1) });

const Joint = z.strictObject({
  key,
  words: z.array(z.string().min(3)).min(1),
  renew: z
    .array(
      z.strictObject({
        part: name,
        quantity: z.int().positive(),
        kind: z.enum([
          'gasket',
          'crush washer',
          'copper washer',
          'O-ring',
          'seal',
          'stretch bolts',
          'locking nuts',
          'plug',
        ]),
      }),
    )
    .min(1),
  sealant: z.string().min(3).optional(),
});
const Joints = z.strictObject({ about: z.string(), source, joints: z.array(Joint).min(1) });

/** A job of a set that a crew may choose from. */
export type SetJob = z.output<typeof SetJob>;
/** A joint that is opened, and what of it is used once. */
export type Joint = z.output<typeof Joint>;

/** Jobs of a boosted engine going back into a car, in an order in which each comes after what it needs. */
export const startingJobs: readonly SetJob[] = readJobs('jobs/starting-set.json', starting);

/** Everything in the oil circuit that can hold debris of a failed bearing. */
export const debrisJobs: readonly SetJob[] = readJobs('jobs/after-bearing-failure.json', bearing);

/** Joints by the words a job is entered with. */
export const joints: readonly Joint[] = readTable('jobs/joints.json', Joints, jointFile).joints;

refuseTwins(
  'jobs',
  [...startingJobs, ...debrisJobs].map((job) => job.key),
);
refuseTwins(
  'jobs',
  [...startingJobs, ...debrisJobs].map((job) => job.name),
);
for (const { key: own, before } of debrisJobs) {
  const unknown = before.find((later) => !startingJobs.some((job) => job.key === later));
  if (unknown !== undefined) throw new Error(`data/jobs: ${own} comes before ${unknown}, which is not there`);
}
refuseTwins(
  'jobs/joints.json',
  joints.map((joint) => joint.key),
);

/** Every reference is to something above it, so that no job can wait for itself. */
function readJobs(file: string, raw: unknown): readonly SetJob[] {
  const { jobs } = readTable(file, File, raw);
  const stages = new Map(startingStages.map((stage, rank) => [stage.key, rank]));
  const above = new Set<string>();
  for (const job of jobs) {
    const rank = stages.get(job.stage);
    if (rank === undefined) throw new Error(`data/${file}: ${job.key} is of no stage: ${job.stage}`);
    for (const before of job.after) {
      if (!above.has(before))
        throw new Error(`data/${file}: ${job.key} comes before ${before}, or it is missing`);
    }
    for (const stage of job.afterStages) {
      if ((stages.get(stage) ?? rank) >= rank) {
        throw new Error(`data/${file}: ${job.key} waits for a stage that is not before its own: ${stage}`);
      }
    }
    above.add(job.key);
  }
  return jobs;
}
