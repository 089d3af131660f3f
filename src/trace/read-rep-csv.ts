import { type ProfileProblem, problemOfFile } from '../profile/profile-problem.ts';
import { type CsvCell, csvRows } from './csv-rows.ts';
import { type RepCsvColumn, type RepCsvLayout, readHeader } from './rep-csv-columns.ts';
import { readValue } from './rep-csv-value.ts';
import type { RepRecord } from './rep-record.ts';
import { EMPTY_TRACK, type Track } from './track.ts';

/** A file with one mistake in every row is not listed in full. */
const MOST_PROBLEMS = 20;

/**
 * One rep from comma-separated text with the columns `time_s,level` and, where known, `throttle`, `clutch` and
 * `steering_deg`, in any order. Times are seconds from the cue and ascend; levels are 0..1; a value holds until the
 * next row, and an empty optional cell leaves the value as it was. The last row ends the record.
 *
 * @param fileName for messages
 * @throws Problem (exit code 1) with line and column of everything that is wrong.
 */
export function readRepCsv(text: string, fileName = 'trace'): RepRecord {
  const [header, ...rows] = csvRows(text);
  const refuse = (problems: readonly ProfileProblem[]): never => {
    throw problemOfFile(fileName, problems.slice(0, MOST_PROBLEMS));
  };
  if (header === undefined) return refuse([EMPTY_FILE]);
  const layout = readHeader(header);
  if (!isLayout(layout)) return refuse(layout);
  if (rows.length === 0) return refuse([{ ...EMPTY_FILE, line: header[0]!.line + 1 }]);
  const { columns, problems } = readRows(rows, layout);
  return problems.length > 0 ? refuse(problems) : recordOf(columns);
}

const EMPTY_FILE: ProfileProblem = {
  line: 1,
  column: 1,
  what: 'there are no samples',
  next: 'Write a header such as time_s,level and one row for each sample.',
};

function isLayout(header: RepCsvLayout | ProfileProblem[]): header is RepCsvLayout {
  return typeof header[0] === 'string';
}

/** Samples of one column: times and values. */
interface Samples {
  readonly timeS: number[];
  readonly value: number[];
}

type Columns = ReadonlyMap<RepCsvColumn, Samples>;

function readRows(
  rows: readonly (readonly CsvCell[])[],
  layout: RepCsvLayout,
): { readonly columns: Columns; readonly problems: ProfileProblem[] } {
  const columns = new Map(layout.map((name) => [name, { timeS: [], value: [] } as Samples]));
  const problems: ProfileProblem[] = [];
  let lastS = Number.NEGATIVE_INFINITY;
  for (const row of rows) {
    if (problems.length >= MOST_PROBLEMS) break;
    const read = readRow(row, layout, lastS);
    problems.push(...read.problems);
    lastS = Math.max(lastS, read.timeS ?? lastS);
    read.values.forEach((value, i) => {
      const samples = columns.get(layout[i]!)!;
      if (value === null) return;
      samples.timeS.push(lastS);
      samples.value.push(value);
    });
  }
  return { columns, problems };
}

interface Row {
  readonly timeS: number | null;
  readonly values: readonly (number | null)[];
  readonly problems: readonly ProfileProblem[];
}

function readRow(row: readonly CsvCell[], layout: RepCsvLayout, lastS: number): Row {
  if (row.length !== layout.length) return broken(wrongLength(row, layout));
  const cells = row.map((cell, i) => readValue(cell, layout[i]!));
  const problems = cells.filter((cell) => typeof cell === 'object' && cell !== null);
  const values = cells.map((cell) => (typeof cell === 'number' ? cell : null));
  const place = layout.indexOf('time_s');
  const timeS = values[place] ?? null;
  if (timeS !== null && timeS < lastS) problems.push(backwards(row[place]!, lastS));
  return { timeS, values, problems };
}

const broken = (problem: ProfileProblem): Row => ({ timeS: null, values: [], problems: [problem] });

function wrongLength(row: readonly CsvCell[], layout: RepCsvLayout): ProfileProblem {
  const { line, column } = row[Math.min(row.length, layout.length) - 1]!;
  const what = `this row has ${row.length} cells, the header ${layout.length}`;
  return { line, column, what, next: 'Give each row one cell per column, separated by commas.' };
}

function backwards({ line, column, text }: CsvCell, lastS: number): ProfileProblem {
  const what = `time_s ${text} comes after ${lastS}`;
  return { line, column, what, next: 'Sort the rows by time; one file holds one rep.' };
}

function recordOf(columns: Columns): RepRecord {
  const times = columns.get('time_s')!.value;
  return {
    brake: trackOf(columns.get('level')!),
    throttle: optionalTrack(columns.get('throttle')),
    clutch: optionalTrack(columns.get('clutch')),
    steering: optionalTrack(columns.get('steering_deg')),
    buttons: [],
    gaps: [],
    brakeStepLevel: 0,
    endS: times[times.length - 1]!,
  };
}

function optionalTrack(samples: Samples | undefined): Track | null {
  if (samples === undefined) return null;
  return samples.value.length === 0 ? EMPTY_TRACK : trackOf(samples);
}

function trackOf({ timeS, value }: Samples): Track {
  return { timeS: Float64Array.from(timeS), value: Float64Array.from(value) };
}
