import { closeSync, fsyncSync, openSync, rmSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { Problem } from '../problem.ts';
import { syncFolder } from './sync-folder.ts';

/**
 * Makes a new empty file, lets `fill` write it, and syncs it. A file that could not be finished is taken away again.
 * @throws Problem where a file is there already or the new one cannot be made or filled
 */
export function writeBackup(path: string, fill: () => void): void {
  makeEmpty(path);
  try {
    fill();
    const fd = openSync(path, 'r+');
    try {
      fsyncSync(fd);
    } finally {
      closeSync(fd);
    }
    syncFolder(dirname(resolve(path)));
  } catch (error) {
    rmSync(path, { force: true });
    throw unwritten(path, error);
  }
}

function makeEmpty(path: string): void {
  try {
    closeSync(openSync(path, 'wx'));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw unwritten(path, error);
    throw new Problem('the file is there already', {
      where: path,
      next: 'It was left as it is. Give another name.',
    });
  }
}

function unwritten(path: string, error: unknown): Problem {
  return new Problem(`the backup cannot be written: ${(error as Error).message}`, {
    where: path,
    next: 'Give a path in a folder you may write to, on a disk with room for the history.',
  });
}
