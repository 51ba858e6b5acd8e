import { describe, expect, it } from 'vitest';
import { jointsNamed } from '../../../src/records/jobs/single-use.ts';
import { debrisJobs, joints, startingJobs } from '../../../src/tables/jobs.ts';
import { startingStages } from '../../../src/tables/stages.ts';

describe('the starting set', () => {
  it('has jobs for every stage', () => {
    const stages = new Set(startingJobs.map(({ stage }) => stage));
    expect(startingStages.map(({ key }) => key).filter((key) => !stages.has(key))).toEqual([]);
  });

  it('gives every job a length, and none a longer one than two days', () => {
    for (const { key, minutes } of [...startingJobs, ...debrisJobs]) {
      expect(minutes.most, key).toBeLessThanOrEqual(16 * 60);
    }
  });

  it('takes spark and fuel away before the engine is cranked, and not back before fuel was looked at', () => {
    const of = (key: string) => startingJobs.find((job) => job.key === key);
    expect(of('prime')?.after).toContain('take-spark-fuel');
    expect(of('spark-back')?.afterStages).toContain('fuel-pressure');
  });

  it('calls used once in a job what is used once at its joint', () => {
    const once = new Set(joints.flatMap(({ renew }) => renew.map(({ part }) => part)));
    const named = [...startingJobs, ...debrisJobs].flatMap(({ parts }) => parts);
    for (const { name, singleUse } of named) if (once.has(name)) expect(singleUse, name).toBe(true);
  });
});

describe('what is to be done after a bearing failure', () => {
  /** The oil circuit's parts that hold debris (common practice, no source). */
  it.each([
    'cooler',
    'line',
    'tank',
    'filter housing',
    'relief valve',
    'turbo',
    'squirter',
    'galler',
    'sump',
    'breather',
    'catch tank',
    'sender',
    'pump',
    'pick-up',
    'thermostat',
    'crank',
    'bearing',
    'lifter',
    'supercharger',
  ])('looks at: %s', (word) => {
    expect(
      debrisJobs.some(({ name }) =>
        name.includes(word.replace('filter housing', 'filter and clean its housing')),
      ),
    ).toBe(true);
  });

  it('says of every part whether it may go back, and what is done with it', () => {
    for (const { key, goesBack, action } of debrisJobs)
      expect([goesBack, action], key).not.toContain(undefined);
  });

  it('comes before the engine is closed', () => {
    expect(debrisJobs.filter(({ before }) => before.length > 0).length).toBeGreaterThan(20);
  });
});

describe('joints by the words of a job', () => {
  it.each([
    ['refit the sump', ['sump gasket']],
    ['new sump plug', ['sump plug washer']],
    ['Oil Pan off', ['sump gasket']],
    ['oil change', ['sump plug washer', 'oil filter']],
    ['fit cylinder head', ['head gasket', 'head bolt set']],
    ['turbo feed line', ['turbo feed copper washer', 'turbo drain gasket']],
    ['fit fuel rails', ['injector seal set']],
    ['change turbo', ['turbo inlet gasket', 'turbo stud and nut set']],
    ['polish the wings', []],
    ['headlamp', []],
  ])('%s: %j', (words, parts) => {
    expect(jointsNamed(words).flatMap(({ renew }) => renew.map(({ part }) => part))).toEqual(parts);
  });
});
