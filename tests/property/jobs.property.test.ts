import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inOrder, someLoop } from '../../src/calc/schedule/graph.ts';
import { UserError } from '../../src/core/user-error.ts';
import { blockers } from '../../src/records/jobs/blockers.ts';
import { whatNow } from '../../src/records/jobs/can-do.ts';
import type { JobFacts, StageFact } from '../../src/records/jobs/facts.ts';
import type { Job, JobNeed } from '../../src/records/jobs/job.ts';
import { finishJob } from '../../src/records/jobs/moves.ts';
import { addNeeds } from '../../src/records/jobs/needs.ts';
import { freesCount, openNetwork, wholeNetwork } from '../../src/records/jobs/network.ts';
import type { PartStanding } from '../../src/records/parts/part.ts';
import { aJob, bookOf, onShelf, writeJob, writePart } from '../support/jobs.ts';
import { openRecord, TODAY } from '../support/record.ts';

const settings = {
  seed: Number(process.env['FC_SEED'] ?? 20_261),
  numRuns: Number(process.env['FC_RUNS'] ?? 150),
};

const STAGES: readonly StageFact[] = ['assembly', 'fluids', 'first-start'].map((key, rank) => ({
  key,
  name: key,
  rank,
  passed: false,
}));

const aStanding = fc.record({ inHand: fc.nat(3), fitted: fc.nat(2), singleUse: fc.boolean() }).map(
  ({ inHand, fitted, singleUse }) =>
    (id: number): PartStanding => ({
      part: {
        id,
        buildId: 1,
        name: `part ${id}`,
        alsoCalled: [],
        origin: 'new',
        needed: 3,
        system: null,
        singleUse,
        note: null,
        link: null,
      },
      whereabouts: 'not ordered',
      inHand,
      fitted,
      toSortOut: 0,
      sentBack: 0,
      coming: [],
      out: [],
      missing: 0,
    }),
);

/** Jobs that need only earlier ones, so that there is no loop; some done, some dropped. */
const aBook = fc
  .record({
    parts: fc.array(aStanding, { minLength: 1, maxLength: 4 }),
    jobs: fc.array(
      fc.record({
        after: fc.array(fc.nat(), { maxLength: 3 }),
        parts: fc.array(fc.tuple(fc.nat(), fc.integer({ min: 1, max: 4 })), { maxLength: 2 }),
        fate: fc.constantFrom(
          'open' as const,
          'open' as const,
          'open' as const,
          'done' as const,
          'dropped' as const,
        ),
        stage: fc.option(fc.constantFrom(...STAGES.map(({ key }) => key)), { nil: null }),
        minutes: fc.integer({ min: 10, max: 600 }),
      }),
      { minLength: 1, maxLength: 12 },
    ),
  })
  .map(({ parts, jobs }) => {
    const made = jobs.map(({ after, parts: wanted, fate, stage, minutes }, index): Job => {
      const jobNeeds = index === 0 ? [] : [...new Set(after.map((each) => (each % index) + 1))];
      const partNeeds = new Map(wanted.map(([which, quantity]) => [(which % parts.length) + 1, quantity]));
      return aJob({
        id: index + 1,
        stage,
        minutes: { least: minutes / 2, likely: minutes, most: minutes * 2 },
        doneOn: fate === 'done' ? TODAY : null,
        doneByName: fate === 'done' ? 'Ada' : null,
        dropped: fate === 'dropped',
        needs: [
          ...jobNeeds.map((jobId): JobNeed => ({ kind: 'job', jobId })),
          ...[...partNeeds].map(([partId, quantity]): JobNeed => ({ kind: 'part', partId, quantity })),
        ],
      });
    });
    return bookWith(
      made,
      parts.map((make, index) => make(index + 1)),
    );
  });

function bookWith(jobs: readonly Job[], parts: readonly PartStanding[]) {
  const facts: JobFacts = {
    jobs: new Map(jobs.map((job) => [job.id, job])),
    parts: new Map(parts.map((one) => [one.part.id, one])),
    fluids: new Map(),
    stages: new Map(STAGES.map((stage) => [stage.key, stage])),
  };
  return { jobs, stages: STAGES, stagesWhole: [], facts };
}

describe('what can be done now', () => {
  it('is nothing that lacks anything it needs, and everything that lacks nothing', () => {
    let offered = 0;
    fc.assert(
      fc.property(aBook, (book) => {
        const { ready, tooMuch, blocked } = whatNow(book);
        const readyIds = new Set(ready.map(({ job }) => job.id));
        offered += ready.length;
        for (const job of book.jobs) {
          const open = job.doneOn === null && !job.dropped;
          const lacks = job.needs.some((need) => {
            if (need.kind === 'part') {
              const standing = book.facts.parts.get(need.partId);
              const here = (standing?.inHand ?? 0) + (standing?.part.singleUse ? 0 : (standing?.fitted ?? 0));
              return here < need.quantity;
            }
            const other = need.kind === 'job' ? book.facts.jobs.get(need.jobId) : undefined;
            return other !== undefined && other.doneOn === null && !other.dropped;
          });
          expect(readyIds.has(job.id)).toBe(open && !lacks);
        }
        // every open job is said something about, once
        const said = [...ready, ...tooMuch, ...blocked].map(({ job }) => job.id).toSorted((a, b) => a - b);
        const open = book.jobs
          .filter(({ doneOn, dropped }) => doneOn === null && !dropped)
          .map(({ id }) => id);
        expect(said).toEqual(open);
      }),
      settings,
    );
    expect(offered).toBeGreaterThan(settings.numRuns / 2);
  });

  it('does not hang on the order in which jobs and needs were entered', () => {
    fc.assert(
      fc.property(aBook, fc.integer(), (book, by) => {
        const turned = book.jobs.toSorted((a, b) => ((a.id * 7 + by) % 11) - ((b.id * 7 + by) % 11));
        const shuffled = bookWith(
          turned.map((job) => ({ ...job, needs: job.needs.toReversed() })),
          [...book.facts.parts.values()].toReversed(),
        );
        const ids = (one: typeof book) => whatNow(one).ready.map(({ job, frees }) => [job.id, frees]);
        expect(ids(shuffled)).toEqual(ids(book));
      }),
      settings,
    );
  });

  it('never shrinks by a job that is done, but for that job itself', () => {
    fc.assert(
      fc.property(aBook, (book) => {
        const before = whatNow(book).ready.map(({ job }) => job.id);
        for (const id of before) {
          const jobs = book.jobs.map((job) =>
            job.id === id ? { ...job, doneOn: TODAY, doneByName: 'Ada' } : job,
          );
          const after = whatNow(bookWith(jobs, [...book.facts.parts.values()])).ready.map(
            ({ job }) => job.id,
          );
          expect(before.filter((one) => one !== id && !after.includes(one))).toEqual([]);
        }
      }),
      settings,
    );
  });

  it('is not made less by another job that is done already', () => {
    fc.assert(
      fc.property(aBook, (book) => {
        const before = whatNow(book).ready.map(({ job }) => job.id);
        const more = aJob({ id: 99, doneOn: TODAY, doneByName: 'Ada' });
        const jobs = [
          ...book.jobs.map((job) => ({ ...job, needs: [...job.needs, { kind: 'job' as const, jobId: 99 }] })),
          more,
        ];
        const after = whatNow(bookWith(jobs, [...book.facts.parts.values()])).ready.map(({ job }) => job.id);
        expect(after).toEqual(before);
      }),
      settings,
    );
  });

  it('puts a job that frees others before what waits for it is freed by it: counts grow towards the roots', () => {
    fc.assert(
      fc.property(aBook, (book) => {
        const frees = freesCount(openNetwork(book.jobs, []));
        for (const job of book.jobs) {
          if (!frees.has(job.id)) continue;
          for (const need of job.needs) {
            const other = need.kind === 'job' ? frees.get(need.jobId) : undefined;
            if (other !== undefined) expect(other).toBeGreaterThan(frees.get(job.id) ?? 0);
          }
        }
      }),
      settings,
    );
  });

  it('says that a part is short by as many as are missing', () => {
    fc.assert(
      fc.property(aBook, (book) => {
        for (const job of book.jobs) {
          for (const blocker of blockers(job, book.facts)) {
            if (blocker.kind === 'part') expect(blocker.short).toBeGreaterThan(0);
          }
        }
      }),
      settings,
    );
  });
});

describe('needs given one after the other', () => {
  it('never make a loop: whatever would close one is refused, by its names, and changes nothing', () => {
    const pairs = fc.array(fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 5 })), {
      maxLength: 12,
    });
    let refused = 0;
    fc.assert(
      fc.property(pairs, (wanted) => {
        const open = openRecord();
        for (const name of ['a', 'b', 'c', 'd', 'e']) writeJob(open, name);
        for (const [from, to] of wanted) {
          const job = open.record.jobs.find(from) ?? aJob();
          const before = open.record.jobs.ofBuild(open.buildId);
          const already = job.needs.some((need) => need.kind === 'job' && need.jobId === to);
          const wouldLoop = from === to || reaches(before, to, from);
          try {
            open.change(() =>
              addNeeds(open.record, job, [{ need: { kind: 'job', jobId: to }, name: `#${to}` }], STAGES),
            );
            expect(wouldLoop || already).toBe(false);
          } catch (error) {
            if (!(error instanceof UserError)) throw error;
            expect(wouldLoop || already).toBe(true);
            if (error.code === 'not-now') {
              refused += 1;
              expect(error.message).toMatch(/ → /);
            }
            expect(open.record.jobs.ofBuild(open.buildId)).toEqual(before);
          }
          const { needs } = wholeNetwork(open.record.jobs.ofBuild(open.buildId), STAGES);
          expect(someLoop(needs)).toBeNull();
          expect(inOrder(needs)).toHaveLength(needs.length);
        }
        open.db.close();
      }),
      { ...settings, numRuns: Math.min(settings.numRuns, 25) },
    );
    expect(refused).toBeGreaterThan(5);
  });
});

/** Whether one job waits for another, found the slow way. */
function reaches(jobs: readonly Job[], from: number, to: number, seen = new Set<number>()): boolean {
  if (from === to) return true;
  if (seen.has(from)) return false;
  seen.add(from);
  const job = jobs.find(({ id }) => id === from);
  return (job?.needs ?? []).some((need) => need.kind === 'job' && reaches(jobs, need.jobId, to, seen));
}

describe('a record of jobs', () => {
  it('is as it was after a job is done and that is undone, parts and all', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 0, max: 4 }), (quantity, here) => {
        const open = openRecord();
        const part = writePart(open, 'sump gasket', { singleUse: true });
        onShelf(open, part.id, here);
        const job = writeJob(open, 'fit sump', [{ kind: 'part', partId: part.id, quantity }]);
        const before = bookOf(open);
        const { changeId } = open.change(() => finishJob(open.record, job, { name: 'Ada', on: TODAY }));
        expect(bookOf(open).facts.parts.get(part.id)?.fitted).toBe(quantity);
        open.undo(changeId);
        expect(bookOf(open)).toEqual(before);
        expect(open.ledger.audit()).toEqual([]);
        open.db.close();
      }),
      { ...settings, numRuns: Math.min(settings.numRuns, 8) },
    );
  });
});
