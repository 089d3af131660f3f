import { readdir, readFile, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import { LONGEST_PROFILE_CHARACTERS } from '../profile/profile-text.ts';
import { checkTarget, idOfFile, readTarget } from '../target/read-target.ts';
import type { Target } from '../target/target.ts';

/** Where a target file lies: with the program, or with the user's data. */
export type TargetOrigin = 'bundled' | 'own';

/** A target file that was found in one of the two folders, not read yet. */
export interface TargetFileEntry {
  readonly id: string;
  readonly path: string;
  readonly origin: TargetOrigin;
}

/** A target of the list, or the reason why its file is no target. */
export type ListedTarget = TargetFileEntry &
  ({ readonly target: Target } | { readonly target: null; readonly problems: number });

/** Same place seen from src/commands and from dist/commands. */
const BUNDLED_FOLDER = fileURLToPath(new URL('../../profiles/targets/', import.meta.url));
const PROFILE = /\.ya?ml$/i;
/** UTF-8 takes at most four bytes a character. */
const MOST_BYTES = 4 * LONGEST_PROFILE_CHARACTERS;

/**
 * The target that the user names: the id of a bundled target or of one in `<data-dir>/targets` (which goes first), or
 * the path of a file.
 *
 * @throws Problem for an unknown id (with the nearest one), an unreadable file, and a file that is no target
 */
export async function findTarget(idOrPath: string, dataDir: string): Promise<Target> {
  if (isPath(idOrPath)) return readTarget(await readTargetText(idOrPath), idOrPath);
  const entries = await targetEntries(dataDir);
  const found = entries.find(({ id }) => id === idOrPath);
  if (found !== undefined) return readTarget(await readTargetText(found.path), found.path);
  const ids = entries.map(({ id }) => id);
  const close = nearest(idOrPath, ids);
  throw new Problem(`there is no target ${JSON.stringify(idOrPath)}`, {
    next: `${close === null ? '' : `Did you mean ${close}? `}Known are ${ids.join(', ')}; or give the path of a file.`,
  });
}

/** All targets the user can name by id, own ones first, each folder in alphabetical order. */
export async function listTargets(dataDir: string): Promise<readonly ListedTarget[]> {
  const entries = await targetEntries(dataDir);
  return Promise.all(
    entries.map(async (entry) => {
      const reading = checkTarget(await readTargetText(entry.path), entry.path);
      return reading.kind === 'read'
        ? { ...entry, target: reading.target }
        : { ...entry, target: null, problems: reading.problems.length };
    }),
  );
}

/**
 * The text of a profile file.
 *
 * @throws Problem where there is no such file, it is not a file, too large, or not UTF-8
 */
export async function readTargetText(path: string): Promise<string> {
  const bytes = await readBytes(path);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Problem('the file is not UTF-8 text', { where: path, next: 'Save it as UTF-8.' });
  }
}

async function readBytes(path: string): Promise<Uint8Array> {
  try {
    const found = await stat(path);
    if (!found.isFile()) throw unreadable(path, 'this is not a file');
    if (found.size > MOST_BYTES) throw unreadable(path, `the file has ${found.size} bytes`);
    return await readFile(path);
  } catch (error) {
    if (error instanceof Problem) throw error;
    throw unreadable(path, FAILURES[(error as NodeJS.ErrnoException).code ?? ''] ?? String(error));
  }
}

const FAILURES: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'the file may not be read',
};

function unreadable(path: string, what: string): Problem {
  return new Problem(what, { where: path, next: 'Give the path of a target file in YAML.' });
}

function isPath(text: string): boolean {
  return /[/\\]/.test(text) || PROFILE.test(text);
}

/** Own targets hide bundled ones of the same id. */
async function targetEntries(dataDir: string): Promise<readonly TargetFileEntry[]> {
  const own = await entriesOf(join(dataDir, 'targets'), 'own');
  const ownIds = new Set(own.map(({ id }) => id));
  const bundled = await entriesOf(BUNDLED_FOLDER, 'bundled');
  return [...own, ...bundled.filter(({ id }) => !ownIds.has(id))];
}

async function entriesOf(folder: string, origin: TargetOrigin): Promise<TargetFileEntry[]> {
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return [];
    throw new Problem(`the folder cannot be read: ${error.message}`, {
      where: folder,
      next: 'Check that it is a folder you may read.',
    });
  });
  return names
    .filter((name) => PROFILE.test(name))
    .toSorted()
    .map((name) => ({ id: idOfFile(basename(name)), path: join(folder, name), origin }));
}
