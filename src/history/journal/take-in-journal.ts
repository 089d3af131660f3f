import {
  closeSync,
  existsSync,
  fstatSync,
  fsyncSync,
  openSync,
  readSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { withFileProblems } from '../file-problem.ts';
import { newId } from '../new-id.ts';
import { syncFolder } from '../sync-folder.ts';
import { appendToJournal, readJournal } from './journal-file.ts';
import { journalLine } from './journal-line.ts';
import { readStaged } from './staging.ts';

const CHUNK_BYTES = 1024 * 1024;

/**
 * Puts a journal that holds the old lines and the staged ones in the place of the old one, in one step. Other programs
 * follow the file by its name; what they add to the old one until they notice is carried over.
 */
export function takeInJournal(path: string, staged: string, entries: number): void {
  const grown = `${path}.${newId()}.part`;
  withFileProblems(path, () => {
    const old = existsSync(path) ? openSync(path, 'r') : null;
    try {
      const copied = writeGrown(grown, old, readStagedLines(staged, entries));
      renameSync(grown, path);
      syncFolder(dirname(path));
      if (old === null) return;
      for (const { entry } of readJournal(old, path, copied))
        while (!appendToJournal(path, [entry]));
    } finally {
      rmSync(grown, { force: true });
      if (old !== null) closeSync(old);
    }
  });
}

function* readStagedLines(staged: string, entries: number): Iterable<string> {
  for (const entry of readStaged(staged, entries)) yield journalLine(entry);
}

/** @returns bytes of the old file that were copied, up to the end of its last finished line */
function writeGrown(grown: string, old: number | null, lines: Iterable<string>): number {
  const fd = openSync(grown, 'wx', old === null ? 0o666 : fstatSync(old).mode);
  try {
    const copied = old === null ? 0 : copyLines(old, fd);
    for (const line of lines) writeAll(fd, Buffer.from(line));
    fsyncSync(fd);
    return copied;
  } finally {
    closeSync(fd);
  }
}

function copyLines(from: number, to: number): number {
  const chunk = Buffer.alloc(CHUNK_BYTES);
  let copied = 0;
  let pending: Buffer = Buffer.alloc(0);
  for (let at = 0; ; ) {
    const count = readSync(from, chunk, 0, CHUNK_BYTES, at);
    if (count === 0) return copied;
    at += count;
    const bytes = Buffer.concat([pending, chunk.subarray(0, count)]);
    const end = bytes.lastIndexOf(10) + 1;
    writeAll(to, bytes.subarray(0, end));
    copied += end;
    pending = Buffer.from(bytes.subarray(end));
  }
}

function writeAll(fd: number, bytes: Uint8Array): void {
  for (let at = 0; at < bytes.length; ) at += writeSync(fd, bytes, at);
}
