import { mkdirSync, readdirSync, rmdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { withFileProblems } from '../file-problem.ts';
import { Staging } from '../journal/staging.ts';
import type { HistorySnapshot } from '../kept.ts';
import { newId } from '../new-id.ts';
import type { HistoryStore } from '../store.ts';
import type { ArchivedFile } from './archive-format.ts';
import { EMPTY_SNAPSHOT } from './empty-snapshot.ts';
import type { MergeTally } from './merge-report.ts';
import type { Archive } from './open-archive.ts';
import { stageArchive } from './stage-archive.ts';
import type { StageOptions } from './stage-options.ts';

/** Where an archive is taken into. */
interface TakeInPlace {
  /** Folder of the history; made where it is missing. */
  readonly dataDir: string;
  /** Null where none was begun yet. */
  readonly existing: HistoryStore | null;
  /** Opens the existing history, or begins one. */
  readonly open: () => HistoryStore;
}

type Options = Omit<StageOptions, 'stage'>;

/** What taking an archive in would do. Nothing is written. */
export async function tryArchive(
  archive: Archive,
  existing: HistoryStore | null,
  tally: MergeTally,
  options: Options,
): Promise<readonly ArchivedFile[]> {
  return withSnapshot(existing, (here) =>
    stageArchive(archive, here, tally, { ...options, stage: () => {} }),
  );
}

/**
 * Takes an archive into a history: first all of it is checked and what is new is staged in a file beside the history,
 * then that is taken in as a whole. Whatever goes wrong before leaves the history as it was.
 *
 * @param beforeCommit is told the files of the archive once all is checked, and may still refuse
 */
export async function takeInArchive(
  archive: Archive,
  { dataDir, existing, open }: TakeInPlace,
  tally: MergeTally,
  options: Options,
  beforeCommit: (files: readonly ArchivedFile[]) => Promise<void>,
): Promise<void> {
  const made = withFileProblems(dataDir, () => mkdirSync(dataDir, { recursive: true }));
  try {
    sweep(dataDir);
    const staging = new Staging(join(dataDir, `import-${newId()}.part`));
    try {
      const files = await withSnapshot(existing, (here) =>
        stageArchive(archive, here, tally, { ...options, stage: (entry) => staging.add(entry) }),
      );
      staging.finish();
      await beforeCommit(files);
      if (staging.entries > 0) open().takeIn(staging.path, staging.entries);
    } finally {
      staging.remove();
    }
  } catch (error) {
    if (made !== undefined) removeIfEmpty(dataDir);
    throw error;
  }
}

async function withSnapshot<T>(
  history: HistoryStore | null,
  work: (here: HistorySnapshot) => Promise<T>,
): Promise<T> {
  const here = history?.snapshot() ?? EMPTY_SNAPSHOT;
  try {
    return await work(here);
  } finally {
    here.close();
  }
}

const STALE_MS = 86_400_000;

/** Takes away what imports left that were killed a day ago or longer. */
function sweep(folder: string): void {
  for (const name of readdirSync(folder)) {
    if (!/^import-[\w-]+\.part$/.test(name)) continue;
    const path = join(folder, name);
    const { mtimeMs } = statSync(path, { throwIfNoEntry: false }) ?? { mtimeMs: Infinity };
    if (Date.now() - mtimeMs > STALE_MS) rmSync(path, { force: true });
  }
}

function removeIfEmpty(folder: string): void {
  try {
    rmdirSync(folder);
  } catch {
    // somebody else keeps something there
  }
}
