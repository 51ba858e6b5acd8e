import { fileURLToPath } from 'node:url';
import { createCanvas, GlobalFonts, type SKRSContext2D } from '@napi-rs/canvas';
import { INK, LEADING } from './sheet.ts';
import { element, escaped } from './svg.ts';

/** A name no system font has, so that a picture looks the same on a machine with many fonts and on one with none. */
const FACE = 'Day-book Sans';
const FILES = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'] as const;

export interface Type {
  readonly size: number;
  readonly bold?: boolean;
  readonly ink?: string;
}

let ruler: SKRSContext2D | undefined;

/**
 * Makes the bundled fonts known to the renderer, once.
 *
 * @throws Error naming the font file that cannot be read: without it text would silently be missing.
 */
export function loadFonts(): SKRSContext2D {
  if (ruler !== undefined) return ruler;
  for (const file of FILES) {
    const path = fileURLToPath(new URL(`../../data/fonts/${file}`, import.meta.url));
    if (GlobalFonts.registerFromPath(path, FACE) === null) throw new Error(`cannot read the font ${path}`);
  }
  ruler = createCanvas(1, 1).getContext('2d');
  ruler.lang = 'en';
  return ruler;
}

/** How wide words are when set, in sheet units. */
export function widthOf(words: string, { size, bold = false }: Type): number {
  const context = loadFonts();
  context.font = `${bold ? 'bold ' : ''}${size}px "${FACE}"`;
  return context.measureText(words).width;
}

/** Height of a line with its leading, in sheet units. */
export const lineHeight = ({ size }: Type): number => size * LEADING;

export type Align = 'start' | 'middle' | 'end';

/** One line of text; `y` is its baseline. */
export function line(words: string, at: { x: number; y: number; align?: Align }, type: Type): string {
  return element(
    'text',
    {
      x: at.x,
      y: at.y,
      'font-family': FACE,
      'font-size': type.size,
      'font-weight': type.bold ? 'bold' : undefined,
      'text-anchor': at.align === 'start' ? undefined : at.align,
      fill: type.ink ?? INK.text,
    },
    escaped(words),
  );
}

/** Words set in a column, broken into lines, and where they end. `y` is the top. */
export function paragraph(
  words: string,
  at: { readonly x: number; readonly y: number; readonly width: number },
  type: Type,
  most: number,
): { readonly svg: string; readonly end: number } {
  const lines = wrapped(words, at.width, type, most);
  const step = lineHeight(type);
  return {
    svg: lines
      .map((each, index) => line(each, { x: at.x, y: at.y + (index + 1) * step - type.size * 0.32 }, type))
      .join(''),
    end: at.y + lines.length * step,
  };
}

/** Breaks words into lines no wider than `width`; what does not fit into `most` lines is cut, and the cut is seen. */
export function wrapped(words: string, width: number, type: Type, most: number): readonly string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of words.split(/[ \t\r\n]+/).filter(Boolean)) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (current !== '' && widthOf(longer, type) > width) {
      lines.push(current);
      current = word;
    } else {
      current = longer;
    }
  }
  if (current !== '') lines.push(current);
  const cut = lines.length > most;
  return lines
    .slice(0, most)
    .map((each, index) => fitted(cut && index === most - 1 ? `${each} …` : each, width, type));
}

/** No line of a sheet holds as many. */
const MOST_LETTERS = 200;

/** The words, shortened until they are no wider than `width`, with an ellipsis where something is missing. */
export function fitted(words: string, width: number, type: Type): string {
  if (widthOf(words, type) <= width) return words;
  const letters = [...words.replace(/ …$/, '')].slice(0, MOST_LETTERS);
  while (letters.length > 0 && widthOf(`${letters.join('').trimEnd()}…`, type) > width) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}
