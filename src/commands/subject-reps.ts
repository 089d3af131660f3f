import type { RepColumns } from '../consistency/rep-columns.ts';
import type { HistoryStore, RepQuery } from '../history/store.ts';
import { Problem } from '../problem.ts';
import { idOfFile } from '../profile/id-of-file.ts';
import type { Target } from '../target/target.ts';

/** Reps of what somebody named, and the target itself where a file was named that can be read today. */
interface SubjectReps {
  readonly columns: RepColumns;
  readonly given: readonly Target[];
}

/**
 * The reps of a target or a corner by its id, else of a target by the path of its file: what was drilled by a path is
 * kept under the name of the file. A file that is gone or damaged still names them.
 *
 * @param subject null for all
 * @returns null where there are none
 */
export async function subjectReps(
  history: HistoryStore,
  subject: string | null,
  driver: string | null,
  dataDir: string,
): Promise<SubjectReps | null> {
  const own = driver === null ? {} : { driver };
  if (subject === null) return firstOf(history, [own]);
  const named = firstOf(history, [
    { ...own, targetId: subject },
    { ...own, corner: subject },
  ]);
  if (named !== null || idOfFile(subject) === subject) return named;
  const file = await targetIn(subject, dataDir);
  const found = firstOf(history, [{ ...own, targetId: file?.id ?? idOfFile(subject) }]);
  return found && { ...found, given: file === null ? [] : [file] };
}

function firstOf(history: HistoryStore, queries: readonly RepQuery[]): SubjectReps | null {
  for (const query of queries) {
    const columns = history.columns(query);
    if (columns.repIds.length > 0) return { columns, given: [] };
  }
  return null;
}

async function targetIn(path: string, dataDir: string): Promise<Target | null> {
  // the readers of target files take as long to load as all the rest
  const { findTarget } = await import('./target-files.ts');
  try {
    return await findTarget(path, dataDir);
  } catch (error) {
    if (error instanceof Problem) return null;
    throw error;
  }
}
