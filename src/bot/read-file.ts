import type { Hand } from './hand.ts';

/** A list or a record is text of some thousand lines; anything beyond this is something else. */
const MOST_TEXT_BYTES = 8 * 1024 * 1024;

/**
 * A handed-over file as text: UTF-8, UTF-16 by its byte-order mark, else Windows-1252, which older spreadsheets write.
 *
 * @throws UserError when the file is gone, larger than 8 MB, or does not arrive.
 */
export async function readText(hand: Hand, fileId: string): Promise<string> {
  return decoded(await readBytes(hand, fileId));
}

/** @throws UserError as `readText` does. */
export async function readBytes(hand: Hand, fileId: string): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  for await (const part of hand.open(hand.file(fileId), { mostBytes: MOST_TEXT_BYTES })) parts.push(part);
  return Buffer.concat(parts);
}

function decoded(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
