import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Problem } from '../problem.ts';
import { idOfFile } from '../profile/id-of-file.ts';

/** Where a profile lies: with the program, or with the user's data. */
type ProfileOrigin = 'bundled' | 'own';

/** A file that was found in one of the two folders, not read yet. */
export interface ProfileEntry {
  readonly id: string;
  readonly path: string;
  readonly origin: ProfileOrigin;
}

/** Same place seen from src/commands and from dist/commands. */
const PROFILES = new URL('../../profiles/', import.meta.url);
/** Names of files that may hold a profile. */
export const PROFILE_FILE: RegExp = /\.ya?ml$/i;

/** All profiles of a folder, none of them read; own ones hide bundled ones of the same id. */
export async function profileEntries(
  folder: string,
  dataDir: string,
): Promise<readonly ProfileEntry[]> {
  const own = await entriesOf(join(dataDir, folder), 'own');
  const ownIds = new Set(own.map(({ id }) => id));
  const bundled = await entriesOf(fileURLToPath(new URL(`${folder}/`, PROFILES)), 'bundled');
  return [...own, ...bundled.filter(({ id }) => !ownIds.has(id))];
}

async function entriesOf(folder: string, origin: ProfileOrigin): Promise<ProfileEntry[]> {
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return [];
    throw new Problem(`the folder cannot be read: ${error.message}`, {
      where: folder,
      next: 'Check that it is a folder you may read.',
    });
  });
  return names
    .filter((name) => PROFILE_FILE.test(name))
    .toSorted()
    .map((name) => ({ id: idOfFile(name), path: join(folder, name), origin }));
}
