/** A finished drawing: SVG text and its size in sheet units. */
export interface Svg {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

/** A rectangle in sheet units, y downwards. */
export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

type Attributes = Readonly<Record<string, string | number | undefined>>;

/** One SVG element; numbers are cut to hundredths, which no eye can see, so that the text stays short and comparable. */
export function element(name: string, attributes: Attributes, ...inside: readonly string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? short(value) : escaped(`${value}`)}"`)
    .join('');
  return inside.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${inside.join('')}</${name}>`;
}

/** @throws Error when a place on the sheet is not a number: a drawing with one in it would come out silently empty. */
function short(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`a drawing has a place that is no number: ${value}`);
  return `${Math.round(value * 100) / 100}`;
}

/** Words as SVG text: markup in them is shown, not obeyed, and what XML cannot hold is left out. */
export function escaped(words: string): string {
  return (
    words
      .toWellFormed()
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters XML 1.0 forbids
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;')
      .replaceAll('"', '&quot;')
  );
}
