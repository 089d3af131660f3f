import { closeSync, fsyncSync, openSync } from 'node:fs';

/** Makes the names in a folder durable, after something was created in it. Systems that cannot do that need not. */
export function syncFolder(path: string): void {
  try {
    const fd = openSync(path, 'r');
    try {
      fsyncSync(fd);
    } finally {
      closeSync(fd);
    }
  } catch {
    // Windows opens no folders; its file systems log such changes themselves
  }
}
