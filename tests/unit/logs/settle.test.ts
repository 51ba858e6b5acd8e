import { describe, expect, it } from 'vitest';
import { type Channel, DriveRecorder } from '../../../src/calc/fuelling/drive.ts';
import { UNSETTLED } from '../../../src/logs/readers.ts';
import { settle } from '../../../src/logs/settle.ts';

function driveWith(channel: Channel, values: readonly number[]) {
  const recorder = new DriveRecorder();
  const columns = {
    timeS: Float64Array.from(values, (_, row) => row / 10),
    [channel]: Float64Array.from(values),
  };
  recorder.add({ count: values.length, columns });
  const drive = recorder.finish();
  return {
    notes: settle(drive),
    values: (at: 'throttleRatio' | 'coolantC' | 'sensorFault') => [...(drive.at[at] ?? [])],
  };
}

describe('what only the whole log can tell', () => {
  it('a throttle that ever reads above 1.5 is counted in per cent', () => {
    expect(driveWith('throttleRatio', [0.8, 1.2, 50]).values('throttleRatio')[2]).toBeCloseTo(0.5, 6);
    expect(driveWith('throttleRatio', [0.1, 0.5, 1]).values('throttleRatio')[2]).toBeCloseTo(1, 6);
  });

  it('a coolant hotter than any is counted in °F, and that is said', () => {
    const { notes, values } = driveWith('coolantC', [100, 190, 195, 194]);
    expect(values('coolantC')[1]).toBeCloseTo(87.8, 1);
    expect(notes.join()).toContain('°F');
    expect(driveWith('coolantC', [20, 88, 90, 92]).notes).toEqual([]);
  });

  it('a sensor’s status by number is well when it is as most of the time', () => {
    const status = [0, 0, 3, 3, 3, 3, 7].map((each) => UNSETTLED + each);
    const { notes, values } = driveWith('sensorFault', status);
    expect(values('sensorFault')).toEqual([1, 1, 0, 0, 0, 0, 1]);
    expect(notes.join()).toContain('status 3');
  });

  it('a status that was plain from the start stays as it was', () => {
    const { notes, values } = driveWith('sensorFault', [0, 1, 0]);
    expect(values('sensorFault')).toEqual([0, 1, 0]);
    expect(notes).toEqual([]);
  });
});
