import type { HistorySnapshot } from '../kept.ts';
import {
  type ArchivedFile,
  fileOfEntry,
  LIMITS,
  NOTES,
  PRACTICES,
  REPS,
} from './archive-format.ts';
import { archiveBytes } from './archive-lines.ts';
import { damagedArchive } from './damaged-archive.ts';
import type { MergeTally } from './merge-report.ts';
import type { Archive } from './open-archive.ts';
import { stageNotes } from './stage-notes.ts';
import type { StageOptions } from './stage-options.ts';
import { stagePractices } from './stage-practices.ts';
import { stageReps } from './stage-reps.ts';

/**
 * Reads an archive through, checks all of it, and stages what a history does not have yet. What has the same identity
 * and other content is a conflict: it stays as it is here.
 *
 * @returns the files that people write in it
 * @throws Problem for anything that `ebbline export` does not write
 */
export async function stageArchive(
  archive: Archive,
  here: HistorySnapshot,
  tally: MergeTally,
  options: StageOptions,
): Promise<readonly ArchivedFile[]> {
  const practices = await stagePractices(archive, here, tally, options);
  const reps = await stageReps(archive, here, tally, { ...options, practices });
  await stageNotes(archive, here, tally, { ...options, reps });
  return readRest(archive);
}

/** The check sums of the entries that are not lines, and the files among them. */
async function readRest(archive: Archive): Promise<ArchivedFile[]> {
  const files: ArchivedFile[] = [];
  for (const entry of archive.manifest.entries) {
    if ([PRACTICES, REPS, NOTES].includes(entry.name)) continue;
    const file = fileOfEntry(entry.name);
    if (file === null) for await (const _ of archive.read(entry));
    else files.push({ ...file, bytes: await archiveBytes(archive, entry.name) });
    if (files.length > LIMITS.files)
      throw damagedArchive(`the archive has more than ${LIMITS.files} files`, archive.path);
  }
  return files;
}
