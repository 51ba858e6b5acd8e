import { openCrewBot, TEAM } from '../support/bot.ts';
import { quantile } from './figures.ts';

/**
 * A build of 5000 parts and 800 jobs in a record in memory, and how long every question about its jobs takes from the
 * request to the reply, in process. Prints, judges nothing.
 */
const [PARTS, JOBS, ROUNDS] = [5_000, 800, 9] as const;
const STAGES = ['assembly', 'fluids', 'oil-pressure', 'fuel-pressure', 'first-start', 'running-in'] as const;

const bot = await openCrewBot();
fill();

/** Parts of four kinds, a fifth of them on order; jobs that need three of them and two earlier jobs. */
function fill(): void {
  const { ledger, record } = bot.teams.at(TEAM);
  const by = { interactionId: 'bench', personId: 'bench', personName: 'Bench', atMs: bot.clock.nowMs() };
  ledger.change(by, () => {
    const build = record.builds.open('600', 'Bench');
    const suppliers = ['Norvale', 'Castwell', 'Pellgate', 'Oxmere'].map((name) => record.suppliers.add(name));
    for (let index = 1; index <= PARTS; index += 1) {
      const part = record.parts.add({
        buildId: build.id,
        name: `part ${index}`,
        origin: 'new',
        needed: 1,
        system: null,
        singleUse: index % 3 === 0,
        note: null,
        link: null,
        guess: null,
      });
      const said = { partId: part.id, hadCome: 0, saidOn: '2026-11-20', byName: 'Ada', note: null };
      if (index % 5 === 0) {
        record.orders.place({
          buildId: build.id,
          what: part.name,
          partId: part.id,
          kind: 'goods',
          purchaseId: null,
          link: null,
          supplierId: suppliers[index % 4]?.id ?? 1,
          quantity: 1,
          price: null,
          orderedOn: '2026-11-16',
          promisedOn: `2026-12-${String(1 + (index % 28)).padStart(2, '0')}`,
          chaserId: 'ada',
          chaserName: 'Ada',
        });
      } else if (index % 7 !== 0) record.parts.say({ ...said, kind: 'counted', quantity: 1, place: 'shelf' });
    }
    for (let index = 1; index <= JOBS; index += 1) {
      const job = record.jobs.add({
        buildId: build.id,
        name: `job ${index}`,
        setKey: null,
        stage: STAGES[Math.floor(((index - 1) * STAGES.length) / JOBS)] ?? null,
        system: null,
        minutes: { least: 20 + (index % 40), likely: 60 + (index % 60), most: 150 + (index % 90) },
        people: 1 + (index % 6 === 0 ? 1 : 0),
        tools: [],
        note: null,
      });
      for (const back of [1 + (index % 5), 20]) {
        if (index > back) record.jobs.need(job.id, { kind: 'job', jobId: job.id - back });
      }
      for (let part = 0; part < 3; part += 1) {
        record.jobs.need(job.id, {
          kind: 'part',
          partId: ((index * 7 + part * 11) % PARTS) + 1,
          quantity: 1,
        });
      }
    }
    return { value: null, said: 'a large build' };
  });
}

const questions = [
  ['now', {}],
  ['now', { minutes: '90 min', people: 1 }],
  ['job list', {}],
  ['job list', { stage: 'assembly', page: 3 }],
  ['job show', { job: '400' }],
  ['job show', { job: 'job 777' }],
  ['job from-set', { set: 'assembly' }],
  ['when evenings', {}],
  ['when order-by', {}],
  ['when date', {}],
] as const;

for (const [line, options] of questions) {
  const [takenMs, workedMs]: [number[], number[]] = [[], []];
  for (let round = 0; round < ROUNDS; round += 1) {
    const from = performance.now();
    const used = process.cpuUsage();
    const { ok } = await bot.run(line, options);
    if (!ok) throw new Error(`${line} was refused`);
    takenMs.push(performance.now() - from);
    const { user, system } = process.cpuUsage(used);
    workedMs.push((user + system) / 1000);
  }
  const words = `/${line} ${JSON.stringify(options)}`;
  process.stdout.write(
    `${words.padEnd(44)} median ${quantile(takenMs, 0.5).toFixed(0)} ms, longest ${Math.max(...takenMs).toFixed(0)} ms, processor ${quantile(workedMs, 0.5).toFixed(0)} ms\n`,
  );
}
process.stdout.write(
  `${PARTS} parts, ${JOBS} jobs; /when date simulates and paints, letting others in every 25 runs.\n`,
);
