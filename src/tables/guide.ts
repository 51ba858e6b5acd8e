import { z } from 'zod';
import boost from '../../data/guide/boost.json' with { type: 'json' };
import cautionTable from '../../data/guide/cautions.json' with { type: 'json' };
import charging from '../../data/guide/charging.json' with { type: 'json' };
import cranksNoSpeed from '../../data/guide/cranks-no-speed.json' with { type: 'json' };
import firesAndDies from '../../data/guide/fires-and-dies.json' with { type: 'json' };
import noCrank from '../../data/guide/no-crank.json' with { type: 'json' };
import noFire from '../../data/guide/no-fire.json' with { type: 'json' };
import noFuelPressure from '../../data/guide/no-fuel-pressure.json' with { type: 'json' };
import noInjectorPulse from '../../data/guide/no-injector-pulse.json' with { type: 'json' };
import noOilPressure from '../../data/guide/no-oil-pressure.json' with { type: 'json' };
import noSpark from '../../data/guide/no-spark.json' with { type: 'json' };
import overheating from '../../data/guide/overheating.json' with { type: 'json' };
import roughIdle from '../../data/guide/rough-idle.json' with { type: 'json' };
import smoke from '../../data/guide/smoke.json' with { type: 'json' };
import willNotStart from '../../data/guide/will-not-start.json' with { type: 'json' };
import wontRev from '../../data/guide/wont-rev.json' with { type: 'json' };
import { readTable, refuseTwins } from './read-table.ts';
import { startingStages } from './stages.ts';

/** Travels in a button's reference, which is short. */
const id = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/)
  .max(24);
const sentence = z.string().min(5).max(400);
const bounds = { from: z.number().exactOptional(), below: z.number().exactOptional() };
const bounded = (row: { readonly from?: number; readonly below?: number }): boolean =>
  row.from !== undefined || row.below !== undefined;

const Cause = z.strictObject({
  id,
  name: z.string().min(5).max(90),
  weight: z.int().min(1).max(30),
  do: sentence,
  recheck: sentence,
  stage: z.string().exactOptional(),
  goesOn: id.exactOptional(),
  touches: z.array(z.string().min(3)),
  leftOff: z.array(z.string().min(3)).default([]),
  readings: z
    .array(
      z
        .strictObject({
          kind: z.string().min(3),
          states: z.array(z.string().min(3)),
          unit: z.string().min(1),
          ...bounds,
        })
        .refine(bounded, 'a sign needs a bound'),
    )
    .default([]),
});

const Outcome = z
  .strictObject({
    id,
    label: z.string().min(4).max(34),
    leaves: z.array(id).min(1).nullable().default(null),
    rulesOut: z.array(id).min(1).nullable().default(null),
    reads: z
      .strictObject({ unit: z.string().min(1), ...bounds })
      .refine(bounded, 'a reading needs a bound')
      .nullable()
      .default(null),
  })
  .refine(
    ({ leaves, rulesOut }) => (leaves === null) !== (rulesOut === null),
    'it leaves some, or rules some out',
  );

const Test = z.strictObject({
  id,
  test: z.string().min(10).max(110),
  how: z.array(z.string().min(10).max(160)).min(1).max(4),
  expect: z.string().min(3).max(140),
  source: z.array(z.string().min(2)).min(1),
  minutes: z.int().min(1).max(120),
  tools: z.array(z.string().min(2)),
  cautions: z.array(id),
  after: z.array(id).default([]),
  outcomes: z.array(Outcome).min(2).max(4),
});

const GuideRow = z.strictObject({
  id,
  name: z.string().min(4).max(60),
  means: sentence,
  words: z.array(z.string().min(3)).min(3),
  ask: sentence,
  causes: z.array(Cause).min(4),
  tests: z.array(Test).min(4),
});
export type GuideRow = z.output<typeof GuideRow>;

const Cautions = z.strictObject({
  notes: z.string(),
  cautions: z.record(id, z.string().min(20).max(200)),
});

const files: Readonly<Record<string, unknown>> = {
  'will-not-start': willNotStart,
  'no-crank': noCrank,
  'cranks-no-speed': cranksNoSpeed,
  'no-spark': noSpark,
  'no-fuel-pressure': noFuelPressure,
  'no-injector-pulse': noInjectorPulse,
  'no-fire': noFire,
  'fires-and-dies': firesAndDies,
  'rough-idle': roughIdle,
  'no-oil-pressure': noOilPressure,
  overheating,
  smoke,
  'wont-rev': wontRev,
  boost,
  charging,
};

/** Words for each kind of danger, in the order in which they are said. */
export const guideCautions: ReadonlyMap<string, string> = new Map(
  Object.entries(readTable('guide/cautions.json', Cautions, cautionTable).cautions),
);

/** Every fault guide, by the symptom it starts from. */
export const guides: readonly GuideRow[] = Object.entries(files).map(([file, raw]) =>
  readTable(`guide/${file}.json`, GuideRow, raw),
);

const guideIds = guides.map((guide) => guide.id);
refuseTwins('guide', guideIds);
const stageKeys = startingStages.map(({ key }) => key);
for (const guide of guides) checkReferences(guide);

/** @throws Error naming the guide and the reference that leads nowhere. */
function checkReferences({ id: guide, causes, tests }: GuideRow): void {
  const file = `guide/${guide}.json`;
  const causeIds = causes.map((cause) => cause.id);
  const testIds = tests.map((test) => test.id);
  refuseTwins(file, causeIds);
  refuseTwins(file, testIds);
  for (const cause of causes) {
    need(file, guideIds, cause.goesOn);
    need(file, stageKeys, cause.stage);
    if (cause.goesOn === guide) throw new Error(`data/${file}: ${cause.id} goes on with itself`);
  }
  for (const { id: test, after, cautions, outcomes } of tests) {
    refuseTwins(
      file,
      outcomes.map((outcome) => `${test}/${outcome.id}`),
    );
    for (const before of after) need(file, testIds, before);
    for (const kind of cautions) need(file, [...guideCautions.keys()], kind);
    for (const one of outcomes.flatMap(({ leaves, rulesOut }) => leaves ?? rulesOut ?? [])) {
      need(file, causeIds, one);
    }
  }
}

function need(file: string, known: readonly string[], named: string | undefined): void {
  if (named !== undefined && !known.includes(named))
    throw new Error(`data/${file} names ${named}, which there is not`);
}
