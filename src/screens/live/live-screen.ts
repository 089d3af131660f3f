import type { DrillView } from '../../drill/drill-view.ts';
import type { LiveView } from '../../live/live-view.ts';
import type { CellGrid } from '../cell-grid.ts';
import type { Look } from '../look.ts';
import { drawPrompt } from '../prompt-line.ts';
import { fitText, textWidth, writeRight, writeText } from '../write-text.ts';
import { drawApproach } from './approach-screen.ts';
import { seenLive } from './seen-live.ts';
import { drawZone } from './zone-screen.ts';

/** One rep with the live car: the strip until the brake takes hold, then the picture over distance, then the result. */
export function drawLive(grid: CellGrid, view: DrillView, whole: LiveView, look: Look): void {
  const live = seenLive(whole, view.feedback);
  drawTitle(grid, view, live, look);
  if (live.stage === 'waiting' || live.stage === 'approach' || isStripOnly(view, live))
    drawApproach(grid, view, live, look);
  else drawZone(grid, view, live, look);
  drawPrompt(grid, PROMPT_ROW, view, look);
}

const PROMPT_ROW = 1;

/** The first of a day drives by boards and place alone. */
function isStripOnly({ feedback }: DrillView, { stage }: LiveView): boolean {
  return feedback === 'first-of-day' && stage === 'zone';
}

function drawTitle(grid: CellGrid, view: DrillView, live: LiveView, { theme }: Look): void {
  const rep = `rep ${view.rep} of ${view.reps}  ·  ${view.feedback}`;
  // The derived target's own name may say the variant already.
  const parts = [view.targetName, view.plan?.title ?? live.carName];
  if (!view.targetName.includes(live.variant)) parts.push(live.variant);
  const title = parts.join('  ·  ');
  writeText(grid, 1, 0, fitText(title, grid.cols - textWidth(rep) - 5), theme.strong);
  writeRight(grid, grid.cols - 2, 0, rep, theme.strong);
}
