import { describe, expect, it } from 'vitest';
import { workingDays } from '../../../src/calendar/working-days.ts';
import { instantOf } from '../../../src/core/time.ts';
import type { Order } from '../../../src/records/orders/order.ts';
import type { TeamSettings } from '../../../src/records/team/team.ts';
import { dueMorning } from '../../../src/reminders/morning.ts';
import { pauseAfter } from '../../../src/reminders/outbox.ts';
import { anArrival, anOrder } from '../../support/record.ts';

const LONDON: TeamSettings = { zone: 'Europe/London', country: 'GB/ENG', morning: '08:30' };
const days = workingDays(LONDON.country);
const late = anOrder({ promisedOn: '2026-11-20' });

const due = (
  at: string,
  orders: readonly Order[] = [late],
  lastMorning: string | null = null,
  team = LONDON,
) => {
  const [day = '', time = ''] = at.split('T');
  const build = { id: 7, channelId: '600', name: 'Coupe', lastMorning };
  return dueMorning(build, orders, team, days, instantOf(day, time, team.zone));
};

describe('the morning message', () => {
  it.each([
    ['at the morning time of a Monday', '2026-11-23T08:30', true],
    ['a minute before', '2026-11-23T08:29', false],
    ['in the small hours', '2026-11-23T00:05', false],
    ['in the afternoon, when the machine was off', '2026-11-23T16:00', true],
    ['just before the evening', '2026-11-23T19:59', true],
    ['in the evening', '2026-11-23T20:00', false],
    ['before midnight', '2026-11-23T23:59', false],
    ['on a Saturday', '2026-11-28T09:00', false],
    ['on a Sunday', '2026-11-29T09:00', false],
    // gov.uk/bank-holidays: Christmas Day is on Friday, Boxing Day's substitute on Monday 28 December 2026
    ['on Christmas Day', '2026-12-25T09:00', false],
    ['on the substitute for Boxing Day', '2026-12-28T09:00', false],
    ['on the day after', '2026-12-29T09:00', true],
    // the clocks go forward at 01:00 on 28 March 2027, a Sunday; the Monday is Easter Monday
    ['on the first working day after the clocks changed', '2027-03-30T08:30', true],
  ])('%s', (_name, at, expected) => expect(due(at) !== null).toBe(expected));

  it.each([
    ['nothing is on order', [], false],
    ['all is promised for later', [anOrder({ promisedOn: '2026-11-24' })], false],
    ['something is due today', [anOrder({ promisedOn: '2026-11-23' })], true],
    [
      'something must be sorted out',
      [anOrder({ promisedOn: '2026-12-24', arrivals: [anArrival({ condition: 'wrong' })] })],
      true,
    ],
    ['all has arrived', [anOrder({ arrivals: [anArrival()] })], false],
    ['what is late was cancelled', [anOrder({ cancelled: true })], false],
  ])('when %s', (_name, orders, expected) => expect(due('2026-11-23T08:30', orders) !== null).toBe(expected));

  it('is not decided twice on a day, nor again when the clock goes back', () => {
    expect(due('2026-11-23T09:00', [late], '2026-11-23')).toBeNull();
    expect(due('2026-11-23T09:00', [late], '2026-11-24')).toBeNull();
    expect(due('2026-11-24T09:00', [late], '2026-11-23')).not.toBeNull();
  });

  it('follows the clock on the wall of the team', () => {
    const sydney = { ...LONDON, zone: 'Australia/Sydney' };
    expect(due('2026-11-23T08:30', [late], null, sydney)).not.toBeNull();
    const build = { id: 7, channelId: '600', name: 'Coupe', lastMorning: null };
    const londonMorning = instantOf('2026-11-23', '08:30', 'Europe/London');
    expect(dueMorning(build, [late], sydney, days, londonMorning)).not.toBeNull(); // 19:30 there
    expect(dueMorning(build, [late], sydney, days, londonMorning + 1_800_000)).toBeNull(); // 20:00 there
  });

  it('names what needs a hand, the longest late first, under a key of its build and day', () => {
    const orders = [
      anOrder({ id: 1, promisedOn: '2026-11-23' }),
      anOrder({ id: 2, promisedOn: '2026-12-23' }),
      anOrder({ id: 3, promisedOn: '2026-11-19' }),
    ];
    expect(due('2026-11-23T08:30', orders)).toEqual({
      key: 'morning:7:2026-11-23',
      channelId: '600',
      notice: { kind: 'morning', buildId: 7, day: '2026-11-23', orderIds: [3, 1] },
    });
  });
});

describe('the pause before the next try', () => {
  it.each([
    [1, 2_000],
    [2, 10_000],
    [3, 60_000],
    [4, 300_000],
    [5, 3_600_000],
    [50, 3_600_000],
  ])('after %i tries is %i ms', (tries, ms) => expect(pauseAfter(tries)).toBe(ms));

  it('never grows shorter', () => {
    const pauses = Array.from({ length: 20 }, (_, index) => pauseAfter(index + 1));
    expect(pauses.toSorted((a, b) => a - b)).toEqual(pauses);
  });
});
