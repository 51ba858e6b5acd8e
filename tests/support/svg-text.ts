import { overlap } from '../../src/pictures/labels.ts';
import type { Rect } from '../../src/pictures/svg.ts';
import { widthOf } from '../../src/pictures/words.ts';

/** A line of text in a drawing: what it says and the room its letters take. */
export interface Written {
  readonly words: string;
  readonly room: Rect;
}

/** Letters reach this far above and below the baseline, as a share of their size (DejaVu Sans, capitals and tails). */
const ASCENT = 0.73;
const DESCENT = 0.24;

/** Every text of a drawing, measured. */
export function textsIn(svg: string): readonly Written[] {
  return [...svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].map(([, written = '', inside = '']) => {
    const attribute = new Map(
      [...written.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, key, value]) => [key, value]),
    );
    const size = Number(attribute.get('font-size'));
    const words = plain(inside);
    const width = widthOf(words, { size, bold: attribute.get('font-weight') === 'bold' });
    const share = { middle: 0.5, end: 1 }[attribute.get('text-anchor') ?? ''] ?? 0;
    return {
      words,
      room: {
        x: Number(attribute.get('x')) - width * share,
        y: Number(attribute.get('y')) - ASCENT * size,
        width,
        height: (ASCENT + DESCENT) * size,
      },
    };
  });
}

/** Texts of a drawing that stand on one another, each pair in words. */
export const collisions = (texts: readonly Written[]): readonly string[] =>
  texts.flatMap(({ words, room }, index) =>
    texts
      .slice(index + 1)
      .filter((other) => overlap(room, other.room))
      .map((other) => `"${words}" on "${other.words}"`),
  );

function plain(escaped: string): string {
  return escaped
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&');
}
