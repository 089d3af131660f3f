import { createWriteStream, rmSync, type WriteStream } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { Problem } from '../../problem.ts';
import { syncFolder } from '../sync-folder.ts';

/**
 * Streams to a new file, durable when it returns. One that could not be finished is taken away again.
 *
 * @param failed rejects where the source fails without ending
 * @throws Problem where the file is there already or cannot be written
 */
export async function writeNewFile(
  path: string,
  source: NodeJS.ReadableStream | Iterable<string>,
  failed: Promise<never> | null = null,
): Promise<void> {
  const file = createWriteStream(path, { flags: 'wx', flush: true });
  let isMine = false;
  file.once('open', () => {
    isMine = true;
  });
  try {
    const written = pipeline(source, file);
    await (failed === null ? written : Promise.race([written, failed]));
    syncFolder(dirname(resolve(path)));
  } catch (error) {
    await closed(file);
    if (isMine) rmSync(path, { force: true });
    throw unwritten(path, error);
  }
}

/** Whatever else is wrong with it by now. */
async function closed(file: WriteStream): Promise<void> {
  if (file.closed) return;
  await new Promise<void>((resolveClosed) => {
    file.on('error', () => {});
    file.once('close', resolveClosed);
    file.destroy();
  });
}

function unwritten(path: string, error: unknown): unknown {
  const { code, message, syscall } = error as NodeJS.ErrnoException;
  if (error instanceof Problem || syscall === undefined) return error;
  if (code === 'EEXIST')
    return new Problem('the file is there already', {
      where: path,
      next: 'It was left as it is. Give another name.',
    });
  return new Problem(`the file cannot be written: ${message}`, {
    where: path,
    next: 'Give a path in a folder you may write to, on a disk with room for the history.',
  });
}
