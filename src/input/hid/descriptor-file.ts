import { type FileHandle, open } from 'node:fs/promises';
import { Problem } from '../../problem.ts';
import { hexTextOrBytes } from './hex-text.ts';

/** Far above any commented listing of a descriptor; below what a mistaken path could drag in. */
const MAX_FILE_BYTES = 1 << 20;

/**
 * The report descriptor in a file of hex text or of raw bytes.
 * @throws Problem for a file that cannot be read, that is too long, or that is text but not hex
 */
export async function readDescriptorFile(path: string): Promise<Uint8Array> {
  return hexTextOrBytes(await readBounded(path), path);
}

async function readBounded(path: string): Promise<Uint8Array> {
  let file: FileHandle | null = null;
  try {
    file = await open(path, 'r');
    return await readAll(file, path);
  } catch (error) {
    throw error instanceof Problem ? error : unreadable(error as NodeJS.ErrnoException, path);
  } finally {
    await file?.close();
  }
}

/** Reads piece by piece, because the size of a pipe or a device says nothing. */
async function readAll(file: FileHandle, path: string): Promise<Uint8Array> {
  const buffer = new Uint8Array(MAX_FILE_BYTES + 1);
  let length = 0;
  for (;;) {
    const { bytesRead } = await file.read(buffer, length, buffer.length - length, null);
    length += bytesRead;
    if (bytesRead === 0) return buffer.subarray(0, length);
    if (length > MAX_FILE_BYTES) throw tooLong(path);
  }
}

function tooLong(path: string): Problem {
  return new Problem(`longer than ${MAX_FILE_BYTES} bytes`, {
    where: path,
    next: 'Give the file of one report descriptor, as hex text or as its bytes.',
  });
}

function unreadable(error: NodeJS.ErrnoException, path: string): Problem {
  const reasons: Record<string, string> = {
    ENOENT: 'there is no such file',
    EISDIR: 'this is a folder',
    EACCES: 'no permission to read',
  };
  return new Problem(reasons[error.code ?? ''] ?? `cannot be read (${error.code})`, {
    where: path,
    next: 'Check the path given with --descriptor.',
  });
}
