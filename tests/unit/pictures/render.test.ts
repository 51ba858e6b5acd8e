import { execFileSync } from 'node:child_process';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import { describe, expect, it } from 'vitest';
import { renderPng } from '../../../src/pictures/render.ts';
import { element } from '../../../src/pictures/svg.ts';
import { line } from '../../../src/pictures/words.ts';

const sheet = (inside: string) => ({
  svg: element(
    'svg',
    { xmlns: 'http://www.w3.org/2000/svg', width: 120, height: 40, viewBox: '0 0 120 40' },
    element('rect', { width: 120, height: 40, fill: '#ffffff' }),
    inside,
  ),
  width: 120,
  height: 40,
});
const written = (words: string) => sheet(line(words, { x: 8, y: 26 }, { size: 14 }));

async function pixels(png: Uint8Array): Promise<Uint8ClampedArray> {
  const image = await loadImage(Buffer.from(png));
  const context = createCanvas(image.width, image.height).getContext('2d');
  context.drawImage(image, 0, 0);
  return context.getImageData(0, 0, image.width, image.height).data;
}

const inked = (data: Uint8ClampedArray): number => {
  let count = 0;
  for (let at = 0; at < data.length; at += 4) if ((data[at] ?? 255) < 128) count++;
  return count;
};

describe('a rendered picture', () => {
  it('is a PNG of the size asked for', async () => {
    const png = await renderPng(written('M22'), 2);
    expect([...png.slice(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    const view = new DataView(png.buffer, png.byteOffset);
    expect([view.getUint32(16), view.getUint32(20)]).toEqual([240, 80]);
  });

  it('shows its words: other words, other pixels; no words, no ink', async () => {
    const [one, two, none] = await Promise.all(
      ['M22 × 1.5', 'G 1/8', ''].map(async (words) => pixels(await renderPng(written(words)))),
    );
    expect(inked(one ?? new Uint8ClampedArray())).toBeGreaterThan(300);
    expect(one).not.toEqual(two);
    expect(inked(none ?? new Uint8ClampedArray())).toBe(0);
  });

  it('has every sign that pictures need, none as the box of a missing one', async () => {
    const missing = await pixels(await renderPng(written('\ue000')));
    expect(inked(missing)).toBeGreaterThan(50);
    for (const sign of '×±°µΩλ−…²³') {
      const data = await pixels(await renderPng(written(sign)));
      expect(inked(data), sign).toBeGreaterThan(5);
      expect(data, sign).not.toEqual(missing);
    }
  });

  it('is the same, byte for byte, on a machine with no fonts', async () => {
    const root = new URL('../../../', import.meta.url).pathname;
    const script = `
      import { renderPng } from '${root}src/pictures/render.ts';
      process.stdout.write(await renderPng(${JSON.stringify(written('M22 × 1.5 ± 0.05'))}));`;
    const bare = execFileSync(process.execPath, ['--input-type=module', '-e', script], {
      env: { DISABLE_SYSTEM_FONTS_LOAD: '1', FONTCONFIG_FILE: '/dev/null', HOME: '/nowhere', LANG: 'C' },
    });
    expect(bare.equals(await renderPng(written('M22 × 1.5 ± 0.05')))).toBe(true);
  });

  it('is refused when it cannot be read or would be enormous', async () => {
    await expect(renderPng({ svg: '<svg', width: 10, height: 10 })).rejects.toThrow('Unsupported image type');
    await expect(renderPng(sheet('<rect>'))).rejects.toThrow('Invalid SVG');
    await expect(renderPng({ ...written('x'), width: 30_000, height: 30_000 })).rejects.toThrow(
      '75000 by 75000 pixels cannot be drawn',
    );
    await expect(renderPng({ ...written('x'), width: Number.NaN })).rejects.toThrow('cannot be drawn');
  });
});
