import type { ProfileProblem } from '../profile/profile-problem.ts';
import type { CsvCell } from './csv-rows.ts';
import type { RepCsvColumn } from './rep-csv-columns.ts';

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** The number in a cell, null for an empty cell that may be empty, or what is wrong with it. */
export function readValue(cell: CsvCell, column: RepCsvColumn): number | null | ProfileProblem {
  const { text } = cell;
  if (text === '' && column !== 'time_s' && column !== 'level') return null;
  const value = NUMBER.test(text) ? Number(text) : Number.NaN;
  if (!Number.isFinite(value)) {
    const what = text === '' ? `${column} is empty` : `${JSON.stringify(text)} is no number`;
    return at(cell, what, 'Write a number with a decimal point, such as 0.415.');
  }
  return isLevel(column) && (value < 0 || value > 1) ? outside(cell, column, value) : value;
}

function isLevel(column: RepCsvColumn): boolean {
  return column !== 'time_s' && column !== 'steering_deg';
}

function outside(cell: CsvCell, column: RepCsvColumn, value: number): ProfileProblem {
  const percent = value > 1.5 && value <= 100;
  return at(
    cell,
    `${column} ${cell.text} is outside 0 to 1`,
    percent
      ? 'This looks like percent: divide the column by 100.'
      : 'Write levels from 0 (released) to 1 (full scale).',
  );
}

function at({ line, column }: CsvCell, what: string, next: string): ProfileProblem {
  return { line, column, what, next };
}
