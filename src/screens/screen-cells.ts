import { type CellGrid, createGrid, type Size } from './cell-grid.ts';

/** A row of the terminal library's picture: attribute and character of each cell. */
export type ScreenLine = [attribute: number, character: string][] & { dirty: boolean };

const DEFAULT_COLOUR = 0x1ff;
const CHARACTERS: string[] = [];

/** The library's attribute of a cell: style bits, ink, and always the terminal's own background. */
export function attributeOf(ink: number, style: number): number {
  return (style << 18) | ((ink & DEFAULT_COLOUR) << 9) | DEFAULT_COLOUR;
}

/**
 * Copies one grid after the other into the picture and looks only at cells that the last grid had otherwise: a grid
 * must not change once it was copied. Lines that are new, as after the terminal was cleared, get every cell.
 */
export function gridCopier(): (grid: CellGrid, lines: readonly ScreenLine[]) => void {
  let last: CellGrid | null = null;
  let written: readonly ScreenLine[] = [];
  return (grid, lines) => {
    copyCells(grid, lines, lines === written ? last : null);
    last = grid;
    written = lines;
  };
}

/**
 * Copies a grid into the picture, as far as both reach, and marks the rows that changed. The very last cell is left
 * out: some terminals scroll when it is written.
 * @param last what these lines show
 */
export function copyCells(
  grid: CellGrid,
  lines: readonly ScreenLine[],
  last: CellGrid | null = null,
): void {
  const { code, ink, style } = grid;
  const shown = last?.cols === grid.cols && last.rows === grid.rows ? last : unknownGrid(grid);
  const { code: shownCode, ink: shownInk, style: shownStyle } = shown;
  for (let at = 0; at < code.length; at++)
    if (code[at] !== shownCode[at] || ink[at] !== shownInk[at] || style[at] !== shownStyle[at])
      copyCell(grid, at, lines);
}

/** A grid that is the same as no other in any cell. */
function unknownGrid(size: Size): CellGrid {
  const grid = createGrid(size);
  grid.code.fill(0);
  return grid;
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
