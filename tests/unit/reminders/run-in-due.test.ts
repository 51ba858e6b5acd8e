import { describe, expect, it } from 'vitest';
import { workingDays } from '../../../src/calendar/working-days.ts';
import { instantOf } from '../../../src/core/time.ts';
import { chosenPlan } from '../../../src/records/running-in/choose-plan.ts';
import { beginPlan, putOff } from '../../../src/records/running-in/moves.ts';
import { progressOf } from '../../../src/records/running-in/progress.ts';
import { dueAlerts, fallingSince } from '../../../src/reminders/alert.ts';
import { remarksDue } from '../../../src/reminders/remarks.ts';
import { dueRunIn } from '../../../src/reminders/run-in-due.ts';
import { type OpenRecord, openRecord } from '../../support/record.ts';

const LONDON = 'Europe/London';
const SETTINGS = { zone: LONDON, country: 'GB/ENG', morning: '08:30' } as const;
const calendar = workingDays('GB/ENG');
const ms = (wall: string): number => {
  const [day = '', time = ''] = wall.split('T');
  return instantOf(day, time, LONDON);
};

/** A plan by distance from 0 km on Monday 23 November. */
function begun(): OpenRecord {
  const open = openRecord();
  open.change(() => {
    const facts = { buildId: open.buildId, name: 'road', origin: 'common practice', measure: 'km' } as const;
    beginPlan(
      open.record,
      { ...facts, startedOn: '2026-11-23', startKm: 0, startH: 0, limitRpm: null, boostKPa: null },
      chosenPlan('road by distance'),
    );
    return { value: null, said: 'begun' };
  });
  return open;
}

function read(
  { record, buildId, change }: OpenRecord,
  kind: string,
  value: number,
  wall: string,
  states: readonly string[] = [],
): void {
  const unit = { distance: 'km', 'engine hours': 'h' }[kind] ?? 'kPa';
  change(() => {
    const value_ = record.readings.log({
      buildId,
      kind,
      value,
      unit,
      shownIn: unit,
      typed: '',
      conditions: { states },
      takenAtMs: ms(wall),
      byName: 'Ada',
      note: null,
      link: null,
      firstValue: null,
      setId: null,
    });
    return { value: value_, said: 'read' };
  });
}

const build = ({ record, buildId }: OpenRecord) => {
  const found = record.builds.find(buildId);
  if (found === undefined) throw new Error('no build');
  return found;
};
const keysAt = (open: OpenRecord, wall: string): readonly string[] =>
  dueRunIn(open.record, build(open), SETTINGS, calendar, ms(wall)).map(({ key }) => key);

describe('reminders of running in', () => {
  it('have the same keys however often and whenever on the day they are worked out', () => {
    const open = begun();
    read(open, 'distance', 68, '2026-11-24T09:00');
    const keys = keysAt(open, '2026-11-24T10:00');
    expect(keys).toEqual(['run-in:1:due:0', 'run-in:2:ahead:0']);
    expect(keysAt(open, '2026-11-24T10:00')).toEqual(keys);
    expect(keysAt(open, '2026-11-24T19:59')).toEqual(keys);
  });

  it.each(['2026-11-24T08:29', '2026-11-24T20:00', '2026-11-24T23:30'])('stay silent at %s', (wall) => {
    const open = begun();
    read(open, 'distance', 68, '2026-11-24T08:00');
    expect(keysAt(open, wall)).toEqual([]);
  });

  it('leave what was due the day before to the morning message, where there is one', () => {
    const open = begun();
    read(open, 'distance', 30, '2026-11-27T22:00');
    expect(keysAt(open, '2026-11-27T22:30')).toEqual([]);
    // a Saturday has no morning message
    expect(keysAt(open, '2026-11-28T10:00')).toEqual(['run-in:1:due:0']);
    expect(keysAt(open, '2026-11-30T10:00')).toEqual([]);
    const remarks = remarksDue(open.record, build(open), '2026-11-30');
    expect(remarks).toEqual([{ kind: 'run-in', id: 1 }]);
    expect(remarksDue(open.record, build(open), '2026-11-27')).toEqual([]);
  });

  it('come again under another key after a step was put off, and not ahead', () => {
    const open = begun();
    read(open, 'distance', 25, '2026-11-24T09:00');
    const plan = open.record.runIn.ofBuild(open.buildId);
    const step = plan?.steps[0];
    if (plan === undefined || step === undefined) throw new Error('no plan');
    const progress = progressOf(open.record, plan, ms('2026-11-24T10:00'), LONDON);
    const due = { km: 40, h: null, days: null };
    open.change(() =>
      putOff(open.record, plan, step, { due, reason: 'rain', onDay: '2026-11-24', byName: 'Ada' }, progress),
    );
    expect(keysAt(open, '2026-11-24T11:00')).toEqual([]);
    read(open, 'distance', 41, '2026-11-25T09:00');
    expect(keysAt(open, '2026-11-25T10:00')).toContain('run-in:1:due:1');
  });

  it('come by hours alone where no distance is read', () => {
    const open = begun();
    read(open, 'engine hours', 0.4, '2026-11-24T09:00');
    expect(keysAt(open, '2026-11-24T10:00')).toContain('run-in:1:due:0');
  });
});

describe('alerts', () => {
  const alertKeys = (open: OpenRecord, wall: string): readonly string[] =>
    dueAlerts(open.record, build(open), ms(wall)).map(({ key }) => key);

  it('are keyed by the first reading of a spell, and are no news after a day', () => {
    const open = openRecord();
    read(open, 'oil pressure', 50, '2026-11-24T09:00', ['hot', 'idle']);
    read(open, 'oil pressure', 45, '2026-11-24T10:00', ['hot', 'idle']);
    expect(alertKeys(open, '2026-11-24T10:01')).toEqual(['alert:1:1']);
    expect(alertKeys(open, '2026-11-24T09:30')).toEqual(['alert:1:1']);
    expect(alertKeys(open, '2026-11-25T10:30')).toEqual([]);
  });

  it('end with a good reading, and begin anew', () => {
    const open = openRecord();
    read(open, 'oil pressure', 50, '2026-11-24T09:00', ['hot', 'idle']);
    read(open, 'oil pressure', 120, '2026-11-24T10:00', ['hot', 'idle']);
    expect(alertKeys(open, '2026-11-24T10:01')).toEqual([]);
    read(open, 'oil pressure', 50, '2026-11-24T11:00', ['hot', 'idle']);
    expect(alertKeys(open, '2026-11-24T11:01')).toEqual(['alert:1:3']);
  });

  it('know from which reading on a fall can be spoken of', () => {
    const like = [430, 425, 415, 405, 395, 385].map((value, at) => ({
      id: at + 1,
      value,
      takenAtMs: at * 86_400_000,
      conditions: { states: [] },
    }));
    expect(fallingSince(like)?.id).toBe(5);
    expect(fallingSince(like.slice(0, 4))).toBeUndefined();
    expect(
      fallingSince(like.toReversed().map((each, at) => ({ ...each, takenAtMs: at * 86_400_000 }))),
    ).toBeUndefined();
  });
});
