import { closeSync, fstatSync, openSync } from 'node:fs';
import { withFileProblems } from '../file-problem.ts';
import { type PlacedEntry, readJournal, sameFile } from './journal-file.ts';

/** Follows a journal as this and other programs append to it, also into a new file after an import renamed the old. */
export class JournalTail {
  readonly #path: string;
  /** All files ever followed, the current one last: renamed ones still hold the samples of their reps. */
  readonly #fds: number[] = [];
  #readTo = 0;

  constructor(path: string) {
    this.#path = path;
  }

  /** The file that `path` names now; null before the first line was written to it. */
  current(): number | null {
    const last = this.#fds.at(-1);
    if (last !== undefined && sameFile(last, this.#path)) return last;
    try {
      this.#fds.push(openSync(this.#path, 'r'));
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
      throw error;
    }
    this.#readTo = 0;
    return this.#fds.at(-1) ?? null;
  }

  /** The entries that were not read yet. */
  news(): PlacedEntry[] {
    return withFileProblems(this.#path, () => {
      const fd = this.current();
      if (fd === null || fstatSync(fd).size <= this.#readTo) return [];
      const entries = [...readJournal(fd, this.#path, this.#readTo)];
      const last = entries.at(-1);
      if (last !== undefined) this.#readTo = last.offset + last.length;
      return entries;
    });
  }

  close(): void {
    for (const fd of this.#fds.splice(0)) closeSync(fd);
  }
}
