import type { LivePlan } from '../../live/live-view.ts';
import { type Area, type CellGrid, type Pen, putCell } from '../cell-grid.ts';
import { DOTS_ACROSS, DOTS_DOWN, type DotRaster } from '../dot-raster.ts';
import type { Look } from '../look.ts';
import type { GroundPoint, PlanFit } from './plan-fit.ts';
import { PLAN_LETTERS, type PlanSide } from './plan-letters.ts';
import type { RoadPlace } from './plan-road.ts';

/** Room for letters around the road. */
export const MARGIN_COLS = 2;
export const MARGIN_ROWS = 1;
/** Dots between the road and the letters beside it, tried in this order until a cell is free. */
const OFFSETS: readonly number[] = [4, 7, 10, 13];

/** A letter for each mark: on the road what belongs to it, the target's to its left, the driver's own to its right. */
export function drawPlanMarks(
  grid: CellGrid,
  area: Area,
  { marks }: LivePlan,
  road: readonly RoadPlace[],
  fit: PlanFit,
  raster: DotRaster,
  { theme }: Look,
): void {
  const pens: Readonly<Record<PlanSide, Pen>> = {
    target: theme.target,
    own: theme.driver,
    road: theme.strong,
  };
  const taken = new Set<number>();
  for (const { sM, kind } of marks) {
    const { letter, side } = PLAN_LETTERS[kind];
    const cell = freeCell(candidates(road, sM, fit, side), raster, taken, side === 'road');
    if (cell === null) continue;
    taken.add(cell.key);
    putCell(grid, area.x + cell.x, area.y + cell.y, letter.charCodeAt(0), pens[side]);
  }
}

interface Dot {
  readonly x: number;
  readonly y: number;
}

/** Dots where a letter may stand, the best first: on the road for what belongs to it, else on its side of the road. */
function candidates(
  road: readonly RoadPlace[],
  sM: number,
  fit: PlanFit,
  side: PlanSide,
): readonly Dot[] {
  const index = nearestIndex(road, sM);
  const here = fit.dotOf(road[index]!);
  const [from, to] = [road[Math.max(0, index - 1)]!, road[Math.min(road.length - 1, index + 1)]!];
  const across = normal(fit, from, to);
  const beside = OFFSETS.map((dots) => (side === 'target' ? dots : -dots)).map((dots) => ({
    x: Math.round(here.x + dots * across.x),
    y: Math.round(here.y + dots * across.y),
  }));
  return side === 'road' ? [here, ...beside] : beside;
}

/** Across the road in dots, to the left of the way it is driven, of length 1. */
function normal(fit: PlanFit, from: GroundPoint, to: GroundPoint): Dot {
  const far = 1000 / fit.dotsPerM;
  const length = Math.hypot(to.xM - from.xM, to.yM - from.yM) || 1;
  const end = {
    xM: from.xM - ((to.yM - from.yM) / length) * far,
    yM: from.yM + ((to.xM - from.xM) / length) * far,
  };
  const [start, left] = [fit.dotOf(from), fit.dotOf(end)];
  return { x: (left.x - start.x) / 1000, y: (left.y - start.y) / 1000 };
}

function nearestIndex(road: readonly RoadPlace[], sM: number): number {
  let best = 0;
  road.forEach((point, index) => {
    if (Math.abs(point.sM - sM) < Math.abs(road[best]!.sM - sM)) best = index;
  });
  return best;
}

/** The first cell that holds no letter and, beside the road, none of the road; cells reach into the margin. */
function freeCell(
  dots: readonly Dot[],
  raster: DotRaster,
  taken: ReadonlySet<number>,
  onRoad: boolean,
): { readonly x: number; readonly y: number; readonly key: number } | null {
  for (const dot of dots) {
    const [x, y] = [Math.floor(dot.x / DOTS_ACROSS), Math.floor(dot.y / DOTS_DOWN)];
    const inside =
      x >= -MARGIN_COLS &&
      x < raster.cols + MARGIN_COLS &&
      y >= -MARGIN_ROWS &&
      y < raster.rows + MARGIN_ROWS;
    const isRoad =
      x >= 0 &&
      x < raster.cols &&
      y >= 0 &&
      y < raster.rows &&
      raster.dots[y * raster.cols + x] !== 0;
    const key = y * 4096 + x;
    if (inside && !taken.has(key) && (onRoad || !isRoad)) return { x, y, key };
  }
  return null;
}
