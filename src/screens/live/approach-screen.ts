import type { DrillView } from '../../drill/drill-view.ts';
import type { LiveView } from '../../live/live-view.ts';
import { bigWord, bigWordWidth } from '../big-word.ts';
import type { CellGrid } from '../cell-grid.ts';
import type { Look } from '../look.ts';
import { wrapText, writeRight, writeText } from '../write-text.ts';
import { drawStrip } from './approach-strip.ts';
import { boardBeat, drawBeat } from './board-beat.ts';
import { fadeWords } from './fade-words.ts';
import { drawFooter } from './live-footer.ts';
import { stripLayout, zoneLayout } from './live-layout.ts';
import { whereText } from './place-text.ts';

/** The strip and the number of the next board; a late call large above it. */
export function drawApproach(grid: CellGrid, view: DrillView, live: LiveView, look: Look): void {
  const layout = stripLayout(grid);
  const { beat, scale } = layout;
  drawStrip(grid, layout, live.marks, live.placeM, look);
  if (live.call !== null) {
    const x = Math.max(0, (grid.cols - bigWordWidth(live.call, scale)) >> 1);
    bigWord(grid, x, layout.call, live.call, look.theme.strong, scale);
  }
  if (live.stage === 'waiting') {
    drawWaiting(grid, view, live, beat.y, look);
    return;
  }
  const board = boardBeat(live.marks, live.placeM, live.speedMps);
  if (board !== null) drawBeat(grid, beat, board, scale, look);
  writeRight(
    grid,
    grid.cols - 2,
    beat.y + 1,
    whereText(live.placeM, look.units),
    look.theme.strong,
  );
}

/** While nothing moves there is time to read. */
function drawWaiting(
  grid: CellGrid,
  view: DrillView,
  live: LiveView,
  top: number,
  look: Look,
): void {
  const { health, keys } = zoneLayout(grid);
  const lines = [
    'One line of road, 150 m long: a mark that touches the bar is where you are.',
    ...live.remarks,
    ...fadeWords(live, look.units),
  ].flatMap((remark) => wrapText(remark, grid.cols - 2));
  lines.slice(0, health - top - 1).forEach((line, index) => {
    writeText(grid, 1, top + 1 + index, line, look.theme.text);
  });
  drawFooter(grid, view, health, keys, look);
}
