/** A cell of a spreadsheet; null is an empty one. */
export type CsvCell = string | number | null;

/** What a spreadsheet takes for the beginning of a formula: at the start of a cell, and of what another separator cuts. */
const AT_START = /^(?=[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20])/;
const INSIDE = /([;,|\t\r\n"])(?=[=+\-@\uff1d\uff0b\uff0d\uff20])/g;

/**
 * A row by RFC 4180, with its line end. Texts come from outside: in them an apostrophe goes before whatever a
 * spreadsheet could run as a formula, also where it cuts at semicolons. Numbers have a decimal point and no grouping.
 */
export function csvRow(cells: readonly CsvCell[]): string {
  return `${cells.map(cellText).join(',')}\r\n`;
}

/** Tells a spreadsheet that a file is UTF-8. */
export const BYTE_ORDER_MARK = '\ufeff';

function cellText(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const safe = cell.replace(INSIDE, "$1'").replace(AT_START, "'");
  return /[",;\t\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
