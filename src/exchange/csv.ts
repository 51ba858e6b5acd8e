import { CsvError, parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { UserError } from '../core/user-error.ts';

/** A table as people open it: a heading for each column, then the rows. */
export interface Sheet {
  /** Names the file: `orders`. */
  readonly name: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly SheetCell[])[];
}

export type SheetCell = string | number | null;

/**
 * Writes a sheet as CSV (RFC 4180, UTF-8 with a byte-order mark, so that spreadsheets read its accents). Text that a
 * spreadsheet would run as a formula gets an apostrophe in front (CWE-1236); numbers stay numbers.
 */
export function writeCsv({ head, rows }: Sheet): string {
  return stringify([head, ...rows], { bom: true, escape_formulas: true, record_delimiter: 'windows' });
}

const DELIMITERS = [',', ';', '\t', '|'] as const;

/**
 * Reads the rows of a pasted or attached list, whatever parts its columns: comma, semicolon, tab or upright stroke. Empty
 * lines are left out; an apostrophe that only kept a formula from running is taken off again.
 *
 * @throws UserError 'bad-input' where quotes do not close.
 */
export function readCsv(text: string): readonly (readonly string[])[] {
  try {
    const rows = parse(text, {
      bom: true,
      delimiter: delimiterOf(text),
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
    });
    return rows
      .map((row) => row.map((cell) => cell.replace(/^'(?=[=+\-@\t\r])/, '')))
      .filter((row) => row.some((cell) => cell !== ''));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new UserError(
      'bad-input',
      `The list cannot be read as columns: ${inWords(error)}. Nothing was changed. Quotes inside a quoted cell are written twice.`,
    );
  }
}

/** The one that stands most often in the first line, outside of quotes. */
function delimiterOf(text: string): string {
  const first = (
    text
      .replace(/^\uFEFF/, '')
      .trimStart()
      .split(/\r?\n/, 1)[0] ?? ''
  ).replace(/"[^"]*"/g, '');
  const count = (mark: string): number => first.split(mark).length - 1;
  return DELIMITERS.toSorted((a, b) => count(b) - count(a))[0] ?? ',';
}

function inWords({ code, lines }: CsvError & { readonly lines?: number }): string {
  const where = lines === undefined ? '' : ` in line ${lines}`;
  return code === 'CSV_QUOTE_NOT_CLOSED' ? `a quote is not closed${where}` : `quotes stand wrong${where}`;
}
