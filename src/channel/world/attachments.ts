import type { Upload } from '../contract.ts';
import { refuse } from '../wire/api-error.ts';
import { isArray, type JsonObject, objectsIn, textOf } from '../wire/json.ts';
import { imageSize } from './image-size.ts';
import type { Attachment } from './things.ts';
import type { World } from './world.ts';

/** A file of a request: `index` is the n of its part `files[n]`. */
export interface IndexedUpload extends Upload {
  readonly index: string;
}

/** Attachments as they will stand, and the bytes yet to be kept. */
export interface FilePlan {
  readonly attachments: readonly Attachment[];
  keep(): void;
}

/** A name without what separates paths or cannot be shown. */
export const safeName = (name: string): string =>
  [...name.toWellFormed()].map((char) => (/[\s/\\:"<>|?*]/.test(char) || char < ' ' ? '_' : char)).join('') ||
  'file';

/** @throws ApiError 50045 for a file over the limit. */
export function checkSizes(uploads: readonly Upload[], limitBytes: number): void {
  if (uploads.some((file) => file.bytes.byteLength > limitBytes)) throw refuse.fileTooLarge();
}

/**
 * Attachments after a create or an edit: `attachments` names everything to keep and describes what is new; files
 * without description are added at the end; without the list, everything stays.
 */
export function planFiles(
  world: World,
  body: JsonObject,
  uploads: readonly IndexedUpload[],
  before: readonly Attachment[] = [],
): FilePlan {
  const listed = body['attachments'];
  const described = new Map(objectsIn(listed).map((entry) => [String(entry['id']), entry]));
  const kept = isArray(listed) ? before.filter((file) => described.has(file.id)) : before;
  const added = uploads.map((upload) => ({
    upload,
    attachment: attachmentOf(world.newId(), upload, described.get(upload.index)),
  }));
  return {
    attachments: [...kept, ...added.map(({ attachment }) => attachment)],
    keep: () => {
      for (const { upload, attachment } of added) {
        world.storage.saveFile({
          id: attachment.id,
          name: attachment.filename,
          type: attachment.type,
          bytes: upload.bytes,
        });
      }
    },
  };
}

export function attachmentOf(id: string, upload: Upload, described: JsonObject = {}): Attachment {
  const description = textOf(described['description']);
  const title = textOf(described['title']);
  return {
    id,
    filename: safeName(textOf(described['filename']) ?? upload.name),
    size: upload.bytes.byteLength,
    // Without parameters: what is sent back as a header must be nothing but a type.
    type: /^[\w.+-]+\/[\w.+-]+/.exec(upload.type)?.[0] ?? 'application/octet-stream',
    ...imageSize(upload.bytes),
    ...(description === undefined ? {} : { description }),
    ...(title === undefined ? {} : { title }),
  };
}
