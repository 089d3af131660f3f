import { type CellGrid, REVERSE } from '../../../src/screens/cell-grid.ts';

const LINE = '─'.codePointAt(0)!;
const FULL = '█'.codePointAt(0)!;
/** Left blocks of one to seven eighths are U+258F down to U+2589 (Unicode chart, block elements). */
const EIGHTHS = new Map([...'▏▎▍▌▋▊▉'].map((glyph, index) => [glyph.codePointAt(0)!, index + 1]));

interface Cell {
  readonly code: number;
  readonly reversed: boolean;
}

function rowOf(grid: CellGrid, y: number): readonly Cell[] {
  return Array.from({ length: grid.cols }, (_, x) => ({
    code: grid.code[y * grid.cols + x]!,
    reversed: (grid.style[y * grid.cols + x]! & REVERSE) !== 0,
  }));
}

/** The row of the strip's ground: the one that is mostly a line. */
export function groundRow(grid: CellGrid): number {
  const dashes = (y: number): number =>
    grid.code
      .subarray(y * grid.cols, (y + 1) * grid.cols)
      .reduce((sum, code) => sum + Number(code === LINE || code === 0x2d), 0);
  return Array.from({ length: grid.rows }, (_, y) => y).find((y) => dashes(y) > grid.cols / 2)!;
}

/**
 * What an eye sees in a row of the strip: how far the near edge of the first mark stands from the right edge of the
 * bar, in cells; null for no mark. The bar is the first full block from the left.
 */
export function nearestMark(grid: CellGrid, y: number): number | null {
  const row = rowOf(grid, y);
  const bar = row.findIndex(({ code }) => code === FULL || code === 0x23);
  for (let x = bar + 1; x < row.length; x++) {
    const { code, reversed } = row[x]!;
    if (code === FULL) return x - bar - 1;
    const eighths = EIGHTHS.get(code);
    if (eighths !== undefined && reversed) return x - bar - 1 + eighths / 8;
    if (code === 'B'.charCodeAt(0)) return x - bar - 1;
  }
  return null;
}
