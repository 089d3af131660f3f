import type { DisplaySettings } from '../../drill/display/display-settings.ts';
import type { LiveView, PlaceTrack } from '../../live/live-view.ts';
import type { Area, CellGrid, Size } from '../cell-grid.ts';
import { paintRaster } from '../dot-raster.ts';
import { stackedAreas } from '../drill-layout.ts';
import type { Look } from '../look.ts';
import { drawMarks, type Mark } from '../mark-labels.ts';
import { drawNow } from '../now-line.ts';
import { solidRaster } from '../own-raster.ts';
import { paintTarget, type TargetRasters } from '../paint-target.ts';
import { drawBaseLine, drawLevelScale } from '../plot-axes.ts';
import { columnOf, type PlotEnds, type PlotScale, scaleBetween } from '../plot-scale.ts';
import { remembered } from '../remembered.ts';
import { laySheet, sheetOf } from '../sheet.ts';
import { dashedRaster, edgesRaster } from '../target-raster.ts';
import { drawEventLetters } from './event-letters.ts';
import { drawPlaces } from './place-axis.ts';
import { valueAt } from './place-curve.ts';
import { levelEnds } from './zone-ends.ts';

/** Columns of a lane from which its marks have room for their whole names. */
const ROOMY_COLS = 60;

/** Rows from which a lane has room for two pictures. */
const STACKED_ROWS = 11;

/** Level over the road, with scales beside and below; on a high lane in two pictures where the driver wants that. */
export function drawLevelLane(
  grid: CellGrid,
  area: Area,
  live: LiveView,
  display: DisplaySettings,
  look: Look,
): void {
  const ends = levelEnds(live, display.zoom);
  const isStacked = display.layout === 'stacked' && area.rows >= STACKED_ROWS;
  const { above, below } = isStacked ? stackedAreas(area) : { above: null, below: area };
  const { own, target } = live.level;
  if (above === null) drawLane(grid, below, ends, live, display, look);
  else {
    drawLane(grid, above, ends, { ...live, level: { target, own: null } }, display, look, false);
    drawLane(grid, below, ends, { ...live, level: { target: null, own } }, display, look);
  }
  drawMarks(grid, below, scaleBetween(ends, below), marksOf(live, below.cols < ROOMY_COLS), look);
}

/** Target with corridor, own trace and now line from back to front, with scales beside and below. */
function drawLane(
  grid: CellGrid,
  area: Area,
  ends: PlotEnds,
  live: LiveView,
  display: DisplaySettings,
  look: Look,
  places = true,
): void {
  const scale = scaleBetween(ends, area);
  const { cols, rows } = grid;
  laySheet(grid, scalesSheet({ cols, rows }, area, ends, places, look));
  const { target, own } = live.level;
  if (target !== null) {
    const seen = { corridor: display.corridor, until: previewEnd(live, display) };
    const rasters = targetRasters(target, live.corridorLevel, ends, area);
    paintTarget(grid, area, rasters, scale, seen, look);
  }
  if (own !== null) {
    drawOwn(grid, area, scale, own, look);
    drawEventLetters(grid, area, scale, live.events, own, look);
  }
  if (live.stage === 'zone') drawNow(grid, area, columnOf(scale, area, live.placeM), look, 'right');
}

/** How far the target is to be seen, m from turn-in. */
function previewEnd(live: LiveView, { previewS }: DisplaySettings): number {
  return previewS === null || live.stage !== 'zone'
    ? Number.POSITIVE_INFINITY
    : live.placeM + previewS * live.speedMps;
}

const scalesSheet = remembered(
  (size: Size, area: Area, ends: PlotEnds, places: boolean, look: Look) =>
    sheetOf(size, (grid) => {
      const scale = scaleBetween(ends, area);
      if (places) drawPlaces(grid, area, ends, scale, look);
      else drawBaseLine(grid, area, look);
      drawLevelScale(grid, area, ends.top, scale, look);
    }),
);

const targetRasters = remembered(
  (target: PlaceTrack, corridor: PlaceTrack | null, ends: PlotEnds, size: Size): TargetRasters => {
    const scale = scaleBetween(ends, size);
    const levelAt = (sM: number): number => valueAt(target, sM);
    return {
      level: dashedRaster(levelAt, scale),
      corridor: corridor && edgesRaster(levelAt, (sM) => valueAt(corridor, sM), scale),
    };
  },
);

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
