import { printable } from '../../profile/printable.ts';
import type { ProfileProblem } from '../../profile/profile-problem.ts';
import type { ChosenColumn } from './choose-columns.ts';
import type { LogDialect } from './log-dialect.ts';
import { LOG_ROLES, ROLE } from './log-roles.ts';
import type { Notices } from './notices.ts';
import { parseNumber } from './parse-number.ts';

const BLANK = 32;
const TAB = 9;
const RETURN = 13;
const QUOTE = 34;
const HASH = 35;
const NOT_A_NUMBER = /^(nan|[+-]?inf(inity)?|null|n\/a|-+)$/i;

/**
 * Reads one line at a time into `values`, one place per role in kept units; what is not there is NaN. An empty cell
 * keeps the value before, but for time and distance. The array is the same for every row.
 */
export class RowReader {
  readonly values: Float64Array = new Float64Array(LOG_ROLES.length).fill(Number.NaN);
  readonly #delimiter: number;
  readonly #decimal: number;
  readonly #columns: number;
  readonly #chosen: readonly (ChosenColumn | null)[];
  readonly #notices: Notices;
  #cells = 0;

  constructor(dialect: LogDialect, chosen: readonly ChosenColumn[], notices: Notices) {
    this.#delimiter = dialect.delimiter.charCodeAt(0);
    this.#decimal = dialect.decimal.charCodeAt(0);
    this.#columns = dialect.columns.length;
    this.#chosen = dialect.columns.map((_, i) => chosen.find(({ index }) => index === i) ?? null);
    this.#notices = notices;
  }

  /** @returns false for a line without a row; a problem for a row that cannot be read */
  read(bytes: Uint8Array, from: number, to: number, line: number): boolean | ProfileProblem {
    const start = skipBlanks(bytes, from, to, this.#delimiter);
    if (start === to || bytes[start] === HASH) return false;
    this.#cells = 0;
    const delimiter = this.#delimiter;
    let cell = from;
    for (let i = from; i <= to; i++) {
      if (i < to && bytes[i] !== delimiter) continue;
      const problem = this.#readCell(bytes, cell, i, line, from);
      if (problem !== null) return problem;
      cell = i + 1;
    }
    return this.#cells >= this.#columns || this.#isShort(line);
  }

  #readCell(
    bytes: Uint8Array,
    cellFrom: number,
    cellTo: number,
    line: number,
    lineFrom: number,
  ): ProfileProblem | null {
    const index = this.#cells++;
    if (this.#chosen[index] === null) return null;
    let from = cellFrom;
    let to = cellTo;
    while (from < to && isPadding(bytes[from]!)) from++;
    while (to > from && isPadding(bytes[to - 1]!)) to--;
    if (index >= this.#columns)
      return from === to ? null : this.#tooMany(line, from - lineFrom + 1);
    const column = this.#chosen[index];
    if (column === null || column === undefined) return null;
    const value = parseNumber(bytes, from, to, this.#decimal);
    const axis = column.role === 'time' || column.role === 'distance';
    if (axis || !Number.isNaN(value)) this.values[ROLE[column.role]] = value * column.factor;
    if (!Number.isNaN(value)) return null;
    return this.#noNumber(text(bytes, from, to), column, line, from - lineFrom + 1);
  }

  #noNumber(
    found: string,
    { name }: ChosenColumn,
    line: number,
    column: number,
  ): ProfileProblem | null {
    if (found !== '' && !NOT_A_NUMBER.test(found)) {
      const what = `${JSON.stringify(printable(found, 40))} in ${printable(name)} is no number`;
      return { line, column, what, next: 'Mend or remove this row.' };
    }
    this.#notices.add(`no value in ${printable(name)}: the value before is kept`, line);
    return null;
  }

  #tooMany(line: number, column: number): ProfileProblem {
    const what = `this row has more cells than the header's ${this.#columns}`;
    return { line, column, what, next: 'Give each row one cell per column.' };
  }

  /** Columns without a name at the end of the header are those of a trailing separator. */
  #isShort(line: number): boolean | ProfileProblem {
    if (this.#chosen.slice(this.#cells).every((column) => column === null)) return true;
    const what = `this row has ${this.#cells} cells, the header ${this.#columns}`;
    return {
      line,
      column: 1,
      what,
      next: 'Give each row one cell per column, or remove this row.',
    };
  }
}

function isPadding(byte: number): boolean {
  return byte === BLANK || byte === TAB || byte === RETURN || byte === QUOTE;
}

/** First byte that is neither blank nor a separator: a row of separators alone holds nothing. */
function skipBlanks(bytes: Uint8Array, from: number, to: number, delimiter: number): number {
  let i = from;
  while (i < to && (isPadding(bytes[i]!) || bytes[i] === delimiter)) i++;
  return i;
}

function text(bytes: Uint8Array, from: number, to: number): string {
  return new TextDecoder().decode(bytes.subarray(from, Math.min(to, from + 60)));
}
