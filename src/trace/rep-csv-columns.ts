import type { ProfilePlace, ProfileProblem } from '../profile/profile-problem.ts';
import type { CsvCell } from './csv-rows.ts';

/** The columns a trace may have; the first two it must have. */
const REP_CSV_COLUMNS = ['time_s', 'level', 'throttle', 'clutch', 'steering_deg'] as const;
const REQUIRED = 2;

export type RepCsvColumn = (typeof REP_CSV_COLUMNS)[number];

/** The column of each cell of a row, in file order. */
export type RepCsvLayout = readonly RepCsvColumn[];

/** The layout that a header row names, or what is wrong with it. */
export function readHeader(header: readonly CsvCell[]): RepCsvLayout | ProfileProblem[] {
  const problems = [...unknown(header), ...repeated(header)];
  if (problems.length > 0) return problems;
  const layout = header.map(({ text }) => text as RepCsvColumn);
  const missing = REP_CSV_COLUMNS.slice(0, REQUIRED).filter((name) => !layout.includes(name));
  if (missing.length === 0) return layout;
  return [problemAt(header[0]!, `the column ${missing.join(' and ')} is missing`)];
}

function unknown(header: readonly CsvCell[]): ProfileProblem[] {
  return header
    .filter(({ text }) => !REP_CSV_COLUMNS.some((name) => name === text))
    .map((cell) => problemAt(cell, `${JSON.stringify(cell.text)} is no column of a trace`));
}

function repeated(header: readonly CsvCell[]): ProfileProblem[] {
  return header
    .filter((cell, i) => header.findIndex(({ text }) => text === cell.text) < i)
    .map((cell) => problemAt(cell, `the column ${cell.text} comes twice`));
}

function problemAt({ line, column }: ProfilePlace, what: string): ProfileProblem {
  const next = `Begin with a header such as ${REP_CSV_COLUMNS.slice(0, REQUIRED).join(',')} and separate by commas; ${REP_CSV_COLUMNS.slice(REQUIRED).join(', ')} may follow.`;
  return { line, column, what, next };
}
