import { readFile, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { Upload, WireMessage } from '../channel/contract.ts';
import { UserError } from '../core/user-error.ts';

/**
 * A file of this machine as somebody would attach it.
 *
 * @throws UserError when there is none, or it may not be read.
 */
export async function uploadOf(path: string): Promise<Upload> {
  try {
    return { name: basename(path), type: 'application/octet-stream', bytes: await readFile(path) };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : undefined;
    if (code === undefined) throw error;
    throw new UserError('not-found', `"${path}" cannot be read (${code}). Nothing was attached.`);
  }
}

/** Writes the files and pictures of a message into a folder, under the names they have. */
export async function keepFiles({ attachments }: WireMessage, folder: string): Promise<void> {
  for (const { filename, url } of attachments) {
    const answer = await fetch(url);
    if (!answer.ok) throw new Error(`${filename} is not there any more: ${answer.status}`);
    await writeFile(join(folder, basename(filename)), await answer.bytes());
  }
}
