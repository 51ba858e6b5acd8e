import { describe, expect, it } from 'vitest';
import { arrivingOf, NOT_ORDERED, planOf } from '../../../../src/records/jobs/plan.ts';
import { USUAL_WEEK } from '../../../../src/records/jobs/week.ts';
import { bookOf, onShelf, writeJob, writePart } from '../../../support/jobs.ts';
import { type OpenRecord, openRecord, TODAY } from '../../../support/record.ts';

function planFor(open: OpenRecord, stage: string) {
  const book = bookOf(open);
  const found = book.stages.find(({ key }) => key === stage);
  if (!found) throw new Error(`no stage ${stage}`);
  return planOf({ book, stage: found, crew: USUAL_WEEK, away: [], today: TODAY, worksToday: true });
}

const needsPart = (partId: number, quantity = 1) => ({ kind: 'part' as const, partId, quantity });

describe('a plan for a stage', () => {
  it('holds the open jobs of the stage, of those before it and what they wait for, and no others', () => {
    const open = openRecord();
    const helper = writeJob(open, 'of no stage');
    writeJob(open, 'assembly', [{ kind: 'job', jobId: helper.id }], { stage: 'assembly' });
    writeJob(open, 'fluids', [], { stage: 'fluids' });
    writeJob(open, 'later', [], { stage: 'warm-up' });
    writeJob(open, 'nobody needs it');
    expect(planFor(open, 'fluids').jobs.map(({ name }) => name)).toEqual([
      'of no stage',
      'assembly',
      'fluids',
    ]);
    expect(planFor(open, 'assembly').jobs.map(({ name }) => name)).toEqual(['of no stage', 'assembly']);
  });

  it('waits for what is on order, and besides for what nobody has ordered', () => {
    const open = openRecord();
    const order = open.place({ what: 'washer', quantity: 2, due: '2026-12-04' });
    const partId = order.partId ?? 0;
    writeJob(open, 'all of them', [needsPart(partId, 3)], { stage: 'assembly' });
    const { awaited, plan } = planFor(open, 'assembly');
    expect(awaited.map(({ kind, orderId }) => [kind, orderId])).toEqual([
      ['order', order.id],
      ['not ordered', null],
    ]);
    expect(plan.arrivals[0]).toMatchObject({ least: 11, likely: 11 });
    expect(plan.arrivals[1]).toEqual(NOT_ORDERED);
    expect(plan.work[0]?.arrivals).toEqual([0, 1]);
  });

  it('gives out what is used once in turn, and shares what stays in the car', () => {
    const open = openRecord();
    const gasket = writePart(open, 'gasket', { singleUse: true });
    const pump = writePart(open, 'pump');
    for (const { id } of [gasket, pump]) onShelf(open, id, 1);
    for (const name of ['one', 'two']) {
      writeJob(open, name, [needsPart(gasket.id), needsPart(pump.id)], { stage: 'assembly' });
    }
    const { awaited, plan } = planFor(open, 'assembly');
    expect(awaited.map(({ name }) => name)).toEqual(['gasket']);
    expect(plan.work.map(({ arrivals }) => arrivals.length)).toEqual([0, 1, 0]);
  });

  it('takes nobody for more than there are', () => {
    const open = openRecord();
    writeJob(open, 'six to lift', [], { stage: 'assembly', people: 6 });
    expect(planFor(open, 'assembly').plan.work[0]?.people).toBe(USUAL_WEEK.people);
  });

  it('cannot be made for a crew that never works', () => {
    const open = openRecord();
    writeJob(open, 'one', [], { stage: 'assembly' });
    const book = bookOf(open);
    const [stage] = book.stages;
    const crew = { minutes: [0, 0, 0, 0, 0, 0, 0], people: 2 };
    if (!stage) throw new Error('no stage');
    expect(() => planOf({ book, stage, crew, away: [], today: TODAY, worksToday: true })).toThrow(
      '/when evenings',
    );
  });
});

describe('the days of an order', () => {
  it.each([
    ['2026-12-01', '2026-12-03', '2026-12-10', { least: 8, likely: 10, late: 17 }],
    ['2026-11-20', '2026-11-25', '2026-12-02', { least: 0, likely: 2, late: 9 }],
    ['2026-11-20', '2026-11-20', '2026-11-20', { least: 0, likely: 0, late: 0 }],
    ['2026-12-09', '2026-12-03', '2026-12-01', { least: 10, likely: 10, late: 10 }],
  ])('promised %s, expected %s, at the latest %s', (promisedOn, expectedOn, latestOn, days) => {
    expect(arrivingOf({ promisedOn, expectedOn, latestOn }, TODAY)).toEqual(days);
  });
});
