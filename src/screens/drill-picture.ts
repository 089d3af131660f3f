import type { DrillView } from '../drill/drill-view.ts';
import type { Target } from '../target/target.ts';
import type { CellGrid } from './cell-grid.ts';
import { drawCountdown } from './countdown-panel.ts';
import { drawCurvePlot } from './curve-plot.ts';
import type { DrillLayout } from './drill-layout.ts';
import { drawFinalRelease } from './final-release.ts';
import type { Look } from './look.ts';
import { drawMarks, marksOf } from './mark-labels.ts';
import { tidy } from './number-text.ts';
import { ownWindow, targetWindow } from './plot-window.ts';
import { drawResult } from './result-panel.ts';
import { isBlind } from './visible-rep.ts';
import { writeCentred, writeText } from './write-text.ts';

/** The one picture of a rep: target and trace, or the count, or the result beside them. */
export function drawDrillPicture(
  grid: CellGrid,
  layout: DrillLayout,
  view: DrillView,
  look: Look,
): void {
  if (view.target !== null) drawTargetPlot(grid, layout, view, view.target, look);
  else drawWithoutTarget(grid, layout, view, look);
  if (view.phase === 'countdown' && view.toCueS !== null)
    drawCountdown(grid, layout.plot, view.toCueS, look);
  if (view.phase === 'result' && view.result !== null)
    drawResult(grid, layout.side, view.result, look);
}

function drawTargetPlot(
  grid: CellGrid,
  layout: DrillLayout,
  view: DrillView,
  target: Target,
  look: Look,
): void {
  const { plot } = layout;
  const own = isBlind(view) ? null : view.own;
  const picture = { target, own, nowS: nowOf(view) };
  const scale = drawCurvePlot(grid, plot, { window: targetWindow(target), ...picture }, look);
  drawMarks(grid, plot, scale, marksOf(target), look);
  drawHeadings(grid, layout, true, look);
  if (isBeside(layout) && !(view.phase === 'result' && view.result !== null))
    drawFinalRelease(grid, layout, picture, target, look);
  if (isBlind(view)) drawClock(grid, layout, view, look);
}

function isBeside({ plot, side }: DrillLayout): boolean {
  return plot.x + plot.cols <= side.x;
}

/** At rest at 0 until the onset; gone when the rep is over. */
function nowOf(view: DrillView): number | null {
  if (view.phase === 'braking') return view.nowS;
  return view.phase === 'cue' || view.phase === 'countdown' || view.phase === 'arming' ? 0 : null;
}

function drawHeadings(
  grid: CellGrid,
  { headings }: DrillLayout,
  hasTarget: boolean,
  { theme, unicode }: Look,
): void {
  let x = writeText(grid, 1, headings, 'brake, % of full scale  ', theme.quiet);
  const target = unicode ? '╌╌ target ·· corridor ' : '-- target .. corridor ';
  if (hasTarget) x = writeText(grid, x, headings, target, theme.target);
  writeText(grid, x, headings, unicode ? '━━ you' : '## you', theme.driver);
}

function drawWithoutTarget(grid: CellGrid, layout: DrillLayout, view: DrillView, look: Look): void {
  const { plot } = layout;
  if (view.own !== null && !isBlind(view)) {
    const window = ownWindow(view.own);
    drawCurvePlot(grid, plot, { window, target: null, own: view.own, nowS: null }, look);
    drawHeadings(grid, layout, false, look);
    return;
  }
  if (view.phase === 'countdown') return;
  const row = plot.y + (plot.rows >> 1);
  writeCentred(
    grid,
    0,
    grid.cols,
    row,
    'No target: brake as you would on an out-lap.',
    look.theme.text,
  );
  if (isBlind(view)) drawClock(grid, layout, view, look);
}

/** Time since the onset, which a rep by feel shows in place of the trace. */
function drawClock(grid: CellGrid, { levels }: DrillLayout, view: DrillView, look: Look): void {
  writeText(grid, 1, levels + 1, `clock ${tidy(view.nowS, 1)} s`, look.theme.strong);
}
