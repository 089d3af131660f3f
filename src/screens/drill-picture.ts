import type { DrillView } from '../drill/drill-view.ts';
import { fixed } from '../number-text.ts';
import type { Target } from '../target/target.ts';
import type { Area, CellGrid } from './cell-grid.ts';
import { drawCountdown } from './countdown-panel.ts';
import { type CurvePlot, drawCurvePlot } from './curve-plot.ts';
import { type DrillLayout, stackedAreas } from './drill-layout.ts';
import { drawFinalRelease } from './final-release.ts';
import { drawRestPicture } from './grip/rest-picture.ts';
import type { Look } from './look.ts';
import { layMarks, marksOf } from './mark-labels.ts';
import { ownWindow, targetWindow } from './plot-window.ts';
import { remembered } from './remembered.ts';
import { drawResult } from './result-panel.ts';
import { laySheet, sheetOf } from './sheet.ts';
import { isBlind } from './visible-rep.ts';
import { writeCentred, writeRight, writeText } from './write-text.ts';

/** The one picture of a rep: target and trace, or the count, or the result beside them. */
export function drawDrillPicture(
  grid: CellGrid,
  layout: DrillLayout,
  view: DrillView,
  look: Look,
): void {
  if (view.phase === 'rest' && drawRestPicture(grid, wholeArea(layout, grid), view, look)) return;
  if (view.target !== null) drawTargetPlot(grid, layout, view, view.target, look);
  else drawWithoutTarget(grid, layout, view, look);
  if (view.phase === 'countdown' && view.toCueS !== null)
    drawCountdown(grid, layout.plot, view.toCueS, look);
  if (view.phase === 'result' && view.result !== null)
    drawResult(grid, layout.side, view.result, look);
}

/** The plot with its scales. */
function wholeArea({ plot, levels }: DrillLayout, { cols }: CellGrid): Area {
  return { x: 1, y: plot.y, cols: cols - 2, rows: levels - plot.y };
}

function drawTargetPlot(
  grid: CellGrid,
  layout: DrillLayout,
  view: DrillView,
  target: Target,
  look: Look,
): void {
  const { display } = view;
  const own = isBlind(view) ? null : view.own;
  const nowS = nowOf(view);
  const ahead =
    display.previewS === null || nowS === null ? {} : { targetUntilS: nowS + display.previewS };
  const picture = { target, own, nowS, corridor: display.corridor, ...ahead };
  const window = targetWindow(target, display.zoom);
  const plot = display.layout === 'stacked' ? drawStacked : drawOverlaid;
  plot(grid, layout.plot, { window, ...picture }, target, look);
  drawHeadings(grid, layout, { target: true, corridor: display.corridor }, look);
  if (display.zoom > 1) drawZoom(grid, layout, display.zoom, look);
  if (isBeside(layout) && !(view.phase === 'result' && view.result !== null))
    drawFinalRelease(grid, layout, picture, target, look);
  if (isBlind(view)) drawClock(grid, layout, view, look);
}

type DrawPlot = (grid: CellGrid, area: Area, plot: CurvePlot, target: Target, look: Look) => void;

const drawOverlaid: DrawPlot = (grid, area, plot, target, look) => {
  drawCurvePlot(grid, area, plot, look);
  layMarks(grid, area, plot.window, marksOf(target), look);
};

/** Target above and own trace below, on the same scales and with one now line through both. */
const drawStacked: DrawPlot = (grid, area, plot, target, look) => {
  const { above, below } = stackedAreas(area);
  drawCurvePlot(grid, above, { ...plot, own: null, times: false }, look);
  drawCurvePlot(grid, below, { ...plot, target: null }, look);
  layMarks(grid, below, plot.window, marksOf(target), look);
};

function isBeside({ plot, side }: DrillLayout): boolean {
  return plot.x + plot.cols <= side.x;
}

/** At rest at 0 until the onset; gone when the rep is over. */
function nowOf(view: DrillView): number | null {
  if (view.phase === 'braking') return view.nowS;
  return view.phase === 'cue' || view.phase === 'countdown' || view.phase === 'arming' ? 0 : null;
}

/** What a picture has beside the own trace. */
interface Drawn {
  readonly target: boolean;
  readonly corridor: boolean;
}

function drawHeadings(grid: CellGrid, { headings }: DrillLayout, has: Drawn, look: Look): void {
  const { cols, rows } = grid;
  laySheet(grid, headingsSheet(cols, rows, headings, has, look));
}

const headingsSheet = remembered(
  (cols: number, rows: number, row: number, has: Drawn, { theme, unicode }: Look) =>
    sheetOf({ cols, rows }, (grid) => {
      let x = writeText(grid, 1, row, 'brake, % of full scale  ', theme.quiet);
      if (has.target)
        x = writeText(grid, x, row, unicode ? '╌╌ target ' : '-- target ', theme.target);
      if (has.target && has.corridor)
        x = writeText(grid, x, row, unicode ? '·· corridor ' : '.. corridor ', theme.target);
      writeText(grid, x, row, unicode ? '━━ you' : '## you', theme.driver);
    }),
);

/** That the picture's top is not full scale. */
function drawZoom(grid: CellGrid, { headings }: DrillLayout, zoom: number, { theme }: Look): void {
  writeRight(grid, grid.cols - 2, headings, `zoom ${zoom}×: the lower part`, theme.quiet);
}

function drawWithoutTarget(grid: CellGrid, layout: DrillLayout, view: DrillView, look: Look): void {
  const { plot } = layout;
  if (view.own !== null && !isBlind(view)) {
    const window = ownWindow(view.own);
    drawCurvePlot(grid, plot, { window, target: null, own: view.own, nowS: null }, look);
    drawHeadings(grid, layout, { target: false, corridor: false }, look);
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
  writeText(grid, 1, levels + 1, `clock ${fixed(view.nowS, 1)} s`, look.theme.strong);
}
