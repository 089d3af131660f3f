import type { DrillView } from '../drill/drill-view.ts';
import { countText } from '../number-text.ts';
import type { Area, CellGrid, Size } from './cell-grid.ts';
import { drawDisplayMenu } from './display-menu.ts';
import { type DrillLayout, drillLayout } from './drill-layout.ts';
import { drawDrillPicture } from './drill-picture.ts';
import { framedView } from './framed-view.ts';
import { drawRestPicture } from './grip/rest-picture.ts';
import { drawHealth } from './health-line.ts';
import { drawHelp } from './help-overlay.ts';
import { DRILL_HELP, LIVE_HELP } from './key-help.ts';
import { drillKeys, withButtons } from './key-names.ts';
import { drawLaps } from './lap-panel.ts';
import { drawLevelLines } from './level-lines.ts';
import { drawLive } from './live/live-screen.ts';
import type { Look } from './look.ts';
import { isTooCoarse } from './plot-window.ts';
import { drawPrompt } from './prompt-line.ts';
import { remembered } from './remembered.ts';
import { drawRepList } from './rep-list.ts';
import { laySheet, sheetOf } from './sheet.ts';
import { drawSummary } from './summary-panel.ts';
import { fitText, textWidth, writeRight, writeText } from './write-text.ts';

interface DrillScreenOptions extends Look {
  /** True while help stands in front. */
  readonly help?: boolean;
}

/** The drill as it looks in a terminal of that size. */
export function drillScreen(view: DrillView, size: Size, options: DrillScreenOptions): CellGrid {
  return framedView(size, options, (grid) => {
    if (view.live !== null && view.phase !== 'summary') drawLive(grid, view, view.live, options);
    else drawOverTime(grid, view, options);
    if (view.menuRow !== null)
      drawDisplayMenu(grid, view.display, view.menuRow, view.buttons, options);
    if (options.help !== true) return;
    const help = view.live === null ? DRILL_HELP : LIVE_HELP;
    drawHelp(grid, withButtons(help, view.buttons), options);
  });
}

function drawOverTime(grid: CellGrid, view: DrillView, look: Look): void {
  const layout = layoutFor(view, grid);
  drawTitle(grid, layout, view, look);
  const laps = view.plan?.lap == null ? null : view.plan.summaries;
  if (view.phase === 'summary' && laps !== null)
    drawLaps(grid, summaryArea(layout, grid), laps, look);
  else if (view.phase === 'summary' && view.summary !== null)
    drawSummary(grid, summaryArea(layout, grid), view.summary, look, (area) =>
      drawRestPicture(grid, area, view, look),
    );
  else drawRep(grid, layout, view, look);
  drawPrompt(grid, layout.prompt, view, look);
  if (view.phase !== 'summary' || hasRoomForReps(grid))
    drawRepList(grid, layout.reps, view.lastReps, look, view.live !== null);
  drawHealth(grid, layout.health, view, look);
  writeText(grid, 1, layout.keys, drillKeys(view.buttons, grid.cols - 2), look.theme.quiet);
}

/** In a small terminal the block's picture takes the place of the list of reps. */
function hasRoomForReps({ rows }: Size): boolean {
  return rows >= 40;
}

function summaryArea({ headings, reps, health }: DrillLayout, size: Size): Area {
  const end = hasRoomForReps(size) ? reps.y - 1 : health;
  return { x: 1, y: headings, cols: size.cols - 2, rows: end - headings };
}

function layoutFor(view: DrillView, size: Size): DrillLayout {
  const whole = drillLayout(size, false);
  const { layout, zoom } = view.display;
  const isPlain = layout === 'overlaid' && zoom === 1;
  const coarse = isPlain && view.target !== null && isTooCoarse(view.target, whole.plot.rows);
  return coarse ? drillLayout(size, true) : whole;
}

function drawTitle(grid: CellGrid, { title }: DrillLayout, view: DrillView, look: Look): void {
  const { cols, rows } = grid;
  laySheet(grid, titleSheet(cols, rows, title, titleLeft(view), titleRight(view), look));
}

const titleSheet = remembered(
  (cols: number, rows: number, row: number, left: string, right: string, { theme }: Look) =>
    sheetOf({ cols, rows }, (grid) => {
      const room = cols - 5 - textWidth(right);
      writeText(grid, 1, row, fitText(left, room), theme.strong);
      writeRight(grid, cols - 2, row, right, theme.strong);
    }),
);

/** In a plan the place in it stands where the kind of corner stands else. */
function titleLeft({ targetName, cornerType, plan, phase }: DrillView): string {
  if (plan?.lap != null && phase === 'summary') return `${plan.name}  ·  ${plan.title}`;
  return `${targetName}  ·  ${plan?.title ?? cornerType}`;
}

function titleRight({ phase, rep, reps, done, feedback }: DrillView): string {
  if (phase === 'summary')
    return done === reps
      ? `block of ${countText(reps, 'rep')}`
      : `block ended after ${done} of ${countText(reps, 'rep')}`;
  return `rep ${rep} of ${reps}  ·  ${feedback}`;
}

function drawRep(grid: CellGrid, layout: DrillLayout, view: DrillView, look: Look): void {
  drawDrillPicture(grid, layout, view, look);
  drawLevelLines(grid, layout.levels, view, look);
}
