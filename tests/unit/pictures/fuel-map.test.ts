import { describe, expect, it } from 'vitest';
import { type FuelMapData, fuelMap, type MapCell } from '../../../src/pictures/fuel-map.ts';
import { overlap } from '../../../src/pictures/labels.ts';
import { renderPng } from '../../../src/pictures/render.ts';
import { SHEET_WIDTH, TYPE } from '../../../src/pictures/sheet.ts';
import { noiseFrom } from '../../support/model-engine/noise.ts';
import { textsIn } from '../../support/svg-text.ts';

/** A table of this size with changes all over it. */
function mapOf(loads: number, speeds: number, seed = 1): FuelMapData {
  const noise = noiseFrom(seed);
  const cell = (): MapCell => {
    const kind = noise.unit();
    if (kind < 0.15) return {};
    return kind < 0.25 ? { suspect: true } : { changeRatio: noise.between(-0.25, 0.25) };
  };
  return {
    title: '17 of 23 cells to change, first take 2 to 11 % out at 1800 to 3800 rpm and 40 to 60 kPa',
    loadKPa: Array.from({ length: loads }, (_, i) => 20 + 12.5 * i),
    speedRpm: Array.from({ length: speeds }, (_, j) => 600 + 450 * j),
    cells: Array.from({ length: loads }, () => Array.from({ length: speeds }, cell)),
  };
}

describe('the map of a fuel table', () => {
  it.each([
    [2, 2],
    [8, 8],
    [11, 13],
    [16, 16],
    [20, 32],
  ])('of %i by %i cells keeps every word on the sheet and off the others', (loads, speeds) => {
    for (let seed = 1; seed <= 10; seed++) {
      const { svg, height } = fuelMap(mapOf(loads, speeds, seed));
      const texts = textsIn(svg);
      for (const { words, room } of texts) {
        expect(room.x, words).toBeGreaterThanOrEqual(0);
        expect(room.x + room.width, words).toBeLessThanOrEqual(SHEET_WIDTH);
        expect(room.y + room.height, words).toBeLessThanOrEqual(height);
      }
      texts.forEach((one, index) => {
        const on = texts.slice(index + 1).find((other) => overlap(one.room, other.room));
        expect(on && `${on.words} on ${one.words}`).toBeUndefined();
      });
      expect([...svg.matchAll(/font-size="([\d.]+)"/g)].every(([, size]) => Number(size) >= TYPE.small)).toBe(
        true,
      );
    }
  });

  it('says a change by its sign and the filling, not by colour alone', () => {
    const { svg } = fuelMap({
      title: 'Three cells',
      loadKPa: [40, 60],
      speedRpm: [1000, 2000],
      cells: [
        [{ changeRatio: 0.06 }, { changeRatio: -0.12 }],
        [{ changeRatio: 0.001 }, { suspect: true }],
      ],
    });
    expect(textsIn(svg).map(({ words }) => words)).toEqual(expect.arrayContaining(['+6', '−12', '0', '?']));
  });

  it('draws only the part the drive speaks of', () => {
    const cells = Array.from({ length: 20 }, () => Array.from({ length: 20 }, (): MapCell => ({})));
    const row = cells[10];
    if (row !== undefined) row[10] = { changeRatio: 0.05 };
    const { svg, height } = fuelMap({ ...mapOf(20, 20), cells });
    expect(
      textsIn(svg)
        .filter(({ words }) => /^\d+(\.\d+)?$/.test(words))
        .map(({ words }) => words),
    ).toEqual(['5100', '145']);
    expect(height).toBeLessThan(260);
  });

  it('tells in words where the least and the most stand', () => {
    const { alt } = fuelMap({
      title: 'Two cells.',
      loadKPa: [40, 60],
      speedRpm: [1000, 2000],
      cells: [
        [{ changeRatio: 0.06 }, {}],
        [{}, { changeRatio: -0.12 }],
      ],
    });
    expect(alt).toBe(
      'Two cells. 2 cells by load and speed, from −12.0 % at 2000 rpm and 60 kPa to +6.0 % at 1000 rpm and 40 kPa.',
    );
  });

  it('can be painted', async () => {
    const png = await renderPng(fuelMap(mapOf(16, 16)));
    expect([...png.subarray(1, 4)]).toEqual([0x50, 0x4e, 0x47]);
    expect(png.length).toBeLessThan(400_000);
  });
});
