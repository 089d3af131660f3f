import { curvePoints } from '../../target/edit/curve-point.ts';
import { selectedPoint } from '../../target/edit/edit-model.ts';
import { type Area, type CellGrid, putCell } from '../cell-grid.ts';
import { paintRaster } from '../dot-raster.ts';
import { drawPlaces } from '../live/place-axis.ts';
import type { Look } from '../look.ts';
import { drawMarks, marksOf } from '../mark-labels.ts';
import { drawAxes, drawLevelScale } from '../plot-axes.ts';
import { columnOf, type PlotEnds, type PlotScale, rowOf } from '../plot-scale.ts';
import { dashedRaster, edgesRaster } from '../target-raster.ts';
import { alongOf } from './along-axis.ts';
import type { EditView } from './edit-view.ts';
import { lineRaster } from './line-raster.ts';

/** The curve with its corridor, what the grip allows, the points and the names of the key points. */
export function drawEditPlot(
  grid: CellGrid,
  area: Area,
  ends: PlotEnds,
  scale: PlotScale,
  view: EditView,
  look: Look,
): void {
  const { target } = view.model.now;
  const { theme, unicode } = look;
  const ownAxis = (along: number): number => alongOf(target.domain, along);
  const levelAt = (along: number): number => target.level.at(ownAxis(along));
  drawScales(grid, area, ends, scale, view, look);
  if (view.car !== null) {
    const { limitAt } = view.car;
    const limit = dashedRaster((along) => limitAt(ownAxis(along)), scale);
    paintRaster(grid, area, limit, theme.quiet, unicode ? null : '-');
  }
  const corridor = edgesRaster(levelAt, (along) => target.corridorAt(ownAxis(along)), scale);
  paintRaster(grid, area, corridor, theme.target, unicode ? null : '.');
  paintRaster(grid, area, lineRaster(levelAt, scale), theme.target, unicode ? null : '#');
  drawPoints(grid, area, scale, view, look);
}

function drawScales(
  grid: CellGrid,
  area: Area,
  ends: PlotEnds,
  scale: PlotScale,
  { model }: EditView,
  look: Look,
): void {
  const { target } = model.now;
  if (target.domain === 'time') {
    const window = { fromS: ends.from, toS: ends.to, topLevel: ends.top };
    drawAxes(grid, area, window, scale, look);
  } else {
    drawLevelScale(grid, area, ends.top, scale, look);
    // in metres as the file has them: its numbers are changed here
    drawPlaces(grid, area, ends, scale, { ...look, units: 'metric' });
  }
  const marks = marksOf(target)
    .map(({ at, name }) => ({ at: alongOf(target.domain, at), name }))
    .toSorted((a, b) => a.at - b.at);
  drawMarks(grid, area, scale, marks, look);
}

const POINT = '○'.codePointAt(0)!;
const CHOSEN = '●'.codePointAt(0)!;

/** The chosen point last, and a line down from it where its place is not on the curve. */
function drawPoints(
  grid: CellGrid,
  area: Area,
  scale: PlotScale,
  { model }: EditView,
  { theme }: Look,
): void {
  const { file, target } = model.now;
  const chosen = selectedPoint(model);
  const put = (at: number, isChosen: boolean): void => {
    const x = columnOf(scale, area, alongOf(target.domain, at));
    const y = Math.min(area.y + area.rows - 1, rowOf(scale, area, target.level.at(at)));
    putCell(grid, x, y, isChosen ? CHOSEN : POINT, isChosen ? theme.driver : theme.strong);
  };
  for (const { at, id } of curvePoints(file)) if (at !== null && id !== chosen.id) put(at, false);
  if (chosen.at !== null) put(chosen.at, true);
}
