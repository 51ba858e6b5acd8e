/**
 * Splits what follows a command into its options, as forgivingly as can be done without guessing:
 * `what:"head gasket" quantity:2 due:12 Dec`.
 */
export interface Segment {
  /** Absent: text in front of the first named option. */
  readonly name?: string;
  /** The value without its quotes. */
  readonly value: string;
  /** Where the segment and its value start, and where it ends, in the text that was split. */
  readonly start: number;
  readonly valueStart: number;
  readonly end: number;
  /** The value stood in quotes and the closing one is there. */
  readonly closed: boolean;
}

/** Opening quote to the closing ones it accepts; phones put curly ones. */
const QUOTES: Readonly<Record<string, string>> = { '"': '"”', '“': '"”', '”': '"”', "'": "'’", '‘': "'’" };

/**
 * A named option starts at the beginning or after a space, `name:` in any case. A value in quotes ends at the first
 * closing quote that is followed by another option or nothing, so that an inch mark inside does no harm; `\"` is a
 * quote in any case. A value without quotes runs to the next named option.
 */
export function splitOptions(text: string, names: readonly string[]): readonly Segment[] {
  const next = nameFinder(text, names);
  const segments: Segment[] = [];
  let at = skipSpaces(text, 0);
  const first = next(at);
  if (first === undefined || first.start > at) {
    const end = first?.start ?? text.length;
    const value = text.slice(at, end).trim();
    if (value !== '') segments.push({ ...valueIn(text, at, end), start: at, end });
    at = end;
  }
  for (let found = next(at); found !== undefined; found = next(at)) {
    const valueStart = skipSpaces(text, found.valueStart);
    const quotedEnd = closingQuote(text, valueStart, next);
    const end = quotedEnd ?? next(valueStart)?.start ?? text.length;
    segments.push({ name: found.name, ...valueIn(text, valueStart, end), start: found.start, end });
    at = end;
  }
  return segments;
}

interface Found {
  readonly name: string;
  readonly start: number;
  readonly valueStart: number;
}

/** Finds the first named option at or after a position. */
function nameFinder(text: string, names: readonly string[]): (from: number) => Found | undefined {
  const lower = text.toLowerCase();
  const all = names.flatMap((name) => {
    const found: Found[] = [];
    const mark = `${name.toLowerCase()}:`;
    for (let at = lower.indexOf(mark); at >= 0; at = lower.indexOf(mark, at + 1)) {
      if (at === 0 || /\s/.test(lower.charAt(at - 1)))
        found.push({ name, start: at, valueStart: at + mark.length });
    }
    return found;
  });
  all.sort((a, b) => a.start - b.start);
  return (from) => all.find(({ start }) => start >= from);
}

/** Position after the closing quote of a quoted value; undefined when it is none or is not closed. */
function closingQuote(
  text: string,
  start: number,
  next: (from: number) => Found | undefined,
): number | undefined {
  const closing = QUOTES[text.charAt(start)];
  if (closing === undefined) return undefined;
  for (let at = start + 1; at < text.length; at += 1) {
    if (text.charAt(at) === '\\') at += 1;
    else if (closing.includes(text.charAt(at))) {
      const after = skipSpaces(text, at + 1);
      if (after >= text.length || next(at)?.start === after) return at + 1;
    }
  }
  return undefined;
}

function valueIn(text: string, start: number, end: number): Pick<Segment, 'value' | 'valueStart' | 'closed'> {
  const raw = text.slice(start, end).trim();
  const closing = QUOTES[raw.charAt(0)];
  const closed = closing !== undefined && raw.length > 1 && closing.includes(raw.charAt(raw.length - 1));
  const value = closed ? raw.slice(1, -1).replace(/\\(["'\\“”‘’])/g, '$1') : raw;
  return { value, valueStart: start, closed };
}

export function skipSpaces(text: string, from: number): number {
  let at = from;
  while (at < text.length && /\s/.test(text.charAt(at))) at += 1;
  return at;
}

/** A value as it has to be written so that it is read back the same. */
export function quoteValue(value: string): string {
  return /^[^\s"'“”‘’:\\]+$/.test(value) ? value : `"${value.replace(/[\\"]/g, '\\$&')}"`;
}
