import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { isCountry } from '../../../src/calendar/holidays.ts';
import { workingDays } from '../../../src/calendar/working-days.ts';
import { UserError } from '../../../src/core/user-error.ts';

describe('working days', () => {
  it('counts the order day as day 0', () => {
    const days = workingDays('GB/ENG');
    expect(days.add('2026-11-27', 1)).toBe('2026-11-30');
    expect(days.add('2026-11-27', 0)).toBe('2026-11-27');
    expect(days.add('2026-11-30', -1)).toBe('2026-11-27');
  });

  it('skips weekends only when no country is known, and says so', () => {
    const days = workingDays(null);
    expect(days.knowsHolidays).toBe(false);
    expect(days.add('2026-12-24', 1)).toBe('2026-12-25');
    expect(days.holidayName('2026-12-25')).toBeUndefined();
  });

  it('keeps the holidays of a state apart from those of its country', () => {
    expect(workingDays('DE/BY').holidayName('2026-01-06')).toBe('Heilige Drei Könige');
    expect(workingDays('DE').isWorkingDay('2026-01-06')).toBe(true);
  });

  it("leaves out a supplier's closures, both ends", () => {
    const days = workingDays('GB/ENG', [{ from: '2026-12-21', to: '2027-01-03', reason: 'Winter shutdown' }]);
    expect(days.holidayName('2026-12-21')).toBe('Winter shutdown');
    expect(days.add('2026-12-18', 1)).toBe('2027-01-04');
    expect(days.between('2026-12-18', '2027-01-04')).toBe(1);
  });

  it('counts back what it counted forth', () => {
    const days = workingDays('US');
    for (let n = -30; n <= 30; n++) expect(days.between('2026-11-24', days.add('2026-11-24', n))).toBe(n);
  });

  it('keeps a substitute that falls into the year before', () => {
    expect(workingDays('US').isWorkingDay('2027-12-31')).toBe(false);
  });

  it('refuses to walk the calendar for ever', () => {
    const shut = workingDays(null, [{ from: '2026-01-01', to: '2099-12-31', reason: 'Gone' }]);
    expect(() => shut.add('2026-11-24', 1)).toThrow(UserError);
    expect(() => shut.add('2026-11-24', 1)).toThrow(
      '1 working days from 2026-11-24 is too far off. Type a date instead.',
    );
  });

  it('refuses a country without a list and says what to type', () => {
    expect(() => workingDays('ZZ').isWorkingDay('2026-11-24')).toThrow(
      'There is no holiday list for "ZZ". Type a country, and its part where it has one: GB/ENG, US, DE/BY.',
    );
    expect(['GB/ENG', 'US', 'DE/BY'].every(isCountry)).toBe(true);
    expect(['', 'ZZ', 'GB/ZZ', 'toString', 'GB/ENG/X/Y'].some(isCountry)).toBe(false);
  });

  it.each(['UTC', 'Pacific/Kiritimati', 'America/Los_Angeles'])(
    'finds the same days when the process runs in %s',
    (zone) => {
      const code = `
        import { publicHolidays } from '${new URL('../../../src/calendar/holidays.ts', import.meta.url).href}';
        const lists = ['GB/ENG', 'US', 'DE'].map((code) => [...publicHolidays(code, 2027).keys()].join());
        process.stdout.write(lists.join(';'));`;
      const said = execFileSync(process.execPath, ['--input-type=module', '--eval', code], {
        env: { ...process.env, TZ: zone, NODE_OPTIONS: '--disable-warning=ExperimentalWarning' },
        encoding: 'utf8',
      });
      const [england, states, germany] = said.split(';');
      expect(england).toContain('2027-12-25,2027-12-26');
      expect(england).toContain('2027-12-28');
      expect(states).toContain('2027-12-31');
      expect(germany?.split(',')).toHaveLength(9);
    },
  );
});
