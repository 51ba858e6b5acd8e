import { z } from 'zod';
import { UserError } from '../core/user-error.ts';
import type { WholeRecord } from '../sqlite/whole-record.ts';

/** Names the kind of file, so that any other JSON is told apart from it. */
const KIND = 'chargehand-record';

const RecordFile = z.object({
  kind: z.literal(KIND),
  madeOn: z.string(),
  team: z.string(),
  step: z.string(),
  tables: z.record(z.string(), z.array(z.record(z.string(), z.union([z.string(), z.number(), z.null()])))),
});

/** A copy of a team's record as it is carried in a file. */
export type RecordFile = z.infer<typeof RecordFile>;

/** Writes the record as one JSON text: everything but the history, in an order that does not change by itself. */
export function writeRecordFile(
  whole: WholeRecord,
  made: { readonly on: string; readonly team: string },
): string {
  return `${JSON.stringify({ kind: KIND, madeOn: made.on, team: made.team, ...whole }, null, 1)}\n`;
}

/** @throws UserError 'bad-input' when it is no record of ours. */
export function readRecordFile(text: string): RecordFile {
  const read = RecordFile.safeParse(jsonIn(text));
  if (read.success) return read.data;
  throw new UserError(
    'bad-input',
    'That file is not a record written by /record json. Nothing was changed. Attach the .json file as it was exported.',
  );
}

function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}
