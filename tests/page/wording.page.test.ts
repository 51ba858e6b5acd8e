import { describe, expect, it } from 'vitest';
import { runsOf } from '../../src/channel/page/figures.ts';
import { compareIds } from '../../src/channel/page/ids.ts';
import { initialsFor } from '../../src/channel/page/initials.ts';
import { piecesOf } from '../../src/channel/page/pieces.ts';
import { placeAt } from '../../src/channel/page/places.ts';
import { outliving } from '../../src/channel/page/session.ts';
import { dayName, stamp } from '../../src/channel/page/times.ts';
import type { PageEntry } from '../../src/channel/page-api.ts';

describe('initials in the margin', () => {
  it('takes the first letters of two words, or two letters of one', () => {
    expect([...initialsFor(['Ada', 'Ben Oak', 'z']).values()]).toEqual(['Ad', 'BO', 'Z']);
  });

  it('keeps two people apart whose names begin alike', () => {
    expect([...initialsFor(['Ann', 'Anna Nord', 'Andrew', 'Anke']).values()]).toEqual([
      'An',
      'AN',
      'Ad',
      'Ak',
    ]);
  });

  it('takes whole letters of any script and leaves out marks of direction', () => {
    expect(initialsFor(['\u202eÄke', '😀', '李小龙']).values().toArray()).toEqual(['Äk', '?', '李小']);
  });
});

describe('blocks of a text', () => {
  it('tells headings, small print, quotes, fences and body apart', () => {
    const text =
      '### Thread\n## 11/16 in\n-# Certain\n> Caution\n> stop\nfirst\nsecond\n```txt\n## a draft\n```\nlast';
    expect(piecesOf(text)).toEqual([
      { kind: 'heading', level: 3, text: 'Thread' },
      { kind: 'heading', level: 2, text: '11/16 in' },
      { kind: 'small', text: 'Certain' },
      { kind: 'quote', text: 'Caution\nstop' },
      { kind: 'body', text: 'first\nsecond' },
      { kind: 'fence', text: '## a draft' },
      { kind: 'body', text: 'last' },
    ]);
  });

  it('leaves an open fence, a fourth level and a mark without a space as they were typed', () => {
    const text = '```\nnever closed\n#### four\n-#five\n#six';
    expect(piecesOf(text)).toEqual([{ kind: 'body', text }]);
  });
});

describe('figures and units', () => {
  it.each([
    ['3.2 bar at 90 °C', ['3.2', ' bar', ' at 90', ' °C']],
    ['440 cc/min', ['440', ' cc/min']],
    ['11/16 in, 16 TPI', ['11/16', ' in', ', 16', ' TPI']],
    ['2 late, 1 mmx, M10', ['2 late, 1 mmx, M10']],
    ['Late by 4 days', ['Late by 4', ' days']],
  ])('cuts %s', (text, runs) => {
    expect(runsOf(text).map((run) => run.text)).toEqual(runs);
  });
});

describe('places in a text', () => {
  it('knows mentions, commands, times and emoji', () => {
    expect(placeAt('a <@!12>', 2)).toEqual({ kind: 'person', typed: '<@!12>', id: '12' });
    expect(placeAt('<#7>', 0)).toEqual({ kind: 'channel', typed: '<#7>', id: '7' });
    expect(placeAt('</order place:9>', 0)).toEqual({
      kind: 'command',
      typed: '</order place:9>',
      name: 'order place',
    });
    expect(placeAt('<t:1618953630:R>', 0)).toEqual({
      kind: 'time',
      typed: '<t:1618953630:R>',
      seconds: 1618953630,
      style: 'R',
    });
    expect(placeAt('<img src=x>', 0)).toBeUndefined();
  });

  // 1618953630 s after 1970-01-01T00:00:00Z is 2021-04-20T21:20:30Z (seconds since the Epoch, IEEE Std 1003.1).
  it.each([
    ['t', '21:20'],
    ['T', '21:20:30'],
    ['d', '20/04/2021'],
    ['D', '20 April 2021'],
    ['R', '2 months ago'],
  ])('writes the time in style %s', (style, words) => {
    expect(stamp(1618953630, style, Date.UTC(2021, 5, 25))).toBe(words);
  });

  it('refuses a time outside the calendar', () => {
    expect(stamp(9e12, 'f', 0)).toBeUndefined();
  });
});

it('names a day, with the year when it is another one', () => {
  // 21 December 2026 is a Monday, 21 December 2025 a Sunday (ISO 8601 calendar).
  expect(dayName('2026-12-21T12:00:00Z', Date.UTC(2026, 5, 1))).toBe('Monday 21 December');
  expect(dayName('2025-12-21T12:00:00Z', Date.UTC(2026, 5, 1))).toBe('Sunday 21 December 2025');
});

it('orders message ids as numbers', () => {
  expect(['100', '99', '1000000000000000001', '1000000000000000000'].toSorted(compareIds)).toEqual([
    '99',
    '100',
    '1000000000000000000',
    '1000000000000000001',
  ]);
});

describe('a fresh load', () => {
  const entry = (id: string, isPrivate = false): PageEntry => ({
    message: {
      id,
      channel_id: '1',
      content: '',
      author: { id: '1', username: 'Ada' },
      timestamp: '2026-05-04T18:00:00Z',
      edited_timestamp: null,
      flags: 0,
      components: [],
      embeds: [],
      attachments: [],
    },
    private: isPrivate,
    working: false,
    reactions: [],
    pinned: false,
    mentions: [],
  });

  it('keeps earlier entries that join on, and private ones; what was taken off meanwhile goes', () => {
    const shown = [entry('1'), entry('2'), entry('3'), entry('4', true)];
    const fresh = [entry('2'), entry('5')];
    expect(shown.filter(outliving(shown, fresh)).map(({ message }) => message.id)).toEqual(['1', '4']);
  });

  it('drops earlier entries when there is a gap before the fresh ones', () => {
    const shown = [entry('1'), entry('2')];
    expect(shown.filter(outliving(shown, [entry('8')]))).toEqual([]);
  });
});
