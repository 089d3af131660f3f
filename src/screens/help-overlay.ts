import { type CellGrid, clearArea } from './cell-grid.ts';
import type { Look } from './look.ts';
import { textWidth, writeText } from './write-text.ts';

const LEAST_KEY_COLS = 13;

/** A framed panel in the middle, in front of everything else. */
export function drawHelp(
  grid: CellGrid,
  lines: readonly (readonly [string, string])[],
  { theme }: Look,
): void {
  const keyCols = Math.max(LEAST_KEY_COLS, ...lines.map(([key]) => textWidth(key) + 1));
  const inner = Math.max(...lines.map(([, text]) => keyCols + textWidth(text))) + 2;
  const area = {
    x: (grid.cols - inner - 2) >> 1,
    y: (grid.rows - lines.length - 2) >> 1,
    cols: inner + 2,
    rows: lines.length + 2,
  };
  clearArea(grid, { ...area, x: 0, cols: grid.cols });
  const edge = '─'.repeat(inner);
  writeText(grid, area.x, area.y, `┌${edge}┐`, theme.quiet);
  writeText(grid, area.x + 2, area.y, ' help ', theme.strong);
  lines.forEach(([key, text], index) => {
    const row = area.y + 1 + index;
    writeText(grid, area.x, row, '│', theme.quiet);
    writeText(grid, area.x + 2, row, key, theme.strong);
    writeText(grid, area.x + 2 + keyCols, row, text, theme.text);
    writeText(grid, area.x + area.cols - 1, row, '│', theme.quiet);
  });
  writeText(grid, area.x, area.y + area.rows - 1, `└${edge}┘`, theme.quiet);
}
