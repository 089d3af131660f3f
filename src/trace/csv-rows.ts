import type { ProfilePlace } from '../profile/profile-problem.ts';

/** One cell without the blanks around it; its place is that of its first character. */
export interface CsvCell extends ProfilePlace {
  readonly text: string;
}

/**
 * Rows of plain comma-separated text. Blank lines and lines that start with `#` are left out; a byte order mark and
 * either line ending are accepted. Quotes mean nothing: the files hold numbers.
 */
export function csvRows(text: string): CsvCell[][] {
  const rows: CsvCell[][] = [];
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  lines.forEach((content, i) => {
    const start = content.trimStart();
    if (start !== '' && !start.startsWith('#')) rows.push(cellsOf(content, i + 1));
  });
  return rows;
}

function cellsOf(content: string, line: number): CsvCell[] {
  let column = 1;
  return content.split(',').map((raw) => {
    const blanks = raw.length - raw.trimStart().length;
    const cell = { text: raw.trim(), line, column: column + blanks };
    column += raw.length + 1;
    return cell;
  });
}
