/** Columns and rows of a terminal or of a part of it. */
export interface Size {
  readonly cols: number;
  readonly rows: number;
}

/** A rectangle of cells inside a grid. */
export interface Area extends Size {
  readonly x: number;
  readonly y: number;
}

/** Bits of a cell's style, as the terminal library counts them. */
export const BOLD = 1;
export const REVERSE = 8;

/** Ink of a cell that takes the terminal's own colour. */
export const DEFAULT_INK = -1;

/** How a cell is drawn: an index of the xterm 256-colour palette or `DEFAULT_INK`, and style bits. */
export interface Pen {
  readonly ink: number;
  readonly style: number;
}

/** A picture of fixed size in cells, row by row: cell (x, y) is entry `y * cols + x` of each column. */
export interface CellGrid extends Size {
  /** Unicode code points of characters one cell wide; 32 where nothing is drawn. */
  readonly code: Uint32Array;
  readonly ink: Int16Array;
  readonly style: Uint8Array;
  /** The three columns one after the other, as they lie in memory: to compare grids of one size at once. */
  readonly bytes: Buffer;
}

const BLANK = 32;
/** Bytes of a cell, and how many of them lie in columns before. */
const [INK_AT, STYLE_AT, CELL_BYTES] = [4, 6, 7];

/** True where no cell of the row differs. @param other of the same size */
export function isSameRow(grid: CellGrid, other: CellGrid, y: number): boolean {
  const { cols, rows, bytes } = grid;
  const cells = cols * rows;
  const isSame = (from: number, to: number): boolean =>
    bytes.compare(other.bytes, from, to, from, to) === 0;
  const column = (at: number, size: number): boolean => {
    const from = cells * at + y * cols * size;
    return isSame(from, from + cols * size);
  };
  return column(0, INK_AT) && column(INK_AT, STYLE_AT - INK_AT) && column(STYLE_AT, 1);
}

/** An empty grid: a grid that is given is blanked. */
export function blankGrid(on: Size | CellGrid): CellGrid {
  if (!('code' in on)) return createGrid(on);
  on.code.fill(BLANK);
  on.ink.fill(DEFAULT_INK);
  on.style.fill(0);
  return on;
}

/** A new grid, empty. */
export function createGrid({ cols, rows }: Size): CellGrid {
  const cells = cols * rows;
  const memory = new ArrayBuffer(cells * CELL_BYTES);
  return {
    cols,
    rows,
    code: new Uint32Array(memory, 0, cells).fill(BLANK),
    ink: new Int16Array(memory, cells * INK_AT, cells).fill(DEFAULT_INK),
    style: new Uint8Array(memory, cells * STYLE_AT, cells),
    bytes: Buffer.from(memory),
  };
}

/** Sets one cell; a cell outside the grid is left out. */
export function putCell(grid: CellGrid, x: number, y: number, code: number, pen: Pen): void {
  if (x < 0 || y < 0 || x >= grid.cols || y >= grid.rows) return;
  const cell = y * grid.cols + x;
  grid.code[cell] = code;
  grid.ink[cell] = pen.ink;
  grid.style[cell] = pen.style;
}

/** Blanks an area, for a panel that stands in front of others. */
export function clearArea(grid: CellGrid, area: Area): void {
  const plain: Pen = { ink: DEFAULT_INK, style: 0 };
  for (let y = area.y; y < area.y + area.rows; y++)
    for (let x = area.x; x < area.x + area.cols; x++) putCell(grid, x, y, BLANK, plain);
}
