import { type FileHandle, open } from 'node:fs/promises';
import { Problem } from '../../problem.ts';
import { parseRecordingHeader } from './parse-recording-header.ts';
import { LineFault, parseRecordingLine } from './parse-recording-line.ts';
import type { RecordingEntry, RecordingHeader } from './recording.ts';

/** A recording whose header is read and whose entries are read as they are asked for. */
export interface OpenRecording {
  readonly header: RecordingHeader;
  /** May be run through once. A last line that was cut off by a crash is left out; Problem with its line for any other damage. */
  readonly entries: AsyncIterable<RecordingEntry>;
  /** Idempotent; needed only where the entries are not run to their end. */
  close(): Promise<void>;
}

/** @throws Problem for a file that is not there or whose first line is no header. */
export async function openRecording(file: string): Promise<OpenRecording> {
  const handle = await openFile(file);
  const lines = handle.readLines()[Symbol.asyncIterator]();
  try {
    const first = await lines.next();
    const header = parseRecordingHeader(first.done === true ? '' : first.value);
    const entries = readEntries(lines, file, header.devices.length);
    return { header, entries, close: () => handle.close() };
  } catch (error) {
    await handle.close();
    throw lineProblem(file, 1, error);
  }
}

async function openFile(file: string): Promise<FileHandle> {
  try {
    const handle = await open(file);
    if (!(await handle.stat()).isDirectory()) return handle;
    await handle.close();
    throw new Error('it is a folder');
  } catch (error) {
    throw new Problem(whyNot(error as NodeJS.ErrnoException), {
      where: file,
      next: 'Give the file of a recording.',
    });
  }
}

function whyNot({ code, message }: NodeJS.ErrnoException): string {
  return code === 'ENOENT' ? 'there is no such file' : `the recording cannot be read: ${message}`;
}

/** A line that is no JSON is a fault only once another follows it: the last may have been cut off. */
async function* readEntries(
  lines: AsyncIterator<string>,
  file: string,
  deviceCount: number,
): AsyncGenerator<RecordingEntry, void, void> {
  let cutOff: Problem | null = null;
  let number = 1;
  for (let next = await lines.next(); next.done !== true; next = await lines.next()) {
    number += 1;
    if (cutOff !== null) throw cutOff;
    const entry = readEntry(next.value, file, number, deviceCount);
    if (entry instanceof Problem) cutOff = entry;
    else yield entry;
  }
}

/** The entry of a line, or the Problem where it is no JSON. @throws Problem where it is, but no entry. */
function readEntry(
  text: string,
  file: string,
  number: number,
  deviceCount: number,
): RecordingEntry | Problem {
  try {
    return parseRecordingLine(text, deviceCount);
  } catch (error) {
    const problem = lineProblem(file, number, error);
    if (error instanceof SyntaxError && problem instanceof Problem) return problem;
    throw problem;
  }
}

function lineProblem(file: string, line: number, error: unknown): unknown {
  if (error instanceof SyntaxError) return lineProblem(file, line, new LineFault('it is not JSON'));
  if (!(error instanceof LineFault)) return error;
  return new Problem(`the recording cannot be replayed: ${error.message}`, {
    where: `${file}:${line}`,
    next: line === 1 ? 'Give the file of a recording.' : 'Delete this line to replay the rest.',
  });
}
