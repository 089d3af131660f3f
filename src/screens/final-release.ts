import { fixed } from '../number-text.ts';
import type { Target } from '../target/target.ts';
import type { CellGrid } from './cell-grid.ts';
import { type CurvePlot, drawCurvePlot } from './curve-plot.ts';
import type { DrillLayout } from './drill-layout.ts';
import type { Look } from './look.ts';
import { layMarks, marksOf } from './mark-labels.ts';
import { SCALE_COLS } from './plot-axes.ts';
import { finalReleaseWindow, targetWindow } from './plot-window.ts';
import { remembered } from './remembered.ts';
import { writeText } from './write-text.ts';

/** The final release once more beside the plot, enlarged, for terminals whose rows are coarser than the corridor. */
export function drawFinalRelease(
  grid: CellGrid,
  { side, headings }: DrillLayout,
  picture: Omit<CurvePlot, 'window'>,
  target: Target,
  look: Look,
): void {
  const window = finalReleaseWindow(target);
  const times = targetWindow(target).topLevel / window.topLevel;
  const heading = `zoom ${fixed(times, 0)}×: final release`;
  writeText(grid, side.x - SCALE_COLS + 2, headings, heading, look.theme.quiet);
  drawCurvePlot(grid, side, { window, ...picture }, look);
  layMarks(grid, side, window, lastMarkOf(target), look);
}

const lastMarkOf = remembered((target: Target) =>
  marksOf(target).filter(({ at }) => at === target.marks.brakeOff),
);
