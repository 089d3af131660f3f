import { createReadStream } from 'node:fs';
import { mkdir, open, readdir, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import { problemOfFile } from '../profile/profile-problem.ts';
import { LogReader } from '../trace/log/log-reader.ts';
import { LogRefused, type LogSummary, type LogWish } from '../trace/log/log-settings.ts';
import type { LoggedZone } from '../trace/log/logged-zone.ts';
import {
  headLine,
  type ImportedTrace,
  readTraceLines,
  summaryLine,
  zoneLine,
} from '../trace/log/zone-lines.ts';
import { refuseBinary } from './other-file.ts';

const ENDING = '.jsonl';
/** Large enough for speed, small enough for memory. */
const CHUNK_BYTES = 2 ** 20;

const folderOf = (dataDir: string): string => join(dataDir, 'traces');
const fileOf = (dataDir: string, name: string): string => join(folderOf(dataDir), name + ENDING);

/** What `importTrace` reads, and how. */
export interface TraceImport {
  readonly path: string;
  readonly name: string;
  readonly wish: LogWish;
  /** Told so many bytes of so many, first 0, then after each chunk; what it throws ends the import. */
  onRead?(bytes: number, ofBytes: number): void;
}

/**
 * Streams a log and writes its zones to the data folder; a trace of that name stays as it was until all is written.
 *
 * @throws Problem for a file that cannot be read, with line and column for one that cannot be used
 */
export async function importTrace(
  { path, name, wish, onRead }: TraceImport,
  dataDir: string,
): Promise<LogSummary> {
  refuseBinary(path, 'a log in CSV');
  const { chunks, sizeBytes } = await openSource(path);
  await mkdir(folderOf(dataDir), { recursive: true });
  const unfinished = `${fileOf(dataDir, name)}.part`;
  const file = await open(unfinished, 'w');
  try {
    await file.write(headLine(name, path));
    const summary = await readZones(
      counted(chunks, (bytes) => onRead?.(bytes, sizeBytes)),
      wish,
      (zone) => file.write(zoneLine(zone)),
    );
    await file.write(summaryLine(summary));
    await file.sync();
    await file.close();
    await rename(unfinished, fileOf(dataDir, name));
    return summary;
  } catch (error) {
    await file.close().catch(() => undefined);
    await rm(unfinished, { force: true });
    throw inFile(error, path);
  }
}

async function readZones(
  source: AsyncIterable<Uint8Array>,
  wish: LogWish,
  write: (zone: LoggedZone) => Promise<unknown>,
): Promise<LogSummary> {
  const zones: LoggedZone[] = [];
  const reader = new LogReader(wish, (zone) => zones.push(zone));
  const writeAll = async (): Promise<void> => {
    for (const zone of zones.splice(0)) await write(zone);
  };
  for await (const chunk of source) {
    reader.push(chunk);
    await writeAll();
  }
  const summary = reader.end();
  await writeAll();
  return summary;
}

/** The same chunks: told before the first, and after each once it was used. */
async function* counted(
  chunks: AsyncIterable<Uint8Array>,
  onRead: (bytes: number) => void,
): AsyncIterable<Uint8Array> {
  let bytes = 0;
  onRead(bytes);
  for await (const chunk of chunks) {
    yield chunk;
    bytes += chunk.length;
    onRead(bytes);
  }
}

async function openSource(
  path: string,
): Promise<{ readonly chunks: AsyncIterable<Uint8Array>; readonly sizeBytes: number }> {
  try {
    const file = await open(path);
    const found = await file.stat();
    await file.close();
    if (found.isDirectory()) throw unreadable(path, 'this is a folder');
    const chunks = createReadStream(path, { highWaterMark: CHUNK_BYTES });
    return { chunks, sizeBytes: found.size };
  } catch (error) {
    if (error instanceof Problem) throw error;
    const { code } = error as NodeJS.ErrnoException;
    throw unreadable(
      path,
      code === 'ENOENT' ? 'there is no such file' : `cannot be read (${code})`,
    );
  }
}

function unreadable(path: string, what: string): Problem {
  return new Problem(what, { where: path, next: 'Give the path of a CSV file.' });
}

function inFile(error: unknown, path: string): unknown {
  return error instanceof LogRefused ? problemOfFile(path, error.problems) : error;
}

/** Names of all imported traces, in alphabetical order. */
export async function traceNames(dataDir: string): Promise<readonly string[]> {
  const names = await readdir(folderOf(dataDir)).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return [];
    throw new Problem(`the folder cannot be read: ${error.message}`, {
      where: folderOf(dataDir),
      next: 'Check that it is a folder you may read.',
    });
  });
  return names
    .filter((name) => name.endsWith(ENDING))
    .map((name) => name.slice(0, -ENDING.length))
    .toSorted();
}

/** An imported trace by name. @throws Problem for a name that is not there, or a file that is damaged */
export async function readTrace(name: string, dataDir: string): Promise<ImportedTrace> {
  const names = await traceNames(dataDir);
  if (!names.includes(name)) throw unknownTrace(name, names);
  const trace = readTraceLines(await readFile(fileOf(dataDir, name), 'utf8'));
  if (trace !== null) return trace;
  throw new Problem('this file is damaged', {
    where: fileOf(dataDir, name),
    next: 'Import the log again: ebbline trace import FILE.csv',
  });
}

function unknownTrace(name: string, names: readonly string[]): Problem {
  const close = nearest(name, names);
  return new Problem(`there is no trace ${JSON.stringify(name)}`, {
    next:
      names.length === 0
        ? 'Import a log first: ebbline trace import FILE.csv'
        : `${close === null ? '' : `Did you mean ${close}? `}Known are ${names.join(', ')}.`,
  });
}
