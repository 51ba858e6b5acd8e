import type { Row } from './engine.ts';

type Column = (row: Row, index: number) => number | string;

/** How a made-up logger writes its log. */
export interface LogStyle {
  readonly delimiter: string;
  readonly decimalComma?: boolean;
  readonly before?: readonly string[];
  /** The header's cells with what stands under each. */
  readonly columns: readonly (readonly [name: string, column: Column, unit?: string])[];
  readonly unitsRow?: boolean;
  readonly quoted?: boolean;
  readonly lineEnd?: string;
  /** Writes the header again after so many rows. */
  readonly headerEvery?: number;
  readonly missing?: string;
}

/** The text of a log, line by line. */
export function* logText(rows: Iterable<Row>, style: LogStyle): Generator<string> {
  const { delimiter, columns, lineEnd = '\n', before = [], missing = '' } = style;
  const written = (value: number | string): string => {
    if (typeof value === 'string') return style.quoted ? `"${value}"` : value;
    const text = Number.isNaN(value) ? missing : String(Math.round(value * 10_000) / 10_000);
    const marked = style.decimalComma ? text.replace('.', ',') : text;
    return style.quoted ? `"${marked}"` : marked;
  };
  const header = columns.map(([name]) => (style.quoted ? `"${name}"` : name)).join(delimiter) + lineEnd;
  for (const line of before) yield line + lineEnd;
  yield header;
  if (style.unitsRow) yield columns.map(([, , unit = '']) => unit).join(delimiter) + lineEnd;
  let index = 0;
  for (const row of rows) {
    if (style.headerEvery !== undefined && index > 0 && index % style.headerEvery === 0) yield header;
    yield columns.map(([, column]) => written(column(row, index))).join(delimiter) + lineEnd;
    index++;
  }
}

/** A text as the bytes of a file, some at a time. */
export async function* bytesOf(lines: Iterable<string>, encode = utf8): AsyncGenerator<Uint8Array> {
  let gathered = '';
  for (const line of lines) {
    gathered += line;
    if (gathered.length > 30_000) {
      yield encode(gathered);
      gathered = '';
    }
  }
  if (gathered !== '') yield encode(gathered);
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
export const utf16 = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'utf16le'));
export const latin1 = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'latin1'));
