import { describe, expect, it } from 'vitest';
import raw from '../../../data/reference/phrases/readings.json' with { type: 'json' };
import { readLimit } from '../../../src/phrases/readings/read-limit.ts';
import { readLine } from '../../../src/phrases/readings/read-line.ts';
import { linePhrasesOf, scoreLine, testContext } from '../../support/score-readings.ts';

const phrases = linePhrasesOf(raw);
const read = (text: string) => readLine(text, testContext);

describe('the collection of typed readings', () => {
  it('is large, and of every verdict', () => {
    expect(phrases.length).toBeGreaterThanOrEqual(150);
    expect(new Set(phrases.map(({ verdict }) => verdict)).size).toBe(3);
  });

  it('is read as meant in 98 of 100, and never wrong in silence', () => {
    const scored = phrases.map((phrase) => ({ text: phrase.text, ...scoreLine(phrase) }));
    expect(scored.filter(({ score }) => score === 'misread')).toEqual([]);
    expect(scored.filter(({ score }) => score === 'as meant').length / scored.length).toBeGreaterThanOrEqual(
      0.98,
    );
  });

  it('answers every question with lines that mean one thing, or ask something else', () => {
    const asked = phrases.flatMap(({ text }) => {
      const found = read(text);
      return found.verdict === 'ask'
        ? found.options.map(({ typed }) => ({ text, typed, again: read(typed) }))
        : [];
    });
    expect(asked.length).toBeGreaterThan(40);
    expect(asked.filter(({ again }) => again.verdict === 'refuse')).toEqual([]);
    // an answer that asks the same again would never come to an end
    const stuck = asked.filter(({ text, again }) => {
      const before = read(text);
      return again.verdict === 'ask' && before.verdict === 'ask' && again.question === before.question;
    });
    expect(stuck).toEqual([]);
  });
});

describe('a typed limit', () => {
  it.each([
    ['at least 3 bar at 2000 rpm hot', 'oil pressure', 300, null, { speedRpm: 2000, states: ['hot'] }],
    ['max 105 C', 'coolant temperature', null, 105, { states: [] }],
    ['13.8 to 14.7 V charging', 'battery voltage', 13.8, 14.7, { states: ['charging'] }],
    ['between 0.04 and 0.06 mm', 'bearing clearance', 0.04, 0.06, { states: [] }],
    ['300-500 N', 'belt tension', 300, 500, { states: [] }],
    ['at most 8 %', 'leak-down', null, 0.08, { states: [] }],
    ['>= 60 psi at 3000 rpm', 'oil pressure', 413.685_437_590_101, null, { speedRpm: 3000, states: [] }],
  ])('%s of %s', (typed, kind, min, max, conditions) => {
    const found = readLimit(typed, kind, testContext);
    if (found.verdict !== 'read') throw new Error(JSON.stringify(found));
    if (min === null) expect(found.min).toBeNull();
    else expect(found.min).toBeCloseTo(min, 6);
    if (max === null) expect(found.max).toBeNull();
    else expect(found.max).toBeCloseTo(max, 6);
    expect(found.conditions).toEqual(conditions);
  });

  it('says when it tells neither the least nor the most, or is upside down', () => {
    expect(readLimit('3 bar', 'oil pressure', testContext)).toMatchObject({ verdict: 'refuse' });
    expect(readLimit('5 to 3 bar', 'oil pressure', testContext)).toMatchObject({
      verdict: 'refuse',
      problem: 'The least, 5, is not below the most.',
    });
  });

  it('asks for a unit with limits that mean one thing', () => {
    const found = readLimit('at least 3', 'oil pressure', testContext);
    if (found.verdict !== 'ask') throw new Error(JSON.stringify(found));
    expect(
      found.options.map(({ typed }) => readLimit(typed, 'oil pressure', testContext).verdict),
    ).not.toContain('refuse');
    expect(found.options[0]?.typed).toBe('at least 3 bar');
  });
});
