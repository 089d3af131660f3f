import { type CellGrid, createGrid, isSameRow, type Size } from './cell-grid.ts';

/** A row of the terminal library's picture: attribute and character of each cell. */
export type ScreenLine = [attribute: number, character: string][] & { dirty: boolean };

const DEFAULT_COLOUR = 0x1ff;
const CHARACTERS: string[] = [];

/** The library's attribute of a cell: style bits, ink, and always the terminal's own background. */
export function attributeOf(ink: number, style: number): number {
  return (style << 18) | ((ink & DEFAULT_COLOUR) << 9) | DEFAULT_COLOUR;
}

/** Copies grids into the picture one after the other; a grid must not change until another one was copied. */
interface GridCopier {
  /** A grid of that size that may change, as none of its cells are shown: a new one for every frame would be garbage. */
  canvas(size: Size): CellGrid;
  /** False where the picture shows the same cells already. */
  isNews(grid: CellGrid, lines: readonly ScreenLine[]): boolean;
  /** Looks only at rows that the last grid had otherwise. Lines that are new, as after the terminal was cleared, get all. */
  copy(grid: CellGrid, lines: readonly ScreenLine[]): void;
}

export function gridCopier(): GridCopier {
  let last: CellGrid | null = null;
  let spare: CellGrid | null = null;
  let written: readonly ScreenLine[] = [];
  const shownBy = (lines: readonly ScreenLine[], size: Size): CellGrid | null =>
    lines === written && last !== null && isSameSize(last, size) ? last : null;
  return {
    canvas: (size) => {
      if (spare === null || !isSameSize(spare, size)) spare = createGrid(size);
      return spare;
    },
    isNews: (grid, lines) => shownBy(lines, grid)?.bytes.equals(grid.bytes) !== true,
    copy: (grid, lines) => {
      copyCells(grid, lines, shownBy(lines, grid));
      if (grid !== last) spare = last;
      last = grid;
      written = lines;
    },
  };
}

function isSameSize(a: Size, b: Size): boolean {
  return a.cols === b.cols && a.rows === b.rows;
}

/**
 * Copies a grid into the picture, as far as both reach, and marks the rows that changed. The very last cell is left
 * out: some terminals scroll when it is written.
 * @param last what these lines show, of the same size
 */
export function copyCells(
  grid: CellGrid,
  lines: readonly ScreenLine[],
  last: CellGrid | null = null,
): void {
  const { cols, rows } = grid;
  for (let y = 0; y < rows; y++) {
    if (last !== null && isSameRow(grid, last, y)) continue;
    for (let at = y * cols; at < (y + 1) * cols; at++)
      if (last === null || differs(grid, last, at)) copyCell(grid, at, lines);
  }
}

function differs(grid: CellGrid, last: CellGrid, at: number): boolean {
  return (
    grid.code[at] !== last.code[at] ||
    grid.ink[at] !== last.ink[at] ||
    grid.style[at] !== last.style[at]
  );
}

function copyCell(grid: CellGrid, at: number, lines: readonly ScreenLine[]): void {
  const y = Math.floor(at / grid.cols);
  const x = at - y * grid.cols;
  const line = lines[y];
  const cell = line?.[x];
  if (line === undefined || cell === undefined || isVeryLast(x, y, lines)) return;
  const code = grid.code[at]!;
  CHARACTERS[code] ??= String.fromCodePoint(code);
  const attribute = attributeOf(grid.ink[at]!, grid.style[at]!);
  if (cell[0] === attribute && cell[1] === CHARACTERS[code]) return;
  cell[0] = attribute;
  cell[1] = CHARACTERS[code]!;
  line.dirty = true;
}

function isVeryLast(x: number, y: number, lines: readonly ScreenLine[]): boolean {
  return y === lines.length - 1 && x === lines[y]!.length - 1;
}
