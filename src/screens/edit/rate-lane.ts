import { overTime } from '../../target/over-time.ts';
import type { Target } from '../../target/target.ts';
import { travelOf } from '../../target/travel.ts';
import type { Area, CellGrid } from '../cell-grid.ts';
import { createRaster, paintRaster, setSpan } from '../dot-raster.ts';
import type { Look } from '../look.ts';
import { type PlotScale, scaleBetween } from '../plot-scale.ts';
import { writeRight, writeText } from '../write-text.ts';
import { alongOf } from './along-axis.ts';

const HALF_S = 0.01;
const TOPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100] as const;

/** How fast the pressure goes down along the curve, level per second, filled from the bottom. */
export function drawRateLane(
  grid: CellGrid,
  area: Area,
  target: Target,
  scale: PlotScale,
  look: Look,
): void {
  const rateAt = releaseRate(target);
  const rates = Array.from({ length: scale.dotCols }, (_, x) =>
    rateAt(alongOf(target.domain, scale.at(x + 0.5))),
  );
  const most = Math.max(...rates);
  const top = TOPS.find((each) => each >= most) ?? most;
  const { dotY, dotRows } = scaleBetween({ from: 0, to: 1, bottom: 0, top }, area);
  const raster = createRaster(area);
  rates.forEach((rate, x) => {
    if (rate > 0.002 * top) setSpan(raster, x, dotY(Math.min(top, rate)), dotRows - 1);
  });
  writeText(grid, 1, area.y - 1, 'rate of release, % of full scale per second', look.theme.quiet);
  writeRight(grid, area.x - 2, area.y, percent(top), look.theme.quiet);
  writeRight(grid, area.x - 2, area.y + area.rows - 1, '0', look.theme.quiet);
  paintRaster(grid, area, raster, look.theme.target, look.unicode ? null : '#');
}

function percent(level: number): string {
  return String(Math.round(100 * level));
}

/** Level per second at a place of the target's own axis; 0 where it does not fall. */
function releaseRate(target: Target): (at: number) => number {
  const timed = overTime(target);
  const travel = target.speeds === null ? null : travelOf(target.level, target.speeds);
  return (at) => {
    const timeS = travel === null ? at : travel.timeAt(at);
    if (timeS < timed.marks.peak) return 0;
    const fall = timed.level.at(timeS - HALF_S) - timed.level.at(timeS + HALF_S);
    return Math.max(0, fall / (2 * HALF_S));
  };
}
