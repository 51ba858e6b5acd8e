import { describe, expect, it } from 'vitest';
import { clockAt } from '../../../src/core/clock.ts';
import { addDays, dayAt, instantOf, isZone, sayDay, wallTime } from '../../../src/core/time.ts';

const utc = (iso: string): number => Date.parse(`${iso}Z`);

/**
 * Which instant a wall clock means. Rules of the change-over: 2000/84/EC (last Sundays of March and October, 01:00 UTC);
 * 15 U.S.C. 260a (second Sunday of March, first of November, 02:00); Standard Time Act 1971 (NSW) and Lord Howe's half
 * hour. A skipped hour moves on by the gap and a repeated one is the first: RFC 5545, 3.3.5.
 */
describe('a wall time in a zone', () => {
  it.each([
    ['2026-11-23', '08:30', 'Europe/London', '2026-11-23T08:30'],
    ['2026-07-01', '08:30', 'Europe/London', '2026-07-01T07:30'],
    ['2026-11-23', '08:30', 'Asia/Kolkata', '2026-11-23T03:00'],
    ['2026-03-29', '00:59', 'Europe/London', '2026-03-29T00:59'],
    ['2026-03-29', '01:30', 'Europe/London', '2026-03-29T01:30'],
    ['2026-03-29', '02:30', 'Europe/Berlin', '2026-03-29T01:30'],
    ['2026-03-08', '02:30', 'America/New_York', '2026-03-08T07:30'],
    ['2026-10-04', '02:15', 'Australia/Lord_Howe', '2026-10-03T15:45'],
    ['2026-10-25', '01:30', 'Europe/London', '2026-10-25T00:30'],
    ['2026-10-25', '02:30', 'Europe/Berlin', '2026-10-25T00:30'],
    ['2026-11-01', '01:30', 'America/New_York', '2026-11-01T05:30'],
  ])('%s %s in %s is %s UTC', (day, time, zone, expected) => {
    expect(new Date(instantOf(day, time, zone)).toISOString().slice(0, 16)).toBe(expected);
  });

  it('of the skipped hour is shown an hour on, that of the repeated one as it was', () => {
    expect(wallTime(instantOf('2026-03-29', '01:30', 'Europe/London'), 'Europe/London').toString()).toBe(
      '2026-03-29T02:30:00',
    );
    expect(wallTime(instantOf('2026-10-25', '01:30', 'Europe/London'), 'Europe/London').toString()).toBe(
      '2026-10-25T01:30:00',
    );
    expect(wallTime(utc('2026-10-25T01:30'), 'Europe/London').toString()).toBe('2026-10-25T01:30:00');
  });

  it.each([['25:00'], ['8:3x'], ['']])('refuses the time %j', (time) => {
    expect(() => instantOf('2026-11-23', time, 'Europe/London')).toThrow(RangeError);
  });

  it('refuses a day there is not', () => {
    expect(() => instantOf('2026-02-30', '08:00', 'Europe/London')).toThrow(RangeError);
  });
});

describe('a calendar day', () => {
  it.each([
    ['2026-11-23T23:59', 'Europe/London', '2026-11-23'],
    ['2026-11-23T23:59', 'Europe/Berlin', '2026-11-24'],
    ['2026-11-23T10:30', 'Pacific/Kiritimati', '2026-11-24'],
    ['2026-11-23T10:30', 'Pacific/Niue', '2026-11-22'],
    ['2026-11-23T10:30', 'Pacific/Chatham', '2026-11-24'],
  ])('at %s UTC in %s is %s', (at, zone, day) => expect(dayAt(utc(at), zone)).toBe(day));

  it.each([
    ['2026-12-31', 1, '2027-01-01'],
    ['2028-02-28', 1, '2028-02-29'],
    ['2026-03-01', -1, '2026-02-28'],
    ['2026-03-28', 2, '2026-03-30'],
  ])('%s and %i days is %s', (day, days, expected) => expect(addDays(day, days)).toBe(expected));

  it.each([
    ['2026-12-04', 'Fri 4 Dec'],
    ['2026-11-23', 'Mon 23 Nov'],
    ['2027-01-02', 'Sat 2 Jan 2027'],
    ['2025-12-31', 'Wed 31 Dec 2025'],
    ['2028-02-29', 'Tue 29 Feb 2028'],
  ])('%s is said “%s” in 2026', (day, said) => expect(sayDay(day, '2026-11-23')).toBe(said));

  it('is said as Intl says it, whatever the day', () => {
    const format = new Intl.DateTimeFormat('en-GB', {
      weekday: 'short',
      day: 'numeric',
      month: 'short',
      timeZone: 'UTC',
    });
    for (let day = '2026-01-01'; day < '2027-01-01'; day = addDays(day, 1)) {
      const said = format.format(new Date(day)).replace(',', '').replace('Sept', 'Sep');
      expect(sayDay(day, '2026-06-01')).toBe(said);
    }
  });
});

describe('a time zone', () => {
  it.each([
    ['Europe/London', true],
    ['europe/london', true],
    ['America/Argentina/Buenos_Aires', true],
    ['Etc/UTC', true],
    ['UTC', true],
    ['Europe/Londn', false],
    ['London', false],
    ['', false],
    ['+25:00', false],
    ['2026-11-23', false],
    ['Europe/London; DROP TABLE', false],
  ])('%j: %s', (zone, known) => expect(isZone(zone)).toBe(known));

  it('is known whenever it is offered', () => {
    const offered = Intl.supportedValuesOf('timeZone');
    expect(offered.length).toBeGreaterThan(300);
    expect(offered.filter((zone) => !isZone(zone))).toEqual([]);
  });
});

describe('a clock that is set', () => {
  it('stands still until it is moved, and moves backwards too', () => {
    const clock = clockAt(1_000);
    expect(clock.nowMs()).toBe(1_000);
    clock.set(500);
    expect(clock.nowMs()).toBe(500);
  });
});
