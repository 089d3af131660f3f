import { type Area, type CellGrid, type Pen, putCell, type Size } from './cell-grid.ts';

/** Dots in a cell, as braille patterns have them. */
export const DOTS_ACROSS = 2;
export const DOTS_DOWN = 4;

/** One series of a plot in dots, two across and four down per cell; one byte per cell, a bit for each dot. */
export interface DotRaster extends Size {
  readonly dots: Uint8Array;
  /** The cells that have a dot: a line leaves most of its area empty. */
  readonly dotted: number[];
}

// Unicode chapter 21.1, braille patterns: bits of U+2800 for the left and the right column, from the top.
const BRAILLE = 0x2800;
const BITS: readonly (readonly number[])[] = [
  [0x01, 0x02, 0x04, 0x40],
  [0x08, 0x10, 0x20, 0x80],
];
const LEFT_DOTS = 0x47;

/** An empty raster over an area of that size. */
export function createRaster({ cols, rows }: Size): DotRaster {
  return { cols, rows, dots: new Uint8Array(cols * rows), dotted: [] };
}

/** A raster with these dots, one byte per cell. */
export function rasterOf({ cols, rows }: Size, dots: Uint8Array): DotRaster {
  return { cols, rows, dots, dotted: [...dots.keys()].filter((cell) => dots[cell] !== 0) };
}

/** Sets one dot, counted from the top left; a dot outside is left out. */
export function setDot(raster: DotRaster, x: number, y: number): void {
  if (x < 0 || y < 0 || x >= raster.cols * DOTS_ACROSS || y >= raster.rows * DOTS_DOWN) return;
  const cell = (y >> 2) * raster.cols + (x >> 1);
  if (raster.dots[cell] === 0) raster.dotted.push(cell);
  raster.dots[cell] = raster.dots[cell]! | BITS[x & 1]![y & 3]!;
}

/** Sets the dots of column x from one height to another, both included. */
export function setSpan(raster: DotRaster, x: number, from: number, to: number): void {
  const last = Math.min(Math.max(from, to), raster.rows * DOTS_DOWN - 1);
  for (let y = Math.max(0, Math.min(from, to)); y <= last; y++) setDot(raster, x, y);
}

/**
 * Draws a series. A cell has one colour, so the series drawn last has the cell to itself: draw the driver's own last.
 * @param plain the character for a cell of this series where braille cannot be shown, null for braille
 * @param endDot the column of dots from which on the series is left out
 */
export function paintRaster(
  grid: CellGrid,
  area: Area,
  { cols, dots, dotted }: DotRaster,
  pen: Pen,
  plain: string | null,
  endDot: number = Number.POSITIVE_INFINITY,
): void {
  const plainCode = plain?.charCodeAt(0) ?? null;
  const end = Math.min(cols, Math.ceil(endDot / DOTS_ACROSS));
  const whole = Math.min(cols, Math.floor(endDot / DOTS_ACROSS));
  for (const cell of dotted) {
    const y = Math.floor(cell / cols);
    const x = cell - y * cols;
    if (x >= end) continue;
    const seen = x < whole ? dots[cell]! : dots[cell]! & LEFT_DOTS;
    if (seen !== 0) putCell(grid, area.x + x, area.y + y, plainCode ?? BRAILLE + seen, pen);
  }
}
