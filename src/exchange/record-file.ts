import { gunzipSync, gzipSync } from 'node:zlib';
import { z } from 'zod';
import { UserError } from '../core/user-error.ts';
import type { WholeRecord } from '../sqlite/whole-record.ts';

/** Names the kind of file, so that any other JSON is told apart from it. */
const KIND = 'chargehand-record';

export const RecordFile = z.object({
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

/** Beyond this a record is packed, so that it goes through where a message may carry 10 MB. */
const PACKED_FROM_BYTES = 5_000_000;

/** A record larger than any crew's, unpacked; more is something else that calls itself one. */
const MOST_BYTES = 256 * 1024 * 1024;

/** The record as a file to keep, packed with gzip where it is long. */
export function packRecordFile(
  name: string,
  text: string,
): { readonly name: string; readonly bytes: Uint8Array } {
  const bytes = Buffer.from(text);
  if (bytes.length < PACKED_FROM_BYTES) return { name: `${name}.json`, bytes };
  return { name: `${name}.json.gz`, bytes: gzipSync(bytes) };
}

/**
 * Reads a record back, packed or plain.
 *
 * @throws UserError 'bad-input' when it is no record of ours.
 */
export function readRecordFile(bytes: Uint8Array): RecordFile {
  const read = RecordFile.safeParse(jsonIn(unpacked(bytes)));
  if (read.success) return read.data;
  throw new UserError(
    'bad-input',
    'That file is not a record written by /export json. Nothing was changed. Attach the .json or .json.gz file as it was exported.',
  );
}

function unpacked(bytes: Uint8Array): string {
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return new TextDecoder().decode(bytes);
  try {
    return gunzipSync(bytes, { maxOutputLength: MOST_BYTES }).toString('utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error) return ''; // zlib's own errors carry one: it is no whole gzip
    throw error;
  }
}

function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

/** Words for what a record holds, by table; what the crew would count, not every row. */
const COUNTED: readonly (readonly [table: string, one: string, more: string])[] = [
  ['build', 'build', 'builds'],
  ['orders', 'order', 'orders'],
  ['part', 'part', 'parts'],
  ['job', 'job', 'jobs'],
  ['measure', 'temporary measure', 'temporary measures'],
  ['reading', 'reading', 'readings'],
  ['port', 'port', 'ports'],
];

/** "1 build, 12 orders, 40 parts"; what there is none of is left out. */
export function countsIn(tables: RecordFile['tables'] | WholeRecord['tables']): string {
  const counts = COUNTED.flatMap(([table, one, more]) => {
    const count = tables[table]?.length ?? 0;
    return count === 0 ? [] : [`${count} ${count === 1 ? one : more}`];
  });
  return counts.length === 0 ? 'nothing' : counts.join(', ');
}

/**
 * The copy with its build given to this channel, where it holds just one and that one's own channel is not this: a copy
 * carried to another server names channels nobody has there. `bound` says of each build whether it is this channel's.
 */
export function boundTo(
  file: RecordFile,
  channelId: string,
): {
  readonly file: RecordFile;
  readonly bound: readonly { readonly build: string; readonly here: boolean }[];
} {
  const builds = file.tables['build'] ?? [];
  const moved: RecordFile['tables'][string] =
    builds.length === 1 ? builds.map((build) => ({ ...build, channel_id: channelId })) : builds;
  return {
    file: { ...file, tables: { ...file.tables, build: moved } },
    bound: moved.map((build) => ({
      build: String(build['name'] ?? 'A build'),
      here: build['channel_id'] === channelId,
    })),
  };
}
