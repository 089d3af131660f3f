import { createHash } from 'node:crypto';
import { Readable } from 'node:stream';
import { ZipFile } from 'yazl';
import type { HistorySnapshot, KeptQuery } from '../kept.ts';
import {
  ARCHIVE_FORMAT,
  type ArchivedFile,
  fileEntry,
  MANIFEST,
  type Manifest,
  type ManifestEntry,
  NOTES,
  PRACTICES,
  README,
  REPS,
  REPS_CSV,
} from './archive-format.ts';
import { archiveReadme } from './archive-readme.ts';
import { noteLine, practiceLine, repLine } from './line-formats.ts';
import { repCsvLines } from './rep-csv-lines.ts';
import { samplesCsvName, samplesCsvText } from './samples-csv.ts';
import { writeNewFile } from './write-new-file.ts';

/** What goes into an archive. */
interface ArchiveContent {
  readonly query: KeptQuery;
  readonly files: readonly ArchivedFile[];
  /** Also a CSV file for the samples of each rep. */
  readonly samplesCsv: boolean;
  readonly programVersion: string;
  readonly exportedAtUtcMs: number;
}

/** Told after each rep; may throw to give up. */
type RepDone = () => void;

/**
 * Writes an archive to a new file, as a stream: memory does not grow with the history. An archive that could not be
 * finished is taken away again.
 *
 * @throws Problem where the file is there already or cannot be written
 */
export async function writeArchive(
  path: string,
  snapshot: HistorySnapshot,
  content: ArchiveContent,
  done: RepDone,
): Promise<Manifest> {
  const zip = new ZipFile();
  const source = new Source();
  zip.once('error', (error: Error) => source.fail(error));
  try {
    const manifest = addEntries(zip, snapshot, content, { source, done });
    zip.end();
    await writeNewFile(path, zip.outputStream, source.failed);
    return await manifest;
  } finally {
    source.stop();
  }
}

interface Job {
  readonly source: Source;
  readonly done: RepDone;
}

function addEntries(
  zip: ZipFile,
  snapshot: HistorySnapshot,
  content: ArchiveContent,
  { source, done }: Job,
): Promise<Manifest> {
  const { query } = content;
  const entries: ManifestEntry[] = [];
  const mtime = new Date(content.exportedAtUtcMs);
  const drivers = new Set<string>();
  const add = (name: string, chunks: () => Iterable<string | Uint8Array>): void =>
    zip.addReadStreamLazy(name, { mtime }, (give) =>
      give(null, source.stream(measured(name, chunks(), entries))),
    );
  add(README, () => [archiveReadme()]);
  add(PRACTICES, function* lines() {
    for (const practice of snapshot.practices(query)) {
      drivers.add(practice.start.driver);
      yield `${practiceLine(practice)}\n`;
    }
  });
  add(REPS, function* lines() {
    for (const rep of snapshot.reps(query)) {
      yield `${repLine(rep)}\n`;
      done();
    }
  });
  add(NOTES, function* lines() {
    for (const note of snapshot.notes(query)) {
      drivers.add(note.note.driver);
      yield `${noteLine(note)}\n`;
    }
  });
  add(REPS_CSV, () => repCsvLines(snapshot, query));
  for (const file of content.files) add(fileEntry(file), () => [file.bytes]);
  if (content.samplesCsv) addSamples(add, snapshot, query);
  return new Promise((resolveManifest) => {
    zip.addReadStreamLazy(MANIFEST, { mtime }, (give) => {
      const manifest: Manifest = {
        format: ARCHIVE_FORMAT,
        program: 'ebbline',
        programVersion: content.programVersion,
        exportedAt: mtime.toISOString(),
        drivers: [...drivers].toSorted(),
        sinceUtcMs: query.sinceUtcMs ?? null,
        counts: snapshot.counts(query),
        entries,
      };
      resolveManifest(manifest);
      give(null, source.stream([Buffer.from(`${JSON.stringify(manifest, null, 1)}\n`)]));
    });
  });
}

function addSamples(
  add: (name: string, chunks: () => Iterable<string>) => void,
  snapshot: HistorySnapshot,
  query: KeptQuery,
): void {
  let number = 0;
  for (const { origin, fields } of snapshot.reps(query)) {
    number++;
    add(samplesCsvName(number, fields), () => [samplesCsvText(snapshot.rep(origin)!.record())]);
  }
}

/** Where the bytes of the entries come from. The library passes on no errors of its sources, and reads on after its own. */
class Source {
  readonly failed: Promise<never>;
  #reject: (error: Error) => void = () => {};
  #isStopped = false;

  constructor() {
    this.failed = new Promise((_, reject) => {
      this.#reject = reject;
    });
    // after the file is done nobody waits for it
    this.failed.catch(() => {});
  }

  stream(chunks: Iterable<Uint8Array>): Readable {
    const readable = Readable.from(this.#untilStopped(chunks), { objectMode: false });
    readable.once('error', (error) => this.fail(error));
    return readable;
  }

  fail(error: Error): void {
    this.#isStopped = true;
    this.#reject(error);
  }

  /** What still reads finds nothing more, and asks the history for nothing. */
  stop(): void {
    this.#isStopped = true;
  }

  *#untilStopped(chunks: Iterable<Uint8Array>): Iterable<Uint8Array> {
    if (this.#isStopped) return;
    for (const chunk of chunks) {
      if (this.#isStopped) return;
      yield chunk;
    }
  }
}

/** Passes bytes on, and says at the end how many there were and their hash. */
function* measured(
  name: string,
  chunks: Iterable<string | Uint8Array>,
  entries: ManifestEntry[],
): Iterable<Uint8Array> {
  const hash = createHash('sha256');
  let bytes = 0;
  for (const chunk of chunks) {
    const part = typeof chunk === 'string' ? Buffer.from(chunk) : chunk;
    hash.update(part);
    bytes += part.length;
    yield part;
  }
  entries.push({ name, bytes, sha256: hash.digest('hex') });
}
