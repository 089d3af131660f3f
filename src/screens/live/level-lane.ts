import type { DisplaySettings } from '../../drill/display/display-settings.ts';
import type { LiveView, PlaceTrack } from '../../live/live-view.ts';
import type { Area, CellGrid } from '../cell-grid.ts';
import { paintRaster } from '../dot-raster.ts';
import { stackedAreas } from '../drill-layout.ts';
import type { Look } from '../look.ts';
import { drawMarks, type Mark } from '../mark-labels.ts';
import { drawNow } from '../now-line.ts';
import { solidRaster } from '../own-raster.ts';
import { columnOf, type PlotEnds, type PlotScale, scaleBetween } from '../plot-scale.ts';
import { laySheet } from '../sheet.ts';
import { drawEventLetters } from './event-letters.ts';
import { levelSheet } from './level-sheet.ts';
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

/** Target with corridor, now line and own trace from back to front, with scales beside and below. */
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
  const still = {
    target: live.level.target,
    corridor: display.corridor ? live.corridorLevel : null,
    untilM: previewEnd(live, display, scale),
    places,
  };
  laySheet(grid, levelSheet({ cols, rows }, area, ends, still, look));
  if (live.stage === 'zone') drawNow(grid, area, columnOf(scale, area, live.placeM), look, 'right');
  if (live.level.own === null) return;
  drawOwn(grid, area, scale, live.level.own, look);
  drawEventLetters(grid, area, scale, live.events, live.level.own, look);
}

/** How far the target is to be seen, in whole dots, so that the sheet is another one only with the next dot. */
function previewEnd(live: LiveView, { previewS }: DisplaySettings, scale: PlotScale): number {
  const untilM =
    previewS === null || live.stage !== 'zone'
      ? Number.POSITIVE_INFINITY
      : live.placeM + previewS * live.speedMps;
  return scale.at(Math.min(scale.dotCols, scale.dotX(untilM)));
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
