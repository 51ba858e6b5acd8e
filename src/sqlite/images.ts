import type { RecordedTable } from './recorded-tables.ts';

/**
 * A row as a JSON object, one key per column, written and read back by SQLite alone: a trip through JavaScript numbers
 * would round integers past 2^53. A BLOB, which JSON lacks, stands as `{"hex": "…"}`; nothing else is an object.
 * Names are plain words, which `recordedTables` has made sure of.
 */
export function imageOf(table: RecordedTable, row: string): string {
  const pairs = table.columns.map((column) => {
    const value = `${row}."${column}"`;
    return `'${column}', CASE typeof(${value}) WHEN 'blob' THEN json_object('hex', hex(${value})) ELSE json(json_quote(${value})) END`;
  });
  return `json_object(${pairs.join(', ')})`;
}

/** The value of one column out of the image bound as `@image`. */
export function valueIn(column: string): string {
  const at = `'$.${column}'`;
  return `iif(json_type(@image, ${at}) = 'object', unhex(json_extract(@image, '$.${column}.hex')), json_extract(@image, ${at}))`;
}

/**
 * Whether the image `current` of a row still has every value of `image`; two NULLs, for no row, agree. Columns that only
 * one of them has, because a migration came between, are not compared.
 */
export function stillAs(current: string, image: string): string {
  return `(${current} IS ${image} OR (${current} IS NOT NULL AND ${image} IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM json_each(${image}) was JOIN json_each(${current}) now ON now.key = was.key
    WHERE now.type IS NOT was.type OR now.value IS NOT was.value)))`;
}
