import { writeFile } from 'node:fs/promises';
import { Problem } from '../problem.ts';

/**
 * Writes a file that must not be there yet.
 *
 * @param noun what it holds, for messages
 * @throws Problem where it is there already or cannot be written
 */
export async function writeNewFile(path: string, content: string, noun: string): Promise<void> {
  try {
    await writeFile(path, content, { flag: 'wx' });
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    throw code === 'EEXIST'
      ? new Problem('the file is there already', { where: path, next: 'Give another name.' })
      : new Problem(`the ${noun} cannot be written: ${message}`, {
          where: path,
          next: 'Give a path in a folder you may write to.',
        });
  }
}
