import { mkdirSync, statfsSync } from 'node:fs';
import { StoreProblem } from '../core/store-problem.ts';
import { inPlainWords } from './in-plain-words.ts';

/**
 * File systems whose locks or shared memory SQLite's write-ahead log cannot rely on, by the `f_type` that Linux
 * reports. Source: Linux man-pages, statfs(2), and include/uapi/linux/magic.h (NFS, SMB, CIFS, SMB2, 9P, CEPH, AFS,
 * CODA, FUSE); VBOXSF from fs/vboxsf/super.c. Why: sqlite.org/wal.html, "All processes using a database must be on the
 * same host computer; WAL does not work over a network filesystem".
 */
const UNSAFE: ReadonlyMap<number, string> = new Map([
  [0x6969, 'NFS'],
  [0x517b, 'SMB'],
  [0xff534d42, 'CIFS'],
  [0xfe534d42, 'SMB2'],
  [0x01021997, '9P'],
  [0x00c36400, 'Ceph'],
  [0x5346414f, 'AFS'],
  [0x73757245, 'Coda'],
  [0x65735546, 'FUSE or virtiofs'],
  [0x786f4256, 'a VirtualBox shared folder'],
]);

/** The name of an unsafe file system, or null. Other systems than Linux number theirs differently: null there. */
export function unsafeFileSystem(type: number): string | null {
  return UNSAFE.get(type) ?? null;
}

/**
 * Refuses a folder on a network or shared disk. Only Linux tells the kind of file system in a fixed number; elsewhere
 * the operator's guide has to say it.
 * @throws StoreProblem 'network-disk'
 */
export function requireLocalDisk(folder: string, typeOf = (path: string) => statfsSync(path).type): void {
  if (process.platform !== 'linux') return;
  const kind = unsafeFileSystem(typeOf(folder));
  if (kind === null) return;
  throw new StoreProblem(
    'network-disk',
    `The records cannot live in ${folder}: it is on ${kind}, where a saved record can be lost or damaged. ` +
      'Nothing was written. Choose a folder on a disk of this machine (in a container: a named volume).',
  );
}

/** Makes a folder for records if there is none, on a disk that is fit for them. */
export function prepareFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw inPlainWords(error);
  }
  requireLocalDisk(folder);
}
