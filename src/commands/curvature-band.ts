import type { Corner } from '../corner/corner.ts';
import type { Area, CellGrid } from '../screens/cell-grid.ts';
import {
  createRaster,
  DOTS_ACROSS,
  DOTS_DOWN,
  paintRaster,
  setSpan,
} from '../screens/dot-raster.ts';
import type { Look } from '../screens/look.ts';
import { writeRight, writeText } from '../screens/write-text.ts';
import { distanceText, type TextUnits } from '../unit-text.ts';
import type { CornerLetter } from './corner-letters.ts';

/** What the curvature is drawn of: the path from a place before turn-in on. */
interface CurvatureBand {
  readonly corner: Corner;
  readonly fromM: number;
  readonly letters: readonly CornerLetter[];
  readonly units: TextUnits;
}

/** Filled from the straight: to the left up, to the right down. */
export function drawCurvature(
  grid: CellGrid,
  area: Area,
  { corner: { path }, fromM, letters, units }: CurvatureBand,
  { theme, unicode }: Look,
): void {
  const dots = area.cols * DOTS_ACROSS;
  const length = path.lengthM - fromM;
  const values = Array.from({ length: dots }, (_, x) =>
    path.curvatureAt(fromM + (length * (x + 0.5)) / dots),
  );
  const [left, right] = [Math.max(0, ...values), Math.min(0, ...values)];
  const lowest = area.rows * DOTS_DOWN - 1;
  const dotY = (value: number): number => Math.round(((left - value) / (left - right)) * lowest);
  const raster = createRaster(area);
  values.forEach((value, x) => {
    setSpan(raster, x, dotY(0), dotY(value));
  });
  paintRaster(grid, area, raster, theme.target, unicode ? null : '#');
  writeText(grid, 0, area.y - 1, 'radius', theme.quiet);
  const label = (row: number, curvature: number, side: string): void => {
    if (curvature === 0) return;
    const text = `${distanceText(1 / Math.abs(curvature), units, 0)} ${side}`;
    writeRight(grid, area.x - 2, area.y + row, text, theme.quiet);
  };
  label(0, left, 'L');
  label(area.rows - 1, right, 'R');
  for (const { letter, sM, isTargets } of letters) {
    const column = Math.min(area.cols - 1, Math.floor(((sM - fromM) / length) * area.cols));
    const row = area.y + area.rows + (isTargets === true ? 1 : 0);
    writeText(grid, area.x + column, row, letter, isTargets === true ? theme.target : theme.strong);
  }
}
