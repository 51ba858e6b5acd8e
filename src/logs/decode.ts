import { Readable } from 'node:stream';
import { createGunzip } from 'node:zlib';
import { UserError } from '../core/user-error.ts';

/** A packed file may unfold to this and no more: a small one that unfolds without end is an attack or a mistake. */
const MOST_UNPACKED_BYTES = 400 * 1024 * 1024;

const NOT_TEXT: readonly { readonly begins: readonly number[]; readonly what: string }[] = [
  { begins: [0x50, 0x4b, 0x03, 0x04], what: 'a zip archive or a spreadsheet. Unpack it, or save it as CSV' },
  { begins: [0x25, 0x50, 0x44, 0x46], what: 'a PDF. Export the log as CSV' },
  { begins: [0x89, 0x50, 0x4e, 0x47], what: 'a picture. Export the log as CSV' },
  { begins: [0xff, 0xd8, 0xff], what: 'a picture. Export the log as CSV' },
  { begins: [0x42, 0x5a, 0x68], what: 'packed with bzip2. Pack it with gzip, or not at all' },
  { begins: [0xfd, 0x37, 0x7a, 0x58, 0x5a], what: 'packed with xz. Pack it with gzip, or not at all' },
  { begins: [0x28, 0xb5, 0x2f, 0xfd], what: 'packed with zstd. Pack it with gzip, or not at all' },
  { begins: [0x37, 0x7a, 0xbc, 0xaf], what: 'a 7z archive. Unpack it, or pack it with gzip' },
];

/**
 * The text of a file as it arrives: unpacked when it begins as gzip does, in whichever encoding it is.
 *
 * @throws UserError from the iteration when it is no text, or unfolds without end.
 */
export async function* textOf(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  const { head, rest } = await peek(bytes, 4);
  if (head[0] === 0x1f && head[1] === 0x8b) yield* decoded(unpacked(rest));
  else yield* decoded(rest);
}

async function* unpacked(packed: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const source = Readable.from(packed);
  const gunzip = createGunzip();
  source.on('error', (error) => gunzip.destroy(error));
  let size = 0;
  try {
    for await (const piece of source.pipe(gunzip)) {
      const bytes = piece as Uint8Array; // a gunzip stream hands out nothing else
      size += bytes.byteLength;
      if (size > MOST_UNPACKED_BYTES) {
        throw new UserError(
          'out-of-range',
          'That file unfolds to more than 400 MB. Nothing was changed. Cut the log, and send one drive at a time.',
        );
      }
      yield bytes;
    }
  } catch (error) {
    if (error instanceof Error && 'code' in error && String(error.code).startsWith('Z_')) {
      throw new UserError(
        'bad-input',
        'That file begins as gzip does but cannot be unpacked: it was cut off or damaged on the way. Send it once more.',
      );
    }
    throw error;
  } finally {
    source.destroy();
    gunzip.destroy();
  }
}

async function* decoded(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  const { head, rest } = await peek(bytes, 4096);
  const foreign = NOT_TEXT.find(({ begins }) => begins.every((byte, place) => head[place] === byte));
  if (foreign !== undefined)
    throw new UserError('bad-input', `That file is ${foreign.what}. Nothing was changed.`);
  const decoder = new TextDecoder(encodingOf(head));
  for await (const piece of rest) {
    const text = decoder.decode(piece, { stream: true });
    if (text !== '') yield text;
  }
  const last = decoder.decode();
  if (last !== '') yield last;
}

/** By its mark at the front, else by where zeros stand, else UTF-8 when it is that, else Western European. */
function encodingOf(head: Uint8Array): string {
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  if (head[0] === 0xfe && head[1] === 0xff) return 'utf-16be';
  const zeros = [0, 0];
  head.forEach((byte, place) => {
    if (byte === 0) zeros[place % 2] = (zeros[place % 2] ?? 0) + 1;
  });
  const [even = 0, odd = 0] = zeros;
  if (odd > head.length / 4) return 'utf-16le';
  if (even > head.length / 4) return 'utf-16be';
  if (even + odd > 0) {
    throw new UserError('bad-input', 'That file is no text. Export the log as CSV. Nothing was changed.');
  }
  try {
    // a sign cut in half at the end is no error of the file's
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

/** The first bytes, and all of them once more. */
async function peek(
  bytes: AsyncIterable<Uint8Array>,
  count: number,
): Promise<{ readonly head: Uint8Array; readonly rest: AsyncGenerator<Uint8Array> }> {
  const iterator = bytes[Symbol.asyncIterator]();
  const kept: Uint8Array[] = [];
  let size = 0;
  while (size < count) {
    const next = await iterator.next();
    if (next.done) break;
    kept.push(next.value);
    size += next.value.byteLength;
  }
  const head = new Uint8Array(Math.min(size, count));
  let filled = 0;
  for (const piece of kept) {
    const part = piece.subarray(0, Math.max(0, head.length - filled));
    head.set(part, filled);
    filled += part.length;
  }
  async function* rest(): AsyncGenerator<Uint8Array> {
    try {
      yield* kept;
      for (let next = await iterator.next(); !next.done; next = await iterator.next()) yield next.value;
    } finally {
      await iterator.return?.();
    }
  }
  return { head, rest: rest() };
}
