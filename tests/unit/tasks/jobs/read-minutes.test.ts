import { describe, expect, it } from 'vitest';
import { UserError } from '../../../../src/core/user-error.ts';
import { readEvenings, sayEvenings } from '../../../../src/tasks/jobs/read-evenings.ts';
import { readMinutes, readTimeAtHand } from '../../../../src/tasks/jobs/read-minutes.ts';

/** The refusal's words. @throws when it was read. */
function refusal(read: () => unknown): string {
  try {
    read();
  } catch (error) {
    if (error instanceof UserError) return error.message;
    throw error;
  }
  throw new Error('it was read');
}

describe('how long a job takes', () => {
  it.each([
    ['1-2 h, likely 90 min', [60, 90, 120]],
    ['1 to 2 hours, likely 1.5 h', [60, 90, 120]],
    ['1–2 h', [60, 90, 120]],
    ['30-60 min', [30, 45, 60]],
    ['30 - 90', [30, 60, 90]],
    ['45 min to 2 h, likely 1 h', [45, 60, 120]],
    ['45min-2h likely 1 h 15', [45, 75, 120]],
    ['1:00-2:30, likely 1:45', [60, 105, 150]],
    ['0,5-1 h', [30, 45, 60]],
  ] as const)('reads %s', (typed, [least, likely, most]) => {
    expect(readMinutes(typed, 'minutes').minutes).toEqual({ least, likely, most });
  });

  it.each([
    ['90 min', 90],
    ['90', 90],
    ['1.5 h', 90],
    ['1,5h', 90],
    ['1 h 30', 90],
    ['1h30min', 90],
    ['1:30', 90],
    ['half an hour', 30],
    ['an hour', 60],
    ['about 2 hours', 120],
    ['~45', 45],
  ] as const)('takes one figure, %s, as likely and says so', (typed, likely) => {
    const { minutes, readAs } = readMinutes(typed, 'minutes');
    expect(minutes).toEqual({ least: likely * 0.75, likely, most: likely * 2 });
    expect(readAs).toContain('taken as likely');
  });

  it.each([
    ['soon', 'is no time'],
    ['', 'is no time'],
    ['-5 min', 'is no time'],
    ['2 h, likely 1 h', 'is no time'],
    ['1-2 h, likely tomorrow', 'is no time'],
    ['2-1 h', 'not in order'],
    ['1-2 h, likely 3 h', 'not in order'],
    ['0 min', 'not in order'],
    ['999 h', 'longer than'],
  ])('refuses %j: %s', (typed, said) => {
    const message = refusal(() => readMinutes(typed, 'minutes'));
    expect(message).toContain(said);
    expect(message).toContain('Nothing was changed');
  });

  it('reads a time at hand, and refuses none at all', () => {
    expect(readTimeAtHand('2 h', 'minutes')).toBe(120);
    expect(refusal(() => readTimeAtHand('0', 'minutes'))).toContain('is no time');
  });
});

describe('when a crew works', () => {
  it.each([
    ['Tue Thu 2.5 h, Sat 6 h', [0, 150, 0, 150, 0, 360, 0]],
    ['Tue, Thu 2.5 h; Sat 10-16', [0, 150, 0, 150, 0, 360, 0]],
    ['weekdays 19:00-21:30', [150, 150, 150, 150, 150, 0, 0]],
    ['Mon-Fri 2 h, weekend 5 h', [120, 120, 120, 120, 120, 300, 300]],
    ['Fri to Sun 3h', [0, 0, 0, 0, 180, 180, 180]],
    ['every evening 90 min', [90, 90, 90, 90, 90, 90, 90]],
    ['Tuesdays and Saturdays 2 h', [0, 120, 0, 0, 0, 120, 0]],
    ['every day 2 h, Wednesday off', [120, 120, 0, 120, 120, 120, 120]],
    ['monday: 1 h 30', [90, 0, 0, 0, 0, 0, 0]],
  ])('reads %s', (typed, minutes) => {
    expect(readEvenings(typed, 'hours')).toEqual(minutes);
  });

  it.each([
    ['whenever', 'no day with a time'],
    ['Tue', 'no day with a time'],
    ['2 h', 'no day with a time'],
    ['Tux 2 h', 'no day with a time'],
    ['Tue 21:00-19:00', 'no day with a time'],
    ['Tue 30 h', 'no day with a time'],
    ['Tue none', 'somebody has to work'],
  ])('refuses %j: %s', (typed, said) => {
    const message = refusal(() => readEvenings(typed, 'hours'));
    expect(message).toContain(said);
    expect(message).toContain('Nothing was changed');
  });

  it('says them as they would be typed', () => {
    for (const minutes of [
      [0, 150, 0, 150, 0, 360, 0],
      [45, 0, 0, 0, 0, 0, 100],
    ])
      expect(readEvenings(sayEvenings(minutes), 'hours')).toEqual(minutes);
  });
});
