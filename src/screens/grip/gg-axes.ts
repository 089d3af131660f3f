import { signed } from '../../number-text.ts';
import { STANDARD_GRAVITY_MPS2 } from '../../units.ts';
import { type Area, type CellGrid, putCell } from '../cell-grid.ts';
import { DOTS_ACROSS, DOTS_DOWN } from '../dot-raster.ts';
import type { Look } from '../look.ts';
import { textWidth, writeRight, writeText } from '../write-text.ts';
import type { GgScale } from './gg-scale.ts';

/** Columns left of the diagram for the longitudinal scale. */
export const GG_SCALE_COLS = 7;
/** Rows above it for the lateral scale. */
export const GG_SCALE_ROWS = 1;

const STEPS_G = [0.1, 0.2, 0.5, 1, 2, 5] as const;
const LEAST_COLS = 6;
const LEAST_ROWS = 2;

/**
 * Axes through the origin and their numbers in g with ISO 8855 signs: left of the area along the car, above it across
 * the car.
 */
export function drawGgAxes(grid: CellGrid, area: Area, scale: GgScale, { theme }: Look): void {
  const origin = scale.dotOf(0, 0);
  const x0 = area.x + Math.floor(Math.round(origin.x) / DOTS_ACROSS);
  const y0 = area.y + Math.floor(Math.round(origin.y) / DOTS_DOWN);
  for (let x = 0; x < scale.size.cols; x++) putCell(grid, area.x + x, y0, code('─'), theme.quiet);
  for (let y = 0; y < scale.size.rows; y++) putCell(grid, x0, area.y + y, code('│'), theme.quiet);
  putCell(grid, x0, y0, code('┼'), theme.quiet);
  drawAcross(grid, area, scale, y0, theme);
  drawAlong(grid, area, scale, x0, theme);
}

function drawAcross(
  grid: CellGrid,
  area: Area,
  scale: GgScale,
  y0: number,
  theme: Look['theme'],
): void {
  const step = stepFor(scale.dotsPerG / DOTS_ACROSS, LEAST_COLS);
  let free = area.x - 1;
  for (const g of places(scale.right, scale.left, step).toReversed()) {
    const { x } = scale.dotOf(0, g * STANDARD_GRAVITY_MPS2);
    const column = area.x + Math.floor(Math.round(x) / DOTS_ACROSS);
    if (g !== 0) putCell(grid, column, y0, code('┴'), theme.quiet);
    const label = gText(g);
    const start = Math.max(area.x, column - (textWidth(label) >> 1));
    if (start > free) free = writeText(grid, start, area.y - 1, label, theme.quiet);
  }
}

function drawAlong(
  grid: CellGrid,
  area: Area,
  scale: GgScale,
  x0: number,
  theme: Look['theme'],
): void {
  const step = stepFor(scale.dotsPerG / DOTS_DOWN, LEAST_ROWS);
  for (const g of places(scale.braking, scale.forward, step)) {
    const { y } = scale.dotOf(g * STANDARD_GRAVITY_MPS2, 0);
    const row = area.y + Math.floor(Math.round(y) / DOTS_DOWN);
    writeRight(grid, area.x - 2, row, `${gText(g)}${g === 0 ? ' g' : ''}`, theme.quiet);
    if (g !== 0) putCell(grid, x0, row, code('┼'), theme.quiet);
  }
}

function stepFor(cellsPerG: number, least: number): number {
  return STEPS_G.find((step) => step * cellsPerG >= least) ?? 10;
}

function places(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
}

function code(character: string): number {
  return character.codePointAt(0)!;
}

function gText(g: number): string {
  const text = signed(g, 1);
  return Number(text) === 0 ? '0' : text;
}
