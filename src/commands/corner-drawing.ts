import { apexesM, apexM } from '../corner/apex.ts';
import type { Corner } from '../corner/corner.ts';
import { type PlanPoint, planView } from '../corner/plan-view.ts';
import { asciiFallback } from '../screens/ascii-fallback.ts';
import { type Area, type CellGrid, createGrid, type Size } from '../screens/cell-grid.ts';
import {
  createRaster,
  DOTS_ACROSS,
  DOTS_DOWN,
  paintRaster,
  setDot,
  setSpan,
} from '../screens/dot-raster.ts';
import { toText } from '../screens/grid-text.ts';
import type { Look } from '../screens/look.ts';
import { writeRight, writeText } from '../screens/write-text.ts';
import { distanceText } from '../unit-text.ts';
import type { CommandContext } from './command.ts';

const COLS = 80;
const PLAN_X = 2;
const PLAN_MOST: Size = { cols: COLS - 4, rows: 16 };
const CURVATURE_X = 9;
const CURVATURE_ROWS = 6;
/** Part of the approach that the picture shows beside the line, as a share of its length. */
const APPROACH_SHARE = 0.6;
const STEP_M = 0.25;

/** A letter of the pictures and what it stands for. */
export interface CornerLetter {
  readonly letter: string;
  readonly name: string;
  /** Along the path from turn-in, m. */
  readonly sM: number;
  /** True for a place of a target, which stands beside what belongs to the road. */
  readonly isTargets?: boolean;
}

/**
 * The places that plan view and table name, in driving order.
 * @param driven of the target of a car in it, small letters as on the screens of the drill
 */
export function cornerLetters(
  corner: Corner,
  driven: readonly CornerLetter[] = [],
): readonly CornerLetter[] {
  const slowest = apexM(corner.path);
  const letters = [
    ...driven,
    ...corner.bumps.map(({ atM }) => ({ letter: 'o', name: 'bump', sM: atM })),
    { letter: 'T', name: 'turn-in', sM: 0 },
    ...apexesM(corner.path).map((sM) =>
      sM === slowest
        ? { letter: 'S', name: 'apex, slowest by its radius', sM }
        : { letter: 'A', name: 'apex', sM },
    ),
  ];
  return letters.toSorted((a, b) => a.sM - b.sM);
}

/** Plan view to scale, and the curvature along the same stretch below it, in 80 columns. */
export function cornerDrawing(
  corner: Corner,
  letters: readonly CornerLetter[],
  look: Look,
  units: CommandContext['units'],
): string {
  const fromM = -shownApproachM(corner, letters);
  const places = planPlaces(corner, fromM);
  const { dotOf, rows } = planScale(places);
  const plan: Area = { x: PLAN_X, y: 0, cols: PLAN_MOST.cols, rows };
  const band: Area = { x: CURVATURE_X, y: rows + 2, cols: COLS - 11, rows: CURVATURE_ROWS };
  const grid = createGrid({ cols: COLS, rows: band.y + band.rows + 2 });
  drawPlan(grid, plan, { places, dotOf, letters }, look);
  drawCurvature(grid, band, { corner, fromM, letters, units }, look);
  if (!look.unicode) asciiFallback(grid);
  return toText(grid).trimEnd();
}

/** Far enough back for every bump on the approach. */
function shownApproachM({ path, approachM }: Corner, letters: readonly CornerLetter[]): number {
  const furthest = -Math.min(0, ...letters.map(({ sM }) => sM));
  return Math.min(approachM, Math.max(APPROACH_SHARE * path.lengthM, 1.1 * furthest));
}

type Place = Pick<PlanPoint, 'sM' | 'xM' | 'yM'>;
type Dot = readonly [x: number, y: number];

/** The straight approach and the line, close together. */
function planPlaces({ path }: Corner, fromM: number): readonly Place[] {
  const count = Math.ceil(-fromM / STEP_M);
  const approach = Array.from({ length: count }, (_, i) => {
    const sM = fromM * (1 - i / count);
    return { sM, xM: sM, yM: 0 };
  });
  return [...approach, ...planView(path, STEP_M)];
}

/** Metres to dots, the same scale both ways (a dot is about as wide as high), and the rows of cells it takes. */
function planScale(places: readonly Place[]): {
  readonly dotOf: (place: Place) => Dot;
  readonly rows: number;
} {
  const [xs, ys] = [places.map(({ xM }) => xM), places.map(({ yM }) => yM)];
  const [left, top] = [Math.min(...xs), Math.max(...ys)];
  const [width, height] = [Math.max(...xs) - left, top - Math.min(...ys)];
  const across = (PLAN_MOST.cols * DOTS_ACROSS - 1) / width;
  const scale = Math.min(across, (PLAN_MOST.rows * DOTS_DOWN - 1) / Math.max(1, height));
  return {
    dotOf: ({ xM, yM }) => [Math.round((xM - left) * scale), Math.round((top - yM) * scale)],
    rows: Math.floor(Math.round(height * scale) / DOTS_DOWN) + 1,
  };
}

interface Plan {
  readonly places: readonly Place[];
  readonly dotOf: (place: Place) => Dot;
  readonly letters: readonly CornerLetter[];
}

function drawPlan(
  grid: CellGrid,
  area: Area,
  { places, dotOf, letters }: Plan,
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

interface Band {
  readonly corner: Corner;
  readonly fromM: number;
  readonly letters: readonly CornerLetter[];
  readonly units: CommandContext['units'];
}

/** Filled from the straight: to the left up, to the right down. */
function drawCurvature(
  grid: CellGrid,
  area: Area,
  { corner: { path }, fromM, letters, units }: Band,
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
