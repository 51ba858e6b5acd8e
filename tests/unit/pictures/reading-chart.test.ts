import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readingChart } from '../../../src/pictures/reading-chart.ts';
import type { ChartPanel, ReadingChartData } from '../../../src/pictures/reading-data.ts';
import { type RunInStripData, runInStrip } from '../../../src/pictures/run-in-strip.ts';
import { timeTicks } from '../../../src/pictures/time-ticks.ts';
import { collisions, textsIn } from '../../support/svg-text.ts';

const MONDAY = 1_795_424_400_000; // 23 November 2026, 09:00 UTC
const DAY = 86_400_000;

const panel = (values: readonly number[], changes: Partial<ChartPanel> = {}): ChartPanel => ({
  axis: 'Oil pressure, bar',
  conditions: 'Joined: 2500 rpm, 92 °C',
  points: values.map((value, day) => ({
    atMs: MONDAY + day * DAY,
    value,
    standing: value < 1.7 ? 'bad' : 'ok',
    like: true,
  })),
  limits: [{ value: 1.72, words: 'at least 1.72 bar (common practice)', side: 'least' }],
  newest: `${values.at(-1)} bar`,
  least: `${Math.min(...values)} bar`,
  most: `${Math.max(...values)} bar`,
  ...changes,
});
const chart = (panels: readonly ChartPanel[]): ReadingChartData => ({
  title: 'Oil pressure falls 0.2 bar a week at 2500 rpm, 92 °C',
  panels,
  zone: 'Europe/London',
  name: 'readings.png',
});

function expectTidy({ svg, width, height }: { svg: string; width: number; height: number }): void {
  const texts = textsIn(svg);
  expect(texts.length).toBeGreaterThan(3);
  for (const { words, room } of texts) {
    expect(room.x, words).toBeGreaterThanOrEqual(0);
    expect(room.x + room.width, words).toBeLessThanOrEqual(width);
    expect(room.y, words).toBeGreaterThanOrEqual(0);
    expect(room.y + room.height, words).toBeLessThanOrEqual(height);
  }
  expect(collisions(texts)).toEqual([]);
}

describe('a chart of readings', () => {
  it('says the answer, the limit, the conditions and the units', () => {
    const { svg, alt } = readingChart(chart([panel([4.2, 4.1, 4, 3.9])]));
    const words = textsIn(svg).map((text) => text.words);
    expect(words.join(' ')).toContain('Oil pressure falls 0.2 bar a week');
    expect(words).toContain('Oil pressure, bar');
    expect(words).toContain('at least 1.72 bar (common practice)');
    expect(words).toContain('3.9 bar');
    expect(alt).toContain('4 readings, least 3.9 bar, greatest 4.2 bar, last 3.9 bar; at least 1.72 bar');
  });

  it('marks what lies beyond a limit by its shape, and says so', () => {
    const { svg } = readingChart(chart([panel([2, 1.8, 1.5])]));
    expect(svg.match(/<polygon/g)).toHaveLength(1);
    expect(
      textsIn(svg)
        .map(({ words }) => words)
        .join(' '),
    ).toContain('A diamond lies beyond a limit.');
  });

  it('names a limit that is too far off to draw', () => {
    const far = panel([4, 4.01, 4.02], {
      limits: [{ value: 0.7, words: 'at least 0.7 bar', side: 'least' }],
    });
    const words = textsIn(readingChart(chart([far])).svg).map((text) => text.words);
    expect(words.join(' ')).toContain('off this chart');
  });

  it('keeps every text on the sheet and off every other, whatever was measured', () => {
    const values = fc.array(
      fc.double({ min: 0.2, max: 9, noNaN: true }).map((value) => Number(value.toFixed(2))),
      { minLength: 1, maxLength: 40 },
    );
    fc.assert(
      fc.property(fc.array(values, { minLength: 1, maxLength: 3 }), (all) => {
        expectTidy(readingChart(chart(all.map((each) => panel(each)))));
      }),
      { seed: 20_261, numRuns: 60 },
    );
  });

  it('draws half a million readings as quickly as it is read, peaks kept', () => {
    const values = Array.from({ length: 500_000 }, (_each, at) =>
      at === 123_456 ? 9 : 4 + Math.sin(at / 1000),
    );
    const many = panel([4, 4]);
    const points = values.map((value, at) => ({
      atMs: MONDAY + at * 1000,
      value,
      standing: 'ok' as const,
      like: true,
    }));
    const { svg } = readingChart(chart([{ ...many, points }]));
    const line = /<polyline points="([^"]*)"/.exec(svg)?.[1]?.split(' ') ?? [];
    expect(line.length).toBeLessThanOrEqual(2000);
    const highest = Math.min(...line.map((point) => Number(point.split(',')[1])));
    const usual = line.map((point) => Number(point.split(',')[1])).toSorted((a, b) => a - b)[1] ?? 0;
    expect(usual - highest).toBeGreaterThan(50);
  });
});

describe('the days below a chart', () => {
  it.each([
    [MONDAY, MONDAY + 20 * DAY, ['30 Nov', '7 Dec']],
    [MONDAY, MONDAY + 3 * DAY, ['24 Nov', '25 Nov', '26 Nov']],
    [MONDAY, MONDAY + 4 * 3_600_000, ['09:00', '10:00', '11:00', '12:00', '13:00']],
  ])('from %d to %d', (from, to, words) => {
    expect(timeTicks(from, to, 'Europe/London', 5).map((tick) => tick.words)).toEqual(words);
  });
});

describe('the strip of running in', () => {
  const strip: RunInStripData = {
    title: '2 of 3 steps done. 4650 rpm at most; until 500 km',
    now: '325 km run',
    steps: [
      {
        at: '80 km or 1.5 h',
        what: 'First oil and filter change; cut the filter open and look',
        state: 'done',
      },
      { at: '200 km', what: 'Check the fasteners of exhaust manifold, mounts and inlet', state: 'due' },
      { at: '500 km', what: 'Second oil and filter change', state: 'later' },
    ],
    before: 2,
    ceiling: [
      { at: 0, rpm: 3600 },
      { at: 150, rpm: 3600 },
      { at: 500, rpm: 5750 },
      { at: 1600, rpm: 7200 },
    ],
    run: 325,
    measure: 'km from the first start',
  };

  it('tells done, due and to come by mark and word, and where the engine stands', () => {
    const drawn = runInStrip(strip);
    expectTidy(drawn);
    const words = textsIn(drawn.svg).map((text) => text.words);
    expect(words).toEqual(
      expect.arrayContaining(['80 km or 1.5 h, done', '200 km, due', '500 km', '325 km run', 'most, rpm']),
    );
    expect(drawn.alt).toContain(
      '325 km run. The ceiling rises from 3600 to 7200 rpm. Steps: 80 km or 1.5 h: First oil',
    );
  });

  it('stands without steps and without ceilings', () => {
    expect(runInStrip({ ...strip, steps: [], before: 0, ceiling: [] }).alt).toContain('325 km run');
  });
});
