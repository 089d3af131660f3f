import type { ProfileProblem } from '../../profile/profile-problem.ts';
import { isUnitRow, type LogColumn, logColumns } from './log-header.ts';

/** How a log is written. */
export interface LogDialect {
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  readonly columns: readonly LogColumn[];
  /** Lines before the first row of numbers. */
  readonly linesBefore: number;
  /** Line of the header from 1; null where there is none and columns are called 1, 2, 3. */
  readonly headerLine: number | null;
}

/** What the user says about the writing; null leaves it to the file. */
export interface DialectWish {
  readonly delimiter: string | null;
  readonly decimal: '.' | ',' | null;
}

/** Rows looked at. */
const MOST_ROWS = 50;
const DECIMAL_POINT = /^[+-]?\d*\.\d+(e[+-]?\d+)?$/i;
const DECIMAL_COMMA = /^[+-]?\d*,\d+(e[+-]?\d+)?$/i;
const NUMERIC = /^[+-]?(\d+[.,]?\d*|[.,]\d+)(e[+-]?\d+)?$/i;

/**
 * How the file is written, from its first lines.
 * @param lines complete lines, without their ends
 * @returns the dialect or what is wrong
 */
export function findDialect(
  lines: readonly string[],
  wish: DialectWish,
): LogDialect | ProfileProblem {
  const delimiter = wish.delimiter ?? findDelimiter(lines);
  if (delimiter === null) return at(1, 'no separator between columns is found', ASK_DELIMITER);
  const first = lines.findIndex((line) => isRow(line.split(delimiter)));
  if (first < 0) return at(1, 'no row of numbers is found', 'Give a log with a header and rows.');
  const rows = lines.slice(first, first + MOST_ROWS).map((line) => trimmed(line.split(delimiter)));
  const decimal = wish.decimal ?? findDecimal(rows, first);
  if (typeof decimal !== 'string') return decimal;
  const header = findHeader(lines.slice(0, first), delimiter, rows[0]!.length);
  const shifted = delimiter === ',' ? commaTwice(header.columns.length, rows, first) : null;
  return shifted ?? { delimiter, decimal, linesBefore: first, ...header };
}

const ASK_DELIMITER = 'Say it with --delimiter comma, semicolon or tab.';
const at = (line: number, what: string, next: string): ProfileProblem => ({
  line,
  column: 1,
  what,
  next,
});

const trimmed = (cells: readonly string[]): string[] =>
  cells.map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  );

/** A semicolon or a tab is never part of a number, a comma may be: so they go first. */
function findDelimiter(lines: readonly string[]): string | null {
  const candidates = [';', '\t', ','];
  return candidates.find((delimiter) => lines.some((line) => isRow(line.split(delimiter)))) ?? null;
}

/** At least two cells, and most of the filled ones are numbers. */
function isRow(cells: readonly string[]): boolean {
  const filled = trimmed(cells).filter((text) => text !== '');
  const numbers = filled.filter((text) => NUMERIC.test(text) || /^nan$/i.test(text)).length;
  return (
    cells.length > 1 &&
    filled.length > 0 &&
    numbers * 2 > filled.length &&
    !cells[0]!.trimStart().startsWith('#')
  );
}

function findDecimal(
  rows: readonly (readonly string[])[],
  first: number,
): '.' | ',' | ProfileProblem {
  const row = (pattern: RegExp): number =>
    rows.findIndex((cells) => cells.some((cell) => pattern.test(cell)));
  const comma = row(DECIMAL_COMMA);
  const point = row(DECIMAL_POINT);
  if (comma < 0 || point < 0) return comma < 0 ? '.' : ',';
  const line = first + 1 + Math.max(comma, point);
  return at(
    line,
    'numbers with a decimal point and with a comma',
    'Say which is right: --decimal point or comma.',
  );
}

/** Commas between columns and inside numbers leave rows with about twice the cells of the header. */
function commaTwice(
  columns: number,
  rows: readonly (readonly string[])[],
  first: number,
): ProfileProblem | null {
  const wide = rows.findIndex((cells) => cells.slice(columns).some((cell) => cell !== ''));
  if (wide < 0) return null;
  return at(
    first + wide + 1,
    `this row has ${rows[wide]!.length} cells, the header ${columns}`,
    'Where numbers have decimal commas, write the log with semicolons between columns.',
  );
}

function findHeader(
  before: readonly string[],
  delimiter: string,
  cells: number,
): Pick<LogDialect, 'columns' | 'headerLine'> {
  const filled = before.flatMap((text, i) => (text.trim() === '' ? [] : [{ text, line: i + 1 }]));
  const last = filled.at(-1);
  const above = filled.at(-2);
  const split = (text: string): string[] => text.split(delimiter);
  if (last === undefined || split(last.text).length < 2) {
    const columns = Array.from({ length: cells }, (_, i) => ({ name: `${i + 1}`, unit: null }));
    return { columns, headerLine: null };
  }
  if (above !== undefined && split(above.text).length > 1 && isUnitRow(split(last.text)))
    return { columns: logColumns(split(above.text), split(last.text)), headerLine: above.line };
  return { columns: logColumns(split(last.text), null), headerLine: last.line };
}
