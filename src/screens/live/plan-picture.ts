import type { LivePlan } from '../../live/live-view.ts';
import type { Area, CellGrid } from '../cell-grid.ts';
import { paintRaster } from '../dot-raster.ts';
import { flowItems } from '../flow-items.ts';
import type { Look } from '../look.ts';
import { writeText } from '../write-text.ts';
import { planFit } from './plan-fit.ts';
import { planLegend } from './plan-letters.ts';
import { drawPlanMarks, MARGIN_COLS, MARGIN_ROWS } from './plan-marks.ts';
import { roadRaster, shownRoad } from './plan-road.ts';

/** The corner from above, turned so that it fits, with what was done where: the target's beside, the own opposite. */
export function drawPlan(grid: CellGrid, area: Area, plan: LivePlan, look: Look): void {
  const legend = flowItems(planLegend(plan), area.cols, '  ');
  const rows = area.rows - legend.length;
  const road = shownRoad(plan);
  if (rows < 3 + 2 * MARGIN_ROWS || road.length < 2) return;
  const inner: Area = {
    x: area.x + MARGIN_COLS,
    y: area.y + MARGIN_ROWS,
    cols: area.cols - 2 * MARGIN_COLS,
    rows: rows - 2 * MARGIN_ROWS,
  };
  const fit = planFit(road, inner);
  const raster = roadRaster(road, fit, inner);
  paintRaster(grid, inner, raster, look.theme.quiet, look.unicode ? null : '.');
  drawPlanMarks(grid, inner, plan, road, fit, raster, look);
  legend.forEach((line, index) => {
    writeText(grid, area.x, area.y + rows + index, line, look.theme.text);
  });
}
