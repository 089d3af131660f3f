import { randomBytes } from 'node:crypto';
import {
  chmod,
  constants,
  copyFile,
  link,
  mkdir,
  open,
  readFile,
  realpath,
  rename,
  rm,
  stat,
} from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';

/** What came of writing: `changed` where the file is not what was last read or written. Nothing is overwritten then. */
type WriteOutcome = 'written' | 'changed';

/**
 * Writes a file so that it is there whole or not at all, and only over the text that it is known to hold.
 *
 * @param known what the file held when it was last read or written; null for a file that must not be there yet
 * @throws what the file system says
 */
export async function writeOver(
  path: string,
  text: string,
  known: string | null,
): Promise<WriteOutcome> {
  await mkdir(dirname(path), { recursive: true });
  // Where the name is a link, the file behind it is the one to change.
  const place = known === null ? path : await realpath(path).catch(() => path);
  const fresh = join(dirname(place), `.${basename(place)}.${randomBytes(4).toString('hex')}.tmp`);
  try {
    await writeWhole(fresh, text);
    if (known === null) return await linkNew(fresh, place);
    const found = await readFile(place, 'utf8').catch(() => null);
    if (found === null) return await linkNew(fresh, place);
    if (found !== known) return 'changed';
    // Some memory sticks know no modes.
    await chmod(fresh, (await stat(place)).mode).catch(() => {});
    await rename(fresh, place);
    return 'written';
  } finally {
    await rm(fresh, { force: true });
  }
}

async function writeWhole(path: string, text: string): Promise<void> {
  const file = await open(path, 'wx');
  try {
    await file.writeFile(text);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** A link is made only where there is no file of that name; on memory sticks that know none the file is copied. */
async function linkNew(fresh: string, place: string): Promise<WriteOutcome> {
  const isTaken = (error: unknown): boolean => (error as NodeJS.ErrnoException).code === 'EEXIST';
  try {
    await link(fresh, place).catch((error) => {
      if (isTaken(error)) throw error;
      return copyFile(fresh, place, constants.COPYFILE_EXCL);
    });
    return 'written';
  } catch (error) {
    if (isTaken(error)) return 'changed';
    throw error;
  }
}

/** The same name with a number, the first that is free: `my-corner-2.yaml`. */
export async function freeName(path: string): Promise<string> {
  const ending = extname(path);
  const stem = path.slice(0, path.length - ending.length);
  for (let number = 2; ; number++) {
    const name = `${stem}-${number}${ending}`;
    if (!(await exists(name))) return name;
  }
}

export async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}
