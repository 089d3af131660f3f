import { randomUUID } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  linkSync,
  mkdirSync,
  openSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type ArchivedFile, fileEntry } from '../history/archive/archive-format.ts';
import { DIFFERS, type MergeTally } from '../history/archive/merge-report.ts';
import { withFileProblems } from '../history/file-problem.ts';
import { syncFolder } from '../history/sync-folder.ts';
import { Problem } from '../problem.ts';
import { idOfFile } from '../profile/id-of-file.ts';
import { ARCHIVED_FOLDERS } from './archived-folders.ts';
import { type ProfileEntry, profileEntries } from './profile-entries.ts';

/** Own files and bundled ones by folder, as they are before anything is taken in. */
type FilesHere = ReadonlyMap<string, readonly ProfileEntry[]>;

export async function filesHere(dataDir: string): Promise<FilesHere> {
  const lists = ARCHIVED_FOLDERS.map(
    async (folder) => [folder, await profileEntries(folder, dataDir)] as const,
  );
  return new Map(await Promise.all(lists));
}

/**
 * The files of an archive that are not here yet. One of the same id with other content is a conflict.
 */
export async function filesToTakeIn(
  files: readonly ArchivedFile[],
  here: FilesHere,
  tally: MergeTally,
): Promise<readonly ArchivedFile[]> {
  const wanted: ArchivedFile[] = [];
  const ids = new Set<string>();
  for (const file of files) {
    const id = `${file.folder}/${idOfFile(file.name)}`.toLowerCase();
    const why = await conflictOf(file, here);
    if (why === 'none') tally.count('file', 'known');
    else if (why !== null) tally.conflict('file', fileEntry(file), why);
    else if (ids.has(id)) tally.conflict('file', fileEntry(file), 'another one has its name');
    else {
      ids.add(id);
      wanted.push(file);
      tally.count('file', 'added');
    }
  }
  return wanted;
}

/** Null for a file that is new, `none` for one that is here. */
async function conflictOf(file: ArchivedFile, here: FilesHere): Promise<string | null> {
  const entries = here.get(file.folder);
  if (entries === undefined) return 'this program knows no such files';
  const id = idOfFile(file.name).toLowerCase();
  const same = entries.filter((entry) => entry.id.toLowerCase() === id);
  for (const { path } of same) if (file.bytes.equals(await readFile(path))) return 'none';
  if (same.some(({ origin }) => origin === 'own')) return DIFFERS;
  // one that a person wrote hides a bundled one, as it did where it comes from
  if (same.length === 0 || !file.bundled) return null;
  return 'this program comes with another version of it';
}

/** Files on the disk under names of their own, until they are put in their places. */
export class StagedFiles {
  readonly #parts: { readonly part: string; readonly path: string; readonly folder: string }[] = [];

  /** @throws Problem where the disk is full */
  constructor(files: readonly ArchivedFile[], dataDir: string) {
    try {
      for (const file of files) this.#write(file, dataDir);
    } catch (error) {
      this.remove();
      throw error;
    }
  }

  /**
   * Puts each in its place, never over another.
   * @throws Problem where one cannot be put there; a second import does the rest
   */
  putInPlace(): void {
    for (const { part, path, folder } of this.#parts) {
      if (existsSync(path)) throw appeared(path);
      withFileProblems(path, () => putUnder(part, path));
      syncFolder(folder);
    }
  }

  /** Takes away what was not put in its place. */
  remove(): void {
    for (const { part } of this.#parts) rmSync(part, { force: true });
  }

  #write({ folder: name, name: fileName, bytes }: ArchivedFile, dataDir: string): void {
    const folder = join(dataDir, name);
    const part = join(folder, `.import-${randomUUID()}.part`);
    withFileProblems(folder, () => {
      mkdirSync(folder, { recursive: true });
      const fd = openSync(part, 'wx');
      this.#parts.push({ part, path: join(folder, fileName), folder });
      try {
        for (let at = 0; at < bytes.length; ) at += writeSync(fd, bytes, at);
        fsyncSync(fd);
      } finally {
        closeSync(fd);
      }
    });
  }
}

/** A link fails where the name is taken; some file systems have none. */
function putUnder(part: string, path: string): void {
  try {
    linkSync(part, path);
  } catch (error) {
    const { code = '' } = error as NodeJS.ErrnoException;
    if (code === 'EEXIST') throw appeared(path);
    renameSync(part, path);
  }
}

function appeared(path: string): Problem {
  return new Problem('a file of that name appeared meanwhile', {
    where: path,
    next: 'It was left as it is; the reps are taken in. Import the archive again to see what differs.',
  });
}
