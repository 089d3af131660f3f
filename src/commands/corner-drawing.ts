import type { Corner } from '../corner/corner.ts';
import { asciiFallback } from '../screens/ascii-fallback.ts';
import { type Area, createGrid, type Size } from '../screens/cell-grid.ts';
import { toText } from '../screens/grid-text.ts';
import type { Look } from '../screens/look.ts';
import type { TextUnits } from '../unit-text.ts';
import type { CornerLetter } from './corner-letters.ts';
import { drawCornerPlan, planPlaces, planScale } from './corner-plan.ts';
import { drawCurvature } from './curvature-band.ts';

const COLS = 80;
const PLAN_X = 2;
const PLAN_MOST: Size = { cols: COLS - 4, rows: 16 };
const CURVATURE_X = 9;
const CURVATURE_ROWS = 6;
/** Part of the approach that the picture shows beside the line, as a share of its length. */
const APPROACH_SHARE = 0.6;

/** Plan view to scale, and the curvature along the same stretch below it, in 80 columns. */
export function cornerDrawing(
  corner: Corner,
  letters: readonly CornerLetter[],
  look: Look,
  units: TextUnits,
): string {
  const fromM = -shownApproachM(corner, letters);
  const places = planPlaces(corner, fromM);
  const { dotOf, rows } = planScale(places, PLAN_MOST);
  const plan: Area = { x: PLAN_X, y: 0, cols: PLAN_MOST.cols, rows };
  const band: Area = { x: CURVATURE_X, y: rows + 2, cols: COLS - 11, rows: CURVATURE_ROWS };
  const grid = createGrid({ cols: COLS, rows: band.y + band.rows + 2 });
  drawCornerPlan(grid, plan, { places, dotOf, letters }, look);
  drawCurvature(grid, band, { corner, fromM, letters, units }, look);
  if (!look.unicode) asciiFallback(grid);
  return toText(grid).trimEnd();
}

/** Far enough back for every bump on the approach. */
function shownApproachM({ path, approachM }: Corner, letters: readonly CornerLetter[]): number {
  const furthest = -Math.min(0, ...letters.map(({ sM }) => sM));
  return Math.min(approachM, Math.max(APPROACH_SHARE * path.lengthM, 1.1 * furthest));
}
