import type { NoteUnderWay } from '../drill/note-typing.ts';
import { type CellGrid, clearArea } from './cell-grid.ts';
import type { Look } from './look.ts';
import { narrowText } from './narrow-text.ts';
import { writeText } from './write-text.ts';

const HINT = 'enter keeps the note, esc leaves only the mark; the next rep waits';

/** The note that is being typed and its keys, in two rows; of a long one the end. */
export function drawNote(
  grid: CellGrid,
  row: number,
  { rep, text }: NoteUnderWay,
  { theme }: Look,
): void {
  clearArea(grid, { x: 0, y: row, cols: grid.cols, rows: 2 });
  const x = writeText(grid, 1, row, `Note on rep ${rep}: `, theme.strong);
  const room = grid.cols - x - 3;
  const letters = [...narrowText(text)];
  const cut = letters.length > room;
  const end = letters.slice(cut ? 1 - room : 0).join('');
  const after = writeText(grid, x, row, cut ? `…${end}` : end, theme.text);
  writeText(grid, after, row, '_', theme.strong);
  writeText(grid, 1, row + 1, HINT, theme.quiet);
}
