import { describe, expect, it } from 'vitest';
import { neededOn } from '../../../../src/records/jobs/needed-on.ts';
import { writeJob, writePart } from '../../../support/jobs.ts';
import { openRecord, TODAY } from '../../../support/record.ts';

const exactly = (minutes: number) => ({ least: minutes, likely: minutes, most: minutes });

describe('the day a part is needed on', () => {
  it('is the day its first job begins once everything else is done', () => {
    const open = openRecord();
    open.change(() => {
      open.record.weeks.set(open.buildId, { minutes: [100, 100, 100, 100, 100, 100, 100], people: 1 });
      return { value: null, said: 'evenings' };
    });
    const [early, late] = [writePart(open, 'gasket'), writePart(open, 'plug')];
    const first = writeJob(open, 'first', [], { stage: 'assembly', minutes: exactly(250) });
    const needs = [
      { kind: 'job', jobId: first.id },
      { kind: 'part', partId: early.id, quantity: 1 },
    ] as const;
    const second = writeJob(open, 'second', needs, { stage: 'assembly', minutes: exactly(100) });
    writeJob(
      open,
      'third',
      [
        { kind: 'job', jobId: second.id },
        { kind: 'part', partId: early.id, quantity: 1 },
        { kind: 'part', partId: late.id, quantity: 1 },
      ],
      { stage: 'fluids', minutes: exactly(60) },
    );
    // from Monday 23 November: 250 minutes end in the middle of Wednesday, where the second begins, and Thursday the third
    expect(neededOn(open.record, open.buildId, TODAY)).toEqual(
      new Map([
        [early.id, '2026-11-25'],
        [late.id, '2026-11-26'],
      ]),
    );
  });

  it('is not said where nothing is planned, or where things wait for each other', () => {
    const open = openRecord();
    expect(neededOn(open.record, open.buildId, TODAY)).toEqual(new Map());
    const part = writePart(open, 'gasket');
    const job = writeJob(open, 'first', [{ kind: 'part', partId: part.id, quantity: 1 }], {
      stage: 'assembly',
    });
    expect([...neededOn(open.record, open.buildId, TODAY).keys()]).toEqual([part.id]);
    open.change(() => {
      open.record.jobs.need(job.id, { kind: 'stage', stage: 'assembly' });
      return { value: null, said: 'a loop, past every rule' };
    });
    expect(neededOn(open.record, open.buildId, TODAY)).toEqual(new Map());
  });
});
