import type { Corner } from '../corner/corner.ts';
import { type PlanPoint, planView } from '../corner/plan-view.ts';
import type { Area, CellGrid, Size } from '../screens/cell-grid.ts';
import {
  createRaster,
  DOTS_ACROSS,
  DOTS_DOWN,
  paintRaster,
  setDot,
} from '../screens/dot-raster.ts';
import type { Look } from '../screens/look.ts';
import { writeText } from '../screens/write-text.ts';
import type { CornerLetter } from './corner-letters.ts';

const STEP_M = 0.25;

type Place = Pick<PlanPoint, 'sM' | 'xM' | 'yM'>;
type Dot = readonly [x: number, y: number];

/** The straight approach and the line, close together. */
export function planPlaces({ path }: Corner, fromM: number): readonly Place[] {
  const count = Math.ceil(-fromM / STEP_M);
  const approach = Array.from({ length: count }, (_, i) => {
    const sM = fromM * (1 - i / count);
    return { sM, xM: sM, yM: 0 };
  });
  return [...approach, ...planView(path, STEP_M)];
}

/** Metres to dots, the same scale both ways (a dot is about as wide as high), and the rows of cells it takes. */
export function planScale(
  places: readonly Place[],
  most: Size,
): {
  readonly dotOf: (place: Place) => Dot;
  readonly rows: number;
} {
  const [xs, ys] = [places.map(({ xM }) => xM), places.map(({ yM }) => yM)];
  const [left, top] = [Math.min(...xs), Math.max(...ys)];
  const [width, height] = [Math.max(...xs) - left, top - Math.min(...ys)];
  const across = (most.cols * DOTS_ACROSS - 1) / width;
  const scale = Math.min(across, (most.rows * DOTS_DOWN - 1) / Math.max(1, height));
  return {
    dotOf: ({ xM, yM }) => [Math.round((xM - left) * scale), Math.round((top - yM) * scale)],
    rows: Math.floor(Math.round(height * scale) / DOTS_DOWN) + 1,
  };
}

/** A stretch of road from above, with its places. */
interface CornerPlan {
  readonly places: readonly Place[];
  readonly dotOf: (place: Place) => Dot;
  readonly letters: readonly CornerLetter[];
}

/** Draws the line and the letters at their places. */
export function drawCornerPlan(
  grid: CellGrid,
  area: Area,
  { places, dotOf, letters }: CornerPlan,
  { theme, unicode }: Look,
): void {
  const raster = createRaster(area);
  for (const place of places) setDot(raster, ...dotOf(place));
  paintRaster(grid, area, raster, theme.target, unicode ? null : '.');
  const taken = new Set<string>();
  for (const { letter, sM, isTargets } of roadFirst(letters)) {
    const [x, y] = dotOf(nearest(places, sM));
    const [column, row] = [Math.floor(x / DOTS_ACROSS), Math.floor(y / DOTS_DOWN)];
    const rows = [row, row - 1, row + 1].filter((at) => at >= 0 && at < area.rows);
    const free = rows.find((at) => !taken.has(`${column} ${at}`));
    if (free === undefined) continue;
    taken.add(`${column} ${free}`);
    const pen = isTargets === true ? theme.target : theme.strong;
    writeText(grid, area.x + column, area.y + free, letter, pen);
  }
}

/** Where two letters meet, that of the road keeps its place. */
function roadFirst(letters: readonly CornerLetter[]): readonly CornerLetter[] {
  const targets = ({ isTargets = false }: CornerLetter): number => Number(isTargets);
  return letters.toSorted((a, b) => targets(a) - targets(b));
}

function nearest(places: readonly Place[], sM: number): Place {
  return places.reduce((best, place) =>
    Math.abs(place.sM - sM) < Math.abs(best.sM - sM) ? place : best,
  );
}
