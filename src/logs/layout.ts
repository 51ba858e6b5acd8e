import { parse } from 'csv-parse';
import { UserError } from '../core/user-error.ts';
import { isReading } from './cell.ts';
import { wordsOf } from './header-name.ts';
import { isUnit } from './unit-words.ts';
import { RULES } from './words.ts';

/** How a log is laid out. */
export interface Layout {
  readonly delimiter: string;
  readonly decimalComma: boolean;
  /** Names of the columns, as they stand. */
  readonly names: readonly string[];
  /** Units from a row of their own; as many as names, empty where there is none. */
  readonly units: readonly string[];
  /** Where in the text the readings begin. */
  readonly bodyAt: number;
  /** The first rows of readings. */
  readonly sample: readonly (readonly string[])[];
}

const DELIMITERS = [';', '\t', ',', '|'] as const;
const MOST_HEAD_LINES = 250;
const COMMENT = /^\s*(#|\/\/|%|;;|'|--|!)/;

interface Line {
  readonly text: string;
  readonly at: number;
  readonly end: number;
}

/**
 * Finds the header, the units and the first readings in the beginning of a log, whatever stands before them.
 *
 * @throws UserError when it holds no columns of numbers under names.
 */
export async function layoutOf(head: string): Promise<Layout> {
  const lines = linesOf(head).slice(0, MOST_HEAD_LINES);
  let best: { readonly score: number; readonly layout: Layout } | undefined;
  for (const delimiter of DELIMITERS) {
    const rows = await Promise.all(
      lines.map(async (line) => ({ line, cells: await split(line.text, delimiter) })),
    );
    const found = tableIn(rows, delimiter);
    if (found !== undefined && (best === undefined || found.score > best.score)) best = found;
  }
  if (best !== undefined) return best.layout;
  throw new UserError(
    'bad-input',
    'There are no columns of numbers under a row of names in that file. Export the log as CSV with its header, and attach it again. Nothing was changed.',
  );
}

function linesOf(head: string): readonly Line[] {
  const lines: Line[] = [];
  let at = 0;
  for (const found of head.matchAll(/\r\n|\n|\r/g)) {
    lines.push({ text: head.slice(at, found.index), at, end: found.index + found[0].length });
    at = found.index + found[0].length;
  }
  if (at < head.length) lines.push({ text: head.slice(at), at, end: head.length });
  return lines;
}

interface Row {
  readonly line: Line;
  readonly cells: readonly string[];
}

const isData = (cells: readonly string[], width: number): boolean => {
  const filled = cells.filter((cell) => cell.trim() !== '');
  const readings = filled.filter(isReading).length;
  return (
    filled.length >= 2 &&
    cells.length >= width - 2 &&
    readings >= 0.6 * filled.length &&
    filled.some((cell) => /\d/.test(cell))
  );
};

/** The first run of readings that are all as wide as one another, and the names above it. */
function tableIn(
  rows: readonly Row[],
  delimiter: string,
): { readonly score: number; readonly layout: Layout } | undefined {
  const widths = new Map<number, number>();
  for (const { cells } of rows) {
    if (isData(cells, cells.length)) widths.set(cells.length, (widths.get(cells.length) ?? 0) + 1);
  }
  const [width = 0, many = 0] =
    [...widths].sort((a, b) => b[1] * Math.min(8, b[0]) - a[1] * Math.min(8, a[0]))[0] ?? [];
  if (width < 2 || many < 2) return undefined;
  const first = rows.findIndex(
    (row, index) =>
      isData(row.cells, width) &&
      row.cells.length <= width + 1 &&
      rows.slice(index, index + 8).filter(({ cells }) => isData(cells, width)).length >= Math.min(2, many),
  );
  const above = rows
    .slice(0, first)
    .map((row, index) => ({ ...row, index }))
    .filter(({ line }) => line.text.trim() !== '' && line.text.replaceAll(delimiter, '').trim() !== '')
    .reverse();
  const header = headerAmong(above, width);
  if (header === undefined) return undefined;
  const data = rows.slice(first).filter(({ cells }) => isData(cells, width));
  const begin = rows[first];
  if (begin === undefined) return undefined;
  const sample = data.slice(0, 200).map(({ cells }) => cells);
  const layout: Layout = {
    delimiter,
    decimalComma: commaIsDecimal(sample, delimiter),
    ...header,
    bodyAt: begin.line.at,
    sample,
  };
  return { score: many * Math.min(width, 40) + (header.names.length === width ? 1 : 0), layout };
}

/** The names, and the units between them and the readings if there are any. `above` is from below upwards. */
function headerAmong(above: readonly Row[], width: number): Pick<Layout, 'names' | 'units'> | undefined {
  let units: readonly string[] = [];
  for (const { line, cells } of above.slice(0, 12)) {
    const bare = COMMENT.test(line.text) ? uncommented(cells) : cells;
    const filled = bare.filter((cell) => cell.trim() !== '');
    if (bare.length < Math.max(2, width - 2) || filled.length < 2) continue;
    const ofUnits = filled.filter(isUnit);
    if (units.length === 0 && ofUnits.length >= 0.6 * filled.length && !filled.some(isName)) {
      units = bare;
      continue;
    }
    if (filled.filter((cell) => /\p{L}|λ/u.test(cell)).length < 0.6 * filled.length) continue;
    return named(bare, units);
  }
  // names that are units as well, `rpm` and `lambda`, with nothing above them
  return units.length > 0 && units.some((cell) => /\p{L}{3}|λ/u.test(cell)) ? named(units, []) : undefined;
}

const named = (names: readonly string[], units: readonly string[]): Pick<Layout, 'names' | 'units'> => ({
  names: names.map((cell) => cell.trim()),
  units: names.map((_, index) => units[index]?.trim() ?? ''),
});

/** A word of the trade that is no unit stands in a row of names, and never in one of units. */
function isName(cell: string): boolean {
  if (isUnit(cell)) return false;
  const words = wordsOf(cell);
  return RULES.some((rule) => rule.units === undefined && rule.all.every((each) => each.test(words)));
}

const uncommented = (cells: readonly string[]): readonly string[] =>
  cells.map((cell, index) => (index === 0 ? cell.replace(COMMENT, '') : cell));

function commaIsDecimal(sample: readonly (readonly string[])[], delimiter: string): boolean {
  let [commas, dots] = [0, 0];
  for (const cell of sample.slice(0, 100).flat()) {
    if (/^\s*[-+]?\d*,\d+\s*$/.test(cell)) commas++;
    else if (/^\s*[-+]?\d*\.\d+\s*$/.test(cell)) dots++;
  }
  return delimiter !== ',' ? commas > dots : commas > 0 && dots === 0;
}

async function split(line: string, delimiter: string): Promise<readonly string[]> {
  if (!line.includes('"')) return line.split(delimiter);
  const rows: string[][] = [];
  const parser = parse(line, { delimiter, relax_quotes: true, relax_column_count: true });
  try {
    for await (const row of parser) rows.push(row as string[]); // without columns every record is a list of texts
  } catch {
    // a quotation mark that is never closed, in a preamble: the line is then taken as it stands
    return line.split(delimiter);
  }
  return rows[0] ?? [];
}
