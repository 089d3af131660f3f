import type { PlaceTrack } from '../../live/live-view.ts';
import type { Area, CellGrid, Size } from '../cell-grid.ts';
import { paintRaster } from '../dot-raster.ts';
import type { Look } from '../look.ts';
import { drawBaseLine, drawLevelScale } from '../plot-axes.ts';
import { type PlotEnds, type PlotScale, scaleBetween } from '../plot-scale.ts';
import { remembered } from '../remembered.ts';
import { type Sheet, sheetOf } from '../sheet.ts';
import { dashedRaster, edgesRaster } from '../target-raster.ts';
import { drawPlaces } from './place-axis.ts';
import { valueAt } from './place-curve.ts';

/** What stands still in a lane of level while the car moves. */
export interface StillLevel {
  readonly target: PlaceTrack | null;
  /** Half width of the corridor around the target; null to leave it out. */
  readonly corridor: PlaceTrack | null;
  /** How far the target is drawn, m from turn-in. */
  readonly untilM: number;
  /** False to leave the places out, for a lane with another one below. */
  readonly places: boolean;
}

/** Scales, corridor and target of a lane of level over the road. */
export const levelSheet: (
  size: Size,
  area: Area,
  ends: PlotEnds,
  still: StillLevel,
  look: Look,
) => Sheet = remembered((size, area, ends, still, look) =>
  sheetOf(size, (grid) => {
    const scale = scaleBetween(ends, area);
    if (still.places) drawPlaces(grid, area, ends, scale, look);
    else drawBaseLine(grid, area, look);
    drawLevelScale(grid, area, ends.top, scale, look);
    if (still.target !== null) drawTarget(grid, area, scale, still.target, still, look);
  }),
);

function drawTarget(
  grid: CellGrid,
  area: Area,
  scale: PlotScale,
  target: PlaceTrack,
  { corridor, untilM }: StillLevel,
  { theme, unicode }: Look,
): void {
  const levelAt = (sM: number): number => valueAt(target, sM);
  if (corridor !== null) {
    const edges = edgesRaster(levelAt, (sM) => valueAt(corridor, sM), scale, untilM);
    paintRaster(grid, area, edges, theme.target, unicode ? null : '.');
  }
  paintRaster(grid, area, dashedRaster(levelAt, scale, untilM), theme.target, unicode ? null : '-');
}
