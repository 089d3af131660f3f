import type { LiveView, PlaceTrack } from '../../live/live-view.ts';
import type { Area, CellGrid } from '../cell-grid.ts';
import { paintRaster } from '../dot-raster.ts';
import type { Look } from '../look.ts';
import { drawMarks, type Mark } from '../mark-labels.ts';
import { drawNow } from '../now-line.ts';
import { solidRaster } from '../own-raster.ts';
import { drawLevelScale } from '../plot-axes.ts';
import { columnOf, type PlotScale, scaleBetween } from '../plot-scale.ts';
import { dashedRaster, edgesRaster } from '../target-raster.ts';
import { drawEventLetters } from './event-letters.ts';
import { drawPlaces } from './place-axis.ts';
import { valueAt } from './place-curve.ts';
import { levelEnds } from './zone-ends.ts';

/** Columns of a lane from which its marks have room for their whole names. */
const ROOMY_COLS = 60;

/** Level over the road: target with corridor, now line and own trace from back to front, scales beside and below. */
export function drawLevelLane(grid: CellGrid, area: Area, live: LiveView, look: Look): void {
  const ends = levelEnds(live);
  const scale = scaleBetween(ends, area);
  drawLevelScale(grid, area, ends.top, scale, look);
  drawPlaces(grid, area, ends, scale, look);
  drawTarget(grid, area, scale, live, look);
  if (live.stage === 'zone') drawNow(grid, area, columnOf(scale, area, live.placeM), look, 'right');
  drawMarks(grid, area, scale, marksOf(live, area.cols < ROOMY_COLS), look);
  if (live.level.own === null) return;
  drawOwn(grid, area, scale, live.level.own, look);
  drawEventLetters(grid, area, scale, live.events, live.level.own, look);
}

function drawTarget(
  grid: CellGrid,
  area: Area,
  scale: PlotScale,
  { level: { target }, corridorLevel }: LiveView,
  { theme, unicode }: Look,
): void {
  if (target === null) return;
  const levelAt = (sM: number): number => valueAt(target, sM);
  if (corridorLevel !== null) {
    const edges = edgesRaster(levelAt, (sM) => valueAt(corridorLevel, sM), scale);
    paintRaster(grid, area, edges, theme.target, unicode ? null : '.');
  }
  paintRaster(grid, area, dashedRaster(levelAt, scale), theme.target, unicode ? null : '-');
}

/** Own trace of a lane, up to where the car is. */
export function drawOwn(
  grid: CellGrid,
  area: Area,
  scale: PlotScale,
  { placeM, value }: PlaceTrack,
  { theme, unicode }: Look,
): void {
  const raster = solidRaster(placeM, value, scale, Number.NEGATIVE_INFINITY);
  paintRaster(grid, area, raster, theme.driver, unicode ? null : '#');
}

function marksOf(live: LiveView, short: boolean): readonly Mark[] {
  const marks: Mark[] = [
    { at: live.turnInM, name: 'turn-in' },
    { at: live.slowestM, name: 'slowest' },
  ];
  if (live.level.target !== null) marks.push({ at: live.fromM, name: 'brake point' });
  if (live.startOfReleaseM !== null)
    marks.push({ at: live.startOfReleaseM, name: short ? 'release' : 'start of release' });
  return marks.toSorted((a, b) => a.at - b.at);
}
