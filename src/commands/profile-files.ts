import { readFile, stat } from 'node:fs/promises';
import { Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import { type ProfileReading, soundValue } from '../profile/profile-reading.ts';
import { LONGEST_PROFILE_CHARACTERS } from '../profile/profile-text.ts';
import { fileKind, HEAD_BYTES, otherFile } from './other-file.ts';
import { PROFILE_FILE, type ProfileEntry, profileEntries } from './profile-entries.ts';

/** A file of the list with its value. */
export type SoundProfile<T> = ProfileEntry & { readonly kind: 'read'; readonly value: T };

/** A file of the list, or the number of its problems. */
export type ListedProfile<T> =
  | SoundProfile<T>
  | (ProfileEntry & { readonly kind: 'refused'; readonly problems: number });

/** One kind of file that people write: cars, corners, targets. */
export interface ProfileKind<T> {
  /** As messages name it, for example `target`. */
  readonly noun: string;
  /** Folder of the bundled ones below `profiles/`, and of the user's below the data folder. */
  readonly folder: string;
  check(text: string, fileName: string): ProfileReading<T>;
}

/** UTF-8 takes at most four bytes a character. */
const MOST_BYTES = 4 * LONGEST_PROFILE_CHARACTERS;

/**
 * The profile that the user names: the id of a bundled one or of one in the data folder (which goes first), or the path
 * of a file.
 *
 * @throws Problem for an unknown id (with the nearest one), an unreadable file, and a file with problems
 */
export async function findProfile<T>(
  kind: ProfileKind<T>,
  idOrPath: string,
  dataDir: string,
): Promise<T> {
  const path = isPath(idOrPath) ? idOrPath : (await profileEntry(kind, idOrPath, dataDir)).path;
  return soundValue(kind.check(await readProfileText(path, kind.noun), path), path);
}

/** Where the profile of an id lies. @throws Problem for an unknown id, with the nearest one */
export async function profileEntry(
  kind: ProfileKind<unknown>,
  id: string,
  dataDir: string,
): Promise<ProfileEntry> {
  const entries = await profileEntries(kind.folder, dataDir);
  const found = entries.find((entry) => entry.id === id);
  if (found !== undefined) return found;
  const ids = entries.map((entry) => entry.id);
  const close = nearest(id, ids);
  throw new Problem(`there is no ${kind.noun} ${JSON.stringify(id)}`, {
    next: `${close === null ? '' : `Did you mean ${close}? `}Known are ${ids.join(', ')}; or give the path of a file.`,
  });
}

/** Ids of all profiles of a kind, own ones first; no file is read. */
export async function profileIds(
  kind: ProfileKind<unknown>,
  dataDir: string,
): Promise<readonly string[]> {
  return (await profileEntries(kind.folder, dataDir)).map(({ id }) => id);
}

/** All profiles of a kind that can be named by id, own ones first, each folder in alphabetical order. */
export async function listProfiles<T>(
  kind: ProfileKind<T>,
  dataDir: string,
): Promise<readonly ListedProfile<T>[]> {
  const entries = await profileEntries(kind.folder, dataDir);
  return Promise.all(
    entries.map(async (entry) => {
      const checked = kind.check(await readProfileText(entry.path, kind.noun), entry.path);
      return checked.kind === 'refused'
        ? { ...entry, kind: checked.kind, problems: checked.problems.length }
        : { ...entry, kind: checked.kind, value: checked.value };
    }),
  );
}

/**
 * The text of a profile file.
 *
 * @throws Problem where there is no such file, it is not a file, another kind of file, too large, or not UTF-8
 */
export async function readProfileText(path: string, noun: string): Promise<string> {
  const bytes = await readBytes(path, noun);
  const kind = fileKind(bytes.subarray(0, HEAD_BYTES));
  if (kind === 'archive' || kind === 'history' || kind === 'table')
    throw otherFile(path, kind, `a ${noun} file`);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Problem('the file is not UTF-8 text', { where: path, next: 'Save it as UTF-8.' });
  }
}

async function readBytes(path: string, noun: string): Promise<Uint8Array> {
  const unreadable = (what: string): Problem =>
    new Problem(what, {
      where: path,
      next: `Give the path of ${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun} file in YAML.`,
    });
  try {
    const found = await stat(path);
    if (!found.isFile()) throw unreadable('this is not a file');
    if (found.size > MOST_BYTES) throw unreadable(`the file has ${found.size} bytes`);
    return await readFile(path);
  } catch (error) {
    if (error instanceof Problem) throw error;
    throw unreadable(FAILURES[(error as NodeJS.ErrnoException).code ?? ''] ?? String(error));
  }
}

const FAILURES: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'the file may not be read',
};

/** True for what names a file and not an id. */
export function isPath(text: string): boolean {
  return /[/\\]/.test(text) || PROFILE_FILE.test(text);
}
