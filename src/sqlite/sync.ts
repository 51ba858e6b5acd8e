import { closeSync, fsyncSync, openSync } from 'node:fs';

/** Waits until what was written to a file is on the disk. */
export function syncFile(path: string): void {
  sync(path, 'r+');
}

/** Makes the names in a folder survive a power cut. Windows keeps names by itself and cannot open a folder. */
export function syncFolder(path: string): void {
  if (process.platform !== 'win32') sync(path, 'r');
}

function sync(path: string, flags: string): void {
  const handle = openSync(path, flags);
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
