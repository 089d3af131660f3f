import type { RepLine } from '../drill/drill-view.ts';
import { fixed } from '../number-text.ts';
import { BIG_ROWS, bigNumber, bigNumberWidth } from './big-number.ts';
import { type Area, type CellGrid, clearArea } from './cell-grid.ts';
import { drawGlance, glanceRows } from './glance-words.ts';
import type { Look } from './look.ts';
import { wrapText, writeCentred } from './write-text.ts';

/** One big number and one sentence; where there is room, the one thing of the sentence as large as the number. */
export function drawResult(grid: CellGrid, area: Area, result: RepLine, { theme }: Look): void {
  clearArea(grid, area);
  const score = result.outcome === null ? null : fixed(result.outcome.score, 0);
  const lines = wrapText(sentenceOf(result), area.cols);
  const scoreRows = score === null ? 0 : BIG_ROWS + 1;
  const left = area.rows - scoreRows - lines.length;
  const wordRows = glanceRows(result.glance, { cols: area.cols, rows: left });
  let row = area.y;
  if (score !== null) {
    const scale = scaleOf(score, { ...area, rows: area.rows - wordRows });
    const x = area.x + ((area.cols - bigNumberWidth(score, scale)) >> 1);
    bigNumber(grid, x, row, score, theme.strong, scale);
    row += BIG_ROWS * scale + 1;
  }
  if (wordRows > 0) drawGlance(grid, area, row, result.glance, theme.strong);
  row += wordRows;
  for (const line of lines.slice(0, area.y + area.rows - row))
    writeCentred(grid, area.x, area.cols, row++, line, theme.strong);
}

/** As large as it fits, with the lower half of what is left to both left to the sentence. */
function scaleOf(score: string, { cols, rows }: Area): number {
  const fits = (scale: number): boolean =>
    bigNumberWidth(score, scale) <= cols && 2 * BIG_ROWS * scale <= rows;
  return fits(2) ? 2 : 1;
}

/** Why a rep does not count, or the one thing to tell about it. */
export function sentenceOf(result: RepLine): string {
  if (result.voided !== null) return `does not count: ${result.voided}`;
  if (result.sentence !== '') return result.sentence;
  return result.outcome?.kind === 'no-rep' ? result.outcome.reason : 'in band';
}
