import { Problem } from '../problem.ts';

const CHOOSE = 'or choose another folder with --data-dir.';

/** System error codes with something a user can do about them. */
const REMEDIES: Readonly<Record<string, readonly [what: string, next: string]>> = {
  EACCES: ['no right to write here', `Give yourself the right to write to it, ${CHOOSE}`],
  EPERM: ['no right to write here', `Give yourself the right to write to it, ${CHOOSE}`],
  EROFS: ['the disk is read-only', `Mount it for writing, ${CHOOSE}`],
  EEXIST: ['a file stands where a folder is needed', `Move the file away, ${CHOOSE}`],
  ENOTDIR: ['a file stands where a folder is needed', `Move the file away, ${CHOOSE}`],
  EISDIR: ['a folder stands where the history is kept', `Move the folder away, ${CHOOSE}`],
  ENOSPC: ['the disk is full', 'Make room on the disk and try again; finished reps are kept.'],
  EIO: ['the disk failed', 'Check the disk and its cable, then try again.'],
};

/** Runs file system calls; what a user can mend about their errors becomes a Problem with `path` as its place. */
export function withFileProblems<T>(path: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    const remedy = code === undefined ? undefined : REMEDIES[code];
    if (remedy === undefined) throw error;
    throw new Problem(remedy[0], { where: path, next: remedy[1] });
  }
}
