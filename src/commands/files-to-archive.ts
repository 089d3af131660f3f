import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { variedId } from '../drill/plan/varied-target.ts';
import { type ArchivedFile, isSafeFile, LIMITS } from '../history/archive/archive-format.ts';
import type { HistorySnapshot, KeptQuery } from '../history/kept.ts';
import { cleanText } from '../input/discovery/clean-text.ts';
import { ARCHIVED_FOLDERS } from './archived-folders.ts';
import { profileEntries } from './profile-entries.ts';

/**
 * All that people wrote in the data folder, and of what came with the program what reps refer to.
 *
 * @param warn is told of files that cannot go along
 */
export async function filesToArchive(
  snapshot: HistorySnapshot,
  query: KeptQuery,
  dataDir: string,
  warn: (text: string) => void,
): Promise<readonly ArchivedFile[]> {
  const names = namesOf(snapshot, query);
  const files: ArchivedFile[] = [];
  for (const folder of ARCHIVED_FOLDERS)
    for (const { id, path, origin } of await profileEntries(folder, dataDir)) {
      const bundled = origin === 'bundled';
      if (bundled && !names.has(id) && !names.has(variedId(id))) continue;
      const name = basename(path);
      const found = await stat(path);
      if (isSafeFile(folder, name) && found.isFile() && found.size <= LIMITS.fileBytes)
        files.push({ folder, name, bundled, bytes: await readFile(path) });
      else
        warn(`ebbline: left out ${cleanText(path, 200)}: its name or size cannot go everywhere\n`);
    }
  return files;
}

/** Ids of targets, cars and corners. */
function namesOf(snapshot: HistorySnapshot, query: KeptQuery): ReadonlySet<string> {
  const names = new Set<string>();
  for (const { fields } of snapshot.reps(query))
    for (const name of [fields.targetId, fields.car, fields.corner])
      if (name !== null) names.add(name);
  return names;
}
