import { closeSync, fsyncSync, openSync, rmSync, writeSync } from 'node:fs';
import { Problem } from '../../problem.ts';
import { withFileProblems } from '../file-problem.ts';
import { readJournal } from './journal-file.ts';
import { type JournalEntry, journalLine } from './journal-line.ts';

const BUFFERED_CHARACTERS = 1_000_000;

/** What is to be taken into a history, written to a file of its own first: lines as in a journal. */
export class Staging {
  readonly path: string;
  readonly #fd: number;
  #entries = 0;
  #pending: string[] = [];
  #pendingLength = 0;

  /** @throws Problem where the new file cannot be made */
  constructor(path: string) {
    this.path = path;
    this.#fd = withFileProblems(path, () => openSync(path, 'wx', 0o600));
  }

  get entries(): number {
    return this.#entries;
  }

  /** @throws Problem where the disk is full */
  add(entry: JournalEntry): void {
    const line = journalLine(entry);
    this.#entries++;
    this.#pending.push(line);
    this.#pendingLength += line.length;
    if (this.#pendingLength >= BUFFERED_CHARACTERS) this.#write();
  }

  /** Everything is on the disk when it returns. */
  finish(): void {
    this.#write();
    withFileProblems(this.path, () => fsyncSync(this.#fd));
  }

  /** Takes the file away. */
  remove(): void {
    closeSync(this.#fd);
    rmSync(this.path, { force: true });
  }

  #write(): void {
    const bytes = Buffer.from(this.#pending.join(''));
    this.#pending = [];
    this.#pendingLength = 0;
    withFileProblems(this.path, () => {
      for (let at = 0; at < bytes.length; ) at += writeSync(this.#fd, bytes, at);
    });
  }
}

/**
 * The entries of a staged file.
 * @throws Problem where it does not hold so many
 */
export function* readStaged(path: string, entries: number): Iterable<JournalEntry> {
  const fd = withFileProblems(path, () => openSync(path, 'r'));
  let count = 0;
  try {
    for (const { entry } of readJournal(fd, path, 0)) {
      count++;
      yield entry;
    }
  } finally {
    closeSync(fd);
  }
  if (count === entries) return;
  throw new Problem(`${count} of ${entries} entries can be read back from the disk`, {
    where: path,
    next: 'Nothing was taken in. Check the disk, then try again.',
  });
}
