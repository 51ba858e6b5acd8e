import type { Attachment } from 'discord.js';
import { type FileSource, fileGone } from '../bot/file-source.ts';
import type { Timer } from '../core/clock.ts';
import type { GivenFile } from '../core/given-file.ts';
import { UserError } from '../core/user-error.ts';

/** What the platform says of an attachment: all of it comes from the interaction or message itself. */
export type Attached = Pick<Attachment, 'id' | 'name' | 'size' | 'contentType' | 'url'>;

/** The files of the interactions and messages of late, and how to read them. */
export interface FileShelf extends FileSource {
  put(attached: Attached): GivenFile;
}

export interface FileShelfParts {
  readonly timer: Timer;
  /** Base address of the bot API; absent for the platform itself. Its own origin may hand files over too. */
  readonly api?: string;
  /** Asks over HTTP; the runtime's own unless a test says otherwise. */
  readonly fetch?: typeof globalThis.fetch;
}

/** The platform's stores of attachments (its reference on uploading files). */
const STORES: ReadonlySet<string> = new Set(['cdn.discordapp.com', 'media.discordapp.net']);

/** Addresses kept at a time; the platform's own expire within about a day. */
const KEPT = 500;

/** How long a store may be silent, and how long one file may take as a whole. */
const SILENCE_MS = 20_000;
const WHOLE_MS = 600_000;

/** A file's address stays in this room: what goes on into the bot is plain data, and the address expires anyway. */
export function openFileShelf({ timer, api, fetch = globalThis.fetch }: FileShelfParts): FileShelf {
  const shelf = new Map<string, { readonly file: GivenFile; readonly url: string }>();
  const ownOrigin = api === undefined ? undefined : new URL(api).origin;
  return {
    put({ id, name, size, contentType, url }) {
      const file = { id, name, bytes: size, mime: mimeOf(contentType) };
      shelf.delete(id);
      shelf.set(id, { file, url });
      const [eldest] = shelf.keys();
      if (shelf.size > KEPT && eldest !== undefined) shelf.delete(eldest);
      return file;
    },
    find: (id) => shelf.get(id)?.file,
    async *open(file, { mostBytes }) {
      const kept = shelf.get(file.id);
      if (kept === undefined) throw fileGone(file.name);
      if (!trusted(kept.url, ownOrigin)) {
        throw new UserError(
          'bad-input',
          `"${file.name}" does not lie with the platform, so it was not opened. Attach the file itself.`,
        );
      }
      if (kept.file.bytes > mostBytes) throw tooLarge(file.name, kept.file.bytes, mostBytes);
      const given = bytesOf(kept.url, file.name, timer, fetch);
      let read = 0;
      for await (const bytes of given) {
        read += bytes.byteLength;
        if (read > mostBytes) throw tooLarge(file.name, read, mostBytes);
        yield bytes;
      }
    },
  };
}

const mimeOf = (contentType: string | null): string =>
  (contentType ?? '').split(';')[0]?.trim().toLowerCase() ?? '';

function trusted(address: string, ownOrigin: string | undefined): boolean {
  const url = URL.parse(address);
  if (url === null || url.username !== '' || url.password !== '') return false;
  if (ownOrigin !== undefined && url.origin === ownOrigin) return true;
  return url.protocol === 'https:' && url.port === '' && STORES.has(url.hostname);
}

/** Reads an address as a stream: no redirects, and an end to the patience with it. */
async function* bytesOf(
  url: string,
  name: string,
  timer: Timer,
  fetch: typeof globalThis.fetch,
): AsyncGenerator<Uint8Array> {
  const abort = new AbortController();
  const late = timer.after(WHOLE_MS, () => abort.abort());
  const patient = async <Value>(work: Promise<Value>): Promise<Value> => {
    const stop = timer.after(SILENCE_MS, () => abort.abort());
    try {
      return await work;
    } catch (cause) {
      throw notArriving(name, cause);
    } finally {
      stop();
    }
  };
  try {
    const response = await patient(fetch(url, { redirect: 'error', signal: abort.signal }));
    if (response.status === 403 || response.status === 404 || response.status === 410) throw fileGone(name);
    if (!response.ok || response.body === null) throw notArriving(name, response.status);
    const reader = response.body.getReader();
    for (let next = await patient(reader.read()); !next.done; next = await patient(reader.read())) {
      yield next.value;
    }
  } finally {
    late();
    // whoever stops reading early lets the rest go
    abort.abort();
  }
}

function notArriving(name: string, cause: unknown): Error {
  return Object.assign(
    new UserError(
      'not-now',
      `"${name}" did not arrive: the platform's file store did not hand it over. Nothing was changed. Try once more.`,
    ),
    { cause },
  );
}

function tooLarge(name: string, bytes: number, mostBytes: number): UserError {
  const megabytes = (count: number): string => `${Math.ceil(count / 100_000) / 10} MB`;
  return new UserError(
    'out-of-range',
    `"${name}" has ${megabytes(bytes)}; at most ${megabytes(mostBytes)} are read. Nothing was changed. Cut it, or pack it with gzip.`,
  );
}
