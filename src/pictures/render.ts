import { createCanvas, loadImage } from '@napi-rs/canvas';
import { PIXELS_PER_UNIT } from './sheet.ts';
import type { Svg } from './svg.ts';
import { loadFonts } from './words.ts';

/** Larger ones are refused: a careless size would take gigabytes. */
const MOST_PIXELS = 8_000_000;

/**
 * Turns a drawing into a PNG. Painting takes some milliseconds; the packing, most of the work, is done off the main loop.
 *
 * @throws Error when the SVG cannot be read, is too large, or the fonts are missing.
 */
export async function renderPng({ svg, width, height }: Svg, scale = PIXELS_PER_UNIT): Promise<Uint8Array> {
  const [across, down] = [Math.round(width * scale), Math.round(height * scale)];
  if (!(across > 0 && down > 0 && across * down <= MOST_PIXELS)) {
    throw new Error(`a picture of ${across} by ${down} pixels cannot be drawn`);
  }
  loadFonts();
  const image = await loadImage(Buffer.from(svg));
  const canvas = createCanvas(across, down);
  canvas.getContext('2d').drawImage(image, 0, 0, across, down);
  return await canvas.encode('png');
}
