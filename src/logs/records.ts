import { parse } from 'csv-parse';

/** Takes a table's text apart into records, as it comes in. */
export interface RecordReader {
  /** Records that the text so far has completed. */
  take(text: string): readonly (readonly string[])[];
  /** What is left when there is no more text. */
  finish(): Promise<readonly (readonly string[])[]>;
  close(): void;
}

/**
 * Lines without a quotation mark, as nearly all loggers write them, are cut at their delimiters. From the first one on that has one,
 * the library reads, since then a delimiter or an end of line may stand inside a cell.
 *
 * @throws Error of the library from `take` and `finish` when a quotation is never closed.
 */
export function recordReader(delimiter: string): RecordReader {
  let rest = '';
  let library: ReturnType<typeof quotedReader> | undefined;
  return {
    take(text) {
      if (library !== undefined) return library.take(text);
      const all = rest + text;
      const quote = all.indexOf('"');
      const plain = quote < 0 ? all : all.slice(0, all.lastIndexOf('\n', quote) + 1);
      const end = wholeLines(plain, quote >= 0);
      rest = all.slice(end);
      const records = cut(all.slice(0, end), delimiter);
      if (quote < 0) return records;
      library = quotedReader(delimiter);
      const quoted = library.take(rest);
      rest = '';
      return [...records, ...quoted];
    },
    async finish() {
      if (library !== undefined) return library.finish();
      const last = cut(rest, delimiter);
      rest = '';
      return last;
    },
    close: () => library?.close(),
  };
}

/** Up to where the text holds whole lines. A carriage return at the very end may be half of a line's end. */
function wholeLines(text: string, closed: boolean): number {
  if (closed) return text.length;
  const feed = text.lastIndexOf('\n') + 1;
  if (feed > 0) return feed;
  return text.lastIndexOf('\r', text.length - 2) + 1;
}

function cut(text: string, delimiter: string): string[][] {
  const records: string[][] = [];
  const lines = text.includes('\n') ? text.split('\n') : text.split('\r');
  for (const line of lines) {
    const whole = line.endsWith('\r') ? line.slice(0, -1) : line;
    if (whole !== '') records.push(whole.split(delimiter));
  }
  return records;
}

function quotedReader(delimiter: string) {
  const parser = parse({ delimiter, relax_column_count: true, relax_quotes: true, skip_empty_lines: true });
  let trouble: Error | undefined;
  parser.on('error', (error) => {
    trouble = error;
  });
  const drain = (): (readonly string[])[] => {
    if (trouble !== undefined) throw trouble;
    const records: (readonly string[])[] = [];
    for (;;) {
      // without named columns every record of the library is a list of texts
      const record = parser.read() as readonly string[] | null;
      if (record === null) return records;
      records.push(record);
    }
  };
  return {
    take(text: string) {
      parser.write(text);
      return drain();
    },
    async finish() {
      parser.end();
      // the library hands out what it still holds a turn later
      await new Promise<void>((resolve) => setImmediate(resolve));
      return drain();
    },
    close: () => void parser.destroy(),
  };
}
