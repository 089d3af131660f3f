import type { RepLine } from '../drill/drill-view.ts';
import { BIG_ROWS, bigNumber, bigNumberWidth } from './big-number.ts';
import { type Area, type CellGrid, clearArea } from './cell-grid.ts';
import type { Look } from './look.ts';
import { tidy } from './number-text.ts';
import { wrapText, writeCentred } from './write-text.ts';

/** One big number and one sentence. */
export function drawResult(grid: CellGrid, area: Area, result: RepLine, { theme }: Look): void {
  clearArea(grid, area);
  const score = result.outcome === null ? null : tidy(result.outcome.score, 0);
  let row = area.y;
  if (score !== null) {
    const x = area.x + ((area.cols - bigNumberWidth(score)) >> 1);
    bigNumber(grid, x, row, score, theme.strong);
    row += BIG_ROWS + 1;
  }
  for (const line of wrapText(sentenceOf(result), area.cols).slice(0, area.y + area.rows - row))
    writeCentred(grid, area.x, area.cols, row++, line, theme.strong);
}

/** Why a rep does not count, or the one thing to tell about it. */
export function sentenceOf(result: RepLine): string {
  if (result.voided !== null) return `does not count: ${result.voided}`;
  if (result.sentence !== '') return result.sentence;
  return result.outcome?.kind === 'no-rep' ? result.outcome.reason : 'in band';
}
