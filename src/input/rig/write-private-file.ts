import { mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { Problem } from '../../problem.ts';

/**
 * Writes a file whole or not at all: to a neighbour first, then renamed over it. Only the user may read file (0600)
 * and folder (0700, where it has to be made).
 * @throws Problem where the folder cannot be written.
 */
export async function writePrivateFile(file: string, text: string): Promise<void> {
  const draft = `${file}.${process.pid}.tmp`;
  try {
    await mkdir(dirname(file), { recursive: true, mode: 0o700 });
    await writeDurably(draft, text);
    await rename(draft, file);
  } catch (error) {
    // what could not be made cannot always be removed; why it could not be made is what counts
    await rm(draft, { force: true }).catch(() => {});
    throw new Problem(`it cannot be written: ${(error as Error).message}`, {
      where: file,
      next: 'Make the folder writable, or choose another with --data-dir.',
    });
  }
}

async function writeDurably(file: string, text: string): Promise<void> {
  const handle = await open(file, 'w', 0o600);
  try {
    await handle.writeFile(text);
    await handle.sync();
  } finally {
    await handle.close();
  }
}
