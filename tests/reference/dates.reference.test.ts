import { describe, expect, it } from 'vitest';
import firstCorpus from '../../data/reference/phrases/dates.json' with { type: 'json' };
import secondCorpus from '../../data/reference/phrases/dates-more.json' with { type: 'json' };
import { workingDays } from '../../src/calendar/working-days.ts';
import { readDate } from '../../src/phrases/dates/dates.ts';
import type { DateContext, DateReading } from '../../src/phrases/dates/reading.ts';

/** Source: our own corpora; conventions and what the values rest on in data/reference/phrases/dates.md. */
type Expected = string | { date: string; time: string } | { options: readonly string[] } | null;

interface Entry {
  readonly id: string;
  readonly text: string;
  readonly now: string;
  readonly zone: string;
  readonly locale: string | null;
  readonly country: string | null;
  readonly direction: string;
  readonly verdict: string;
  readonly also?: readonly string[];
  readonly expect?: Expected;
}

function contextOf(entry: Entry): DateContext {
  const { direction } = entry;
  if (direction !== 'future' && direction !== 'past' && direction !== 'any')
    throw new Error(`${entry.id}: direction`);
  return {
    now: Temporal.PlainDateTime.from(entry.now),
    zone: entry.zone,
    locale: entry.locale,
    direction,
    workingDays: workingDays(entry.country),
  };
}

type Score = 'as meant' | 'safe miss' | 'misread in silence';

function score(entry: Entry, reading: DateReading): Score {
  const fair = [entry.verdict, ...(entry.also ?? [])].includes(reading.verdict);
  if (reading.verdict !== 'read') return fair ? 'as meant' : 'safe miss';
  return fair && isValue(entry.expect ?? null, reading) ? 'as meant' : 'misread in silence';
}

function isValue(wanted: Expected, reading: Extract<DateReading, { verdict: 'read' }>): boolean {
  if (wanted === null) return false;
  if (typeof wanted === 'string') {
    if (wanted.length === 10) return reading.day === wanted;
    if (/[+-]\d\d:\d\d$/.test(wanted))
      return reading.instantMs === Temporal.Instant.from(wanted).epochMilliseconds;
    return `${reading.day}T${reading.time}` === wanted;
  }
  if ('date' in wanted) return reading.day === wanted.date && reading.time === wanted.time;
  return isValue(wanted.options[0] ?? null, reading);
}

describe.each<{ name: string; entries: readonly Entry[]; size: number }>([
  { name: 'the first corpus', entries: firstCorpus, size: 250 },
  { name: 'the second corpus', entries: secondCorpus, size: 270 },
])('$name of dates people type', ({ entries, size }) => {
  const scored = entries.map((entry) => {
    const reading = readDate(entry.text, contextOf(entry));
    return { id: entry.id, text: entry.text.slice(0, 60), reading, score: score(entry, reading) };
  });

  it('is whole', () => {
    expect(new Set(entries.map(({ id }) => id)).size).toBe(size);
  });

  it('has no phrase that is misread in silence', () => {
    expect(scored.filter((row) => row.score === 'misread in silence')).toEqual([]);
  });

  it('is understood as meant for at least 97 in 100 phrases', () => {
    const misses = scored.filter((row) => row.score !== 'as meant');
    expect(misses.length, JSON.stringify(misses)).toBeLessThanOrEqual(size * 0.03);
  });
});
