import { type CellGrid, createGrid, type Size } from './cell-grid.ts';
import type { ScreenLine } from './screen-cells.ts';

/**
 * Which grid the terminal shows. Its cells must not change until another one is shown; so there are two of a size, in
 * turn, as a new one for every frame would be garbage.
 */
export class ShownGrid {
  #shown: CellGrid | null = null;
  #spare: CellGrid | null = null;
  /** The lines of the terminal library's picture when it was shown; they are others after the terminal was cleared. */
  #lines: readonly ScreenLine[] = [];

  /** A grid of that size that may change, with whatever a frame has left there. */
  canvas(size: Size): CellGrid {
    if (this.#spare === null || !isSameSize(this.#spare, size)) this.#spare = createGrid(size);
    return this.#spare;
  }

  /** The last one, wherever it stood; null before the first. */
  get grid(): CellGrid | null {
    return this.#shown;
  }

  /** The grid that stands on the terminal; null where it was cleared, and where the grid is of another size. */
  on(lines: readonly ScreenLine[], size: Size): CellGrid | null {
    const shown = this.#shown;
    return lines === this.#lines && shown !== null && isSameSize(shown, size) ? shown : null;
  }

  /** True where a grid was drawn since the terminal was cleared. */
  isDrawnOn(lines: readonly ScreenLine[]): boolean {
    return lines === this.#lines;
  }

  show(grid: CellGrid, lines: readonly ScreenLine[]): void {
    if (grid !== this.#shown) this.#spare = this.#shown;
    this.#shown = grid;
    this.#lines = lines;
  }
}

function isSameSize(a: Size, b: Size): boolean {
  return a.cols === b.cols && a.rows === b.rows;
}
