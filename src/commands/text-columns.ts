/** Rows as lines of left-aligned columns, two blanks apart; every row has as many cells as the first. */
export function textColumns(rows: readonly (readonly string[])[]): string {
  const widths = rows[0]!.map((_, i) => Math.max(...rows.map((row) => row[i]!.length)));
  return rows
    .map((row) => row.map((cell, i) => cell.padEnd(widths[i]!)))
    .map((cells) => `${cells.join('  ').trimEnd()}\n`)
    .join('');
}
