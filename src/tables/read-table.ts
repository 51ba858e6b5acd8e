import type { z } from 'zod';

/**
 * Checks a table from data/ and hands it out typed.
 *
 * @throws Error naming the file and the first row that is wrong, so that the start stops on it.
 */
export function readTable<Schema extends z.ZodType>(
  file: string,
  schema: Schema,
  raw: unknown,
): z.output<Schema> {
  const read = schema.safeParse(raw);
  if (read.success) return read.data;
  const wrong = read.error.issues[0];
  const where = wrong === undefined ? '' : ` at ${wrong.path.join('.')}: ${wrong.message}`;
  throw new Error(`data/${file}${where}`);
}

/** @throws Error naming the file and the first id that stands twice. */
export function refuseTwins(file: string, ids: readonly string[]): void {
  const seen = new Set<string>();
  for (const id of ids) {
    if (seen.has(id)) throw new Error(`data/${file}: ${id} stands twice`);
    seen.add(id);
  }
}
