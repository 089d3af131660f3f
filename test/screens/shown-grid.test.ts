import { describe, expect, test } from 'vitest';
import { type CellGrid, createGrid } from '../../src/screens/cell-grid.ts';
import type { ScreenLine } from '../../src/screens/screen-cells.ts';
import { ShownGrid } from '../../src/screens/shown-grid.ts';

const SIZE = { cols: 4, rows: 2 };

describe('the grid that is shown', () => {
  test('is known until the lines are new, or another size is asked for', () => {
    const lines: ScreenLine[] = [];
    const shown = new ShownGrid();
    const grid = createGrid(SIZE);
    expect(shown.on(lines, SIZE)).toBeNull();
    shown.show(grid, lines);
    expect(shown.on(lines, SIZE)).toBe(grid);
    expect(shown.on([], SIZE)).toBeNull();
    expect(shown.on(lines, { cols: 2, rows: 4 })).toBeNull();
    expect([shown.isDrawnOn(lines), shown.isDrawnOn([])]).toEqual([true, false]);
  });

  test('is never the one to draw on, and of one size no more than two are made', () => {
    const lines: ScreenLine[] = [];
    const shown = new ShownGrid();
    const made = new Set<CellGrid>();
    for (let frame = 0; frame < 6; frame++) {
      const canvas = shown.canvas(SIZE);
      expect(canvas).not.toBe(shown.on(lines, SIZE));
      made.add(canvas);
      // A frame without news is not shown, and one may be shown twice.
      if (frame % 3 !== 2) for (let time = 0; time < 2; time++) shown.show(canvas, lines);
    }
    expect(made.size).toBe(2);
    expect(shown.canvas({ cols: 5, rows: 2 }).cols).toBe(5);
  });
});
