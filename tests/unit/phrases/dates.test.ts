import { describe, expect, it } from 'vitest';
import { workingDays } from '../../../src/calendar/working-days.ts';
import { readDate } from '../../../src/phrases/dates/dates.ts';
import type { DateContext, DateReading } from '../../../src/phrases/dates/reading.ts';
import { isOneSlip } from '../../../src/phrases/dates/spelling.ts';

/** A Tuesday. */
const tuesday: DateContext = {
  now: Temporal.PlainDateTime.from('2026-11-24T09:15'),
  zone: 'Europe/London',
  locale: 'en-GB',
  direction: 'future',
  workingDays: workingDays('GB/ENG'),
};

function days(reading: DateReading): readonly string[] {
  return reading.verdict === 'ask' ? reading.options.map(({ day }) => day) : [];
}

describe('reading a date', () => {
  it('offers both Fridays when customs differ', () => {
    const reading = readDate('next Friday', tuesday);
    expect(reading.verdict).toBe('ask');
    expect(days(reading)).toEqual(['2026-11-27', '2026-12-04']);
  });

  it('offers, never takes, a day when words are left over', () => {
    const reading = readDate('see you Friday', tuesday);
    expect(reading).toEqual({
      verdict: 'ask',
      question: 'Only "friday" was understood. Is this day meant?',
      options: [{ day: '2026-11-27' }],
    });
  });

  it('carries a question through what is counted from it', () => {
    const night = { ...tuesday, now: Temporal.PlainDateTime.from('2026-11-27T02:20') };
    expect(days(readDate('tomorrow week', night))).toEqual(['2026-12-04', '2026-12-05']);
  });

  it('says that only weekends were skipped when no country is known', () => {
    const reading = readDate('in 3 working days', { ...tuesday, workingDays: workingDays(null) });
    expect(reading).toEqual({
      verdict: 'read',
      day: '2026-11-27',
      assumed: 'No country is set, so only weekends were skipped, not holidays.',
    });
  });

  it('says which of two equal times was taken when the clocks go back', () => {
    const eve = { ...tuesday, now: Temporal.PlainDateTime.from('2026-10-24T20:00') };
    expect(readDate('tomorrow at 1:30am', eve)).toMatchObject({
      verdict: 'read',
      time: '01:30',
      instantMs: Temporal.Instant.from('2026-10-25T00:30Z').epochMilliseconds,
      assumed: 'The clocks go back that night, so 01:30 comes twice; the first is taken.',
    });
  });

  it('moves a time that the clocks skip on by the gap', () => {
    const eve = { ...tuesday, now: Temporal.PlainDateTime.from('2027-03-27T20:00') };
    expect(readDate('tomorrow 01:15', eve)).toMatchObject({ verdict: 'read', time: '02:15' });
  });

  it.each(['2 hours ago', 'vor 2 Stunden', 'this morning at 8'])(
    'asks back a time that has gone: %s',
    (text) => {
      expect(readDate(text, tuesday).verdict).toBe('ask');
    },
  );

  it.each(['3 quarter past 4', '3 half hours', 'for 3 days', '17h', '1,5 weeks', 'the 4th Friday'])(
    'does not drop a word to make a day of "%s"',
    (text) => {
      expect(readDate(text, tuesday).verdict).not.toBe('read');
    },
  );

  it.each([
    'x'.repeat(4_000),
    'friday '.repeat(600),
    '<b>friday</b>',
    '🗓️',
    '',
    '   ',
    "'; DROP TABLE orders;--",
  ])('refuses text that is no date and says what to type: %.20s', (text) => {
    const reading = readDate(text, tuesday);
    expect(reading.verdict).toBe('refuse');
    expect(reading.verdict === 'refuse' ? reading.problem : '').toContain('Type a day such as');
  });

  it('names what is wrong with a day that no calendar has', () => {
    expect(readDate('31 Nov', tuesday)).toEqual({
      verdict: 'refuse',
      problem: 'November has no day 31. Type another day.',
    });
    expect(readDate('week 54', tuesday)).toEqual({
      verdict: 'refuse',
      problem: 'There is no week 54. Type a week from 1 to 53.',
    });
  });
});

describe('spelling', () => {
  it.each([
    ['wednsday', 'wednesday'],
    ['fridday', 'friday'],
    ['firday', 'friday'],
    ['fryday', 'friday'],
  ])('takes %s for one slip of %s', (typed, known) => {
    expect(isOneSlip(typed, known)).toBe(true);
  });

  it.each([
    ['text', 'next'],
    ['seek', 'week'],
    ['wensdy', 'wednesday'],
  ])('does not take %s for %s', (typed, known) => {
    expect(isOneSlip(typed, known)).toBe(false);
  });
});
