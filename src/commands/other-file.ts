import { closeSync, openSync, readSync } from 'node:fs';
import { Problem } from '../problem.ts';
import { commandWord } from './command-word.ts';

/** What a file is by its first bytes; `other` for what is none of the files that ebbline knows. */
type FileKind = 'archive' | 'history' | 'table' | 'profile' | 'empty' | 'other';

/** So many bytes say what a file is. */
export const HEAD_BYTES = 4096;
/** Of a ZIP file with entries, and of one without (APPNOTE.TXT 4.3.7, 4.3.16). */
const ZIP_STARTS: readonly string[] = ['PK\u0003\u0004', 'PK\u0005\u0006'];
/** SQLite, Database File Format, 1.3.1. */
const SQLITE_START = 'SQLite format 3\0';

/** What a file is that begins so. */
export function fileKind(head: Uint8Array): FileKind {
  if (head.length === 0) return 'empty';
  const start = Buffer.from(head.subarray(0, 16)).toString('latin1');
  if (ZIP_STARTS.some((zip) => start.startsWith(zip))) return 'archive';
  if (start.startsWith(SQLITE_START)) return 'history';
  const text = textOf(head);
  if (text === null) return 'other';
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '' && !line.startsWith('#'));
  if (lines.some((line) => /^[a-z_]+:(\s|$)/.test(line))) return 'profile';
  return isTable(lines) ? 'table' : 'other';
}

/** The first bytes may end within a character. */
function textOf(head: Uint8Array): string | null {
  if (head.includes(0)) return null;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
  } catch {
    return null;
  }
}

/** A header and a row of as many columns. */
function isTable([header, row]: readonly string[]): boolean {
  if (header === undefined || row === undefined) return false;
  return [',', ';', '\t'].some((separator) => {
    const columns = header.split(separator).length;
    return columns > 1 && row.split(separator).length === columns;
  });
}

/** The first bytes of a file; null where it cannot be read, which whoever reads it whole has to say. */
export function headOf(path: string): Uint8Array | null {
  let fd: number | null = null;
  try {
    fd = openSync(path, 'r');
    const head = new Uint8Array(HEAD_BYTES);
    return head.subarray(0, readSync(fd, head, 0, HEAD_BYTES, 0));
  } catch {
    return null;
  } finally {
    if (fd !== null) closeSync(fd);
  }
}

/** A file given to the wrong command: what it is not, what it is, and where it belongs. */
export function otherFile(path: string, kind: FileKind, wanted: string): Problem {
  const { is, next } = KINDS[kind];
  return new Problem(`this is not ${wanted}${is === null ? '' : `: it is ${is}`}`, {
    where: path,
    next: next.replaceAll('FILE', commandWord(path)),
  });
}

/** Archives and histories are told as what they are; any text is left to whoever reads it. @throws Problem for them */
export function refuseBinary(path: string, wanted: string): void {
  const head = headOf(path);
  const kind = head === null ? 'other' : fileKind(head);
  if (kind === 'archive' || kind === 'history') throw otherFile(path, kind, wanted);
}

const KINDS: Readonly<Record<FileKind, { readonly is: string | null; readonly next: string }>> = {
  archive: {
    is: 'a ZIP file, as an archive is',
    next: 'What `ebbline export` wrote is taken in by `ebbline import FILE`.',
  },
  history: {
    is: 'a history itself',
    next: 'Say --data-dir with its folder to use it, or make an archive there: `ebbline export --out ARCHIVE.zip --data-dir FOLDER`.',
  },
  table: {
    is: 'a table (CSV)',
    next: "A car's log goes to `ebbline trace import FILE`, one rep (time_s,level) to `ebbline score --target TARGET --trace FILE`.",
  },
  profile: {
    is: 'a file of text with keys, as a corner, a car, a target, a plan or an event is',
    next: 'Such a file needs no import: give its path in the place of an id, as in `ebbline drill --target FILE`.',
  },
  empty: { is: 'empty', next: 'Have it written or sent again.' },
  other: { is: null, next: 'Give the path of a file that `ebbline export --out` wrote.' },
};
