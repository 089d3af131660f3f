import type { LiveView, PlaceTrack } from '../../live/live-view.ts';
import { type Area, type CellGrid, putCell, type Size } from '../cell-grid.ts';
import { paintRaster } from '../dot-raster.ts';
import type { Look } from '../look.ts';
import { columnOf, type PlotEnds, type PlotScale, rowOf, scaleBetween } from '../plot-scale.ts';
import { remembered } from '../remembered.ts';
import { laySheet, sheetOf } from '../sheet.ts';
import { dashedRaster } from '../target-raster.ts';
import { writeRight } from '../write-text.ts';
import { drawOwn } from './level-lane.ts';
import { valueAt } from './place-curve.ts';
import { steeringEnds } from './zone-ends.ts';

/** Angle at the wheel over the same road, left upwards; without a wheel the target's alone. */
export function drawSteeringLane(grid: CellGrid, area: Area, live: LiveView, look: Look): void {
  const ends = steeringEnds(live);
  const scale = scaleBetween(ends, area);
  const { target, own } = live.steeringDeg;
  const { cols, rows } = grid;
  laySheet(grid, stillSheet({ cols, rows }, area, ends, target, look));
  if (own !== null && live.hasWheel) drawOwn(grid, area, scale, own, look);
  if (live.stage === 'zone') drawNow(grid, area, columnOf(scale, area, live.placeM), look);
}

/** What stands still while the car moves: the scale and the target. */
const stillSheet = remembered(
  (size: Size, area: Area, ends: PlotEnds, target: PlaceTrack | null, look: Look) =>
    sheetOf(size, (grid) => {
      const scale = scaleBetween(ends, area);
      drawAngles(grid, area, scale, ends, look);
      if (target === null) return;
      const raster = dashedRaster((sM) => valueAt(target, sM), scale);
      paintRaster(grid, area, raster, look.theme.target, look.unicode ? null : '-');
    }),
);

function drawAngles(
  grid: CellGrid,
  area: Area,
  scale: PlotScale,
  { bottom, top }: PlotEnds,
  { theme }: Look,
): void {
  const label = (angle: number, text: string): void =>
    writeRight(grid, area.x - 2, rowOf(scale, area, angle), text, theme.quiet);
  if (top > 0) label(top, `${top.toFixed(0)} L`);
  if (bottom < 0) label(bottom, `${(-bottom).toFixed(0)} R`);
  label(0, '0');
}

/** The line of the moment goes on from the lane above. */
function drawNow(grid: CellGrid, area: Area, column: number, { theme }: Look): void {
  if (column < area.x || column >= area.x + area.cols) return;
  for (let row = 0; row < area.rows; row++)
    putCell(grid, column, area.y + row, '│'.codePointAt(0)!, theme.now);
}
