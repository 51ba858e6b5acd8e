import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { DiskEvent } from './disk-recording.ts';

/**
 * What a disk makes of writes that nobody has waited for when the power goes: loses them all, has them all, or has some
 * of them, in any order, torn at its 512-byte sectors. Names of new and removed files wait for a sync of their folder;
 * of those a beginning survives, as file systems journal them in order.
 */
export type Fate = 'lost' | 'kept' | 'torn';

const SECTOR_BYTES = 512;

type DataEvent = Extract<DiskEvent, { kind: 'write' | 'truncate' }>;
type NameEvent = Extract<DiskEvent, { kind: 'create' | 'remove' }>;

/** One file's bytes: those on the disk for sure, and what was asked since. */
interface Content {
  bytes: Buffer;
  waiting: DataEvent[];
}

/** A disk that is fed events one by one and can be cut off at any moment. */
export interface CutDisk {
  feed(event: DiskEvent): void;
  /** Writes what a cut now may leave into an empty folder. `chance` gives numbers from 0 up to 1. */
  cut(fate: Fate, chance: () => number, into: string): void;
}

export function cutDisk(folder: string): CutDisk {
  /** By name, as the running program sees them, and as they are on the disk for sure. */
  const seen = new Map<string, Content>();
  let sure = new Map<string, Content>();
  let names: { readonly event: NameEvent; readonly content: Content }[] = [];

  function contentAt(path: string): Content {
    const content = seen.get(path);
    if (content === undefined) throw new Error(`the recording uses ${path} before it is there`);
    return content;
  }

  return {
    feed(event) {
      switch (event.kind) {
        case 'ack':
          return;
        case 'create': {
          if (seen.has(event.path)) return;
          const content = { bytes: Buffer.alloc(0), waiting: [] };
          seen.set(event.path, content);
          names.push({ event, content });
          return;
        }
        case 'remove':
          if (!seen.has(event.path)) return; // shared memory was never followed
          names.push({ event, content: contentAt(event.path) });
          seen.delete(event.path);
          return;
        case 'write':
        case 'truncate':
          contentAt(event.path).waiting.push(event);
          return;
        case 'sync':
          if (event.path === folder) {
            sure = withNames(sure, names);
            names = [];
            return;
          }
          settle(contentAt(event.path));
          return;
      }
    },
    cut(fate, chance, into) {
      rmSync(into, { recursive: true, force: true });
      mkdirSync(into, { recursive: true });
      const share = { lost: 0, kept: 1, torn: chance() }[fate];
      for (const [path, content] of withNames(sure, names.slice(0, Math.round(names.length * share)))) {
        writeFileSync(join(into, basename(path)), survivorsOf(content, fate, chance));
      }
    },
  };
}

function withNames(
  sure: ReadonlyMap<string, Content>,
  names: readonly { readonly event: NameEvent; readonly content: Content }[],
): Map<string, Content> {
  const files = new Map(sure);
  for (const { event, content } of names) {
    if (event.kind === 'create') files.set(event.path, content);
    else files.delete(event.path);
  }
  return files;
}

function settle(content: Content): void {
  content.bytes = content.waiting.reduce(apply, content.bytes);
  content.waiting = [];
}

function survivorsOf({ bytes, waiting }: Content, fate: Fate, chance: () => number): Buffer {
  if (fate === 'lost') return bytes;
  if (fate === 'kept') return waiting.reduce(apply, bytes);
  return waiting.flatMap((event) => torn(event, chance)).reduce(apply, bytes);
}

function torn(event: DataEvent, chance: () => number): readonly DataEvent[] {
  if (event.kind === 'truncate') return chance() < 0.5 ? [event] : [];
  const sectors: DataEvent[] = [];
  for (let from = 0; from < event.bytes.length; ) {
    const to = Math.min(event.bytes.length, from + SECTOR_BYTES - ((event.at + from) % SECTOR_BYTES));
    if (chance() < 0.5)
      sectors.push({ ...event, at: event.at + from, bytes: event.bytes.subarray(from, to) });
    from = to;
  }
  return sectors;
}

function apply(bytes: Buffer, event: DataEvent): Buffer {
  const size = event.kind === 'truncate' ? event.size : Math.max(bytes.length, event.at + event.bytes.length);
  const next = Buffer.alloc(size);
  bytes.copy(next);
  if (event.kind === 'write') event.bytes.copy(next, event.at);
  return next;
}
