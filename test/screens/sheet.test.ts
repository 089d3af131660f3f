import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  BOLD,
  type CellGrid,
  clearArea,
  createGrid,
  putCell,
} from '../../src/screens/cell-grid.ts';
import { toText } from '../../src/screens/grid-text.ts';
import { laySheet, sheetOf } from '../../src/screens/sheet.ts';
import { writeText } from '../../src/screens/write-text.ts';

const SIZE = { cols: 7, rows: 4 };
const PEN = { ink: 74, style: BOLD };

/** Something that draws, also beyond the edges. */
const drawing: fc.Arbitrary<(grid: CellGrid) => void> = fc
  .array(
    fc.record({
      x: fc.integer({ min: -2, max: 8 }),
      y: fc.integer({ min: -1, max: 5 }),
      code: fc.integer({ min: 32, max: 0x28ff }),
      ink: fc.integer({ min: -1, max: 255 }),
      clears: fc.boolean(),
    }),
  )
  .map((steps) => (grid: CellGrid) => {
    for (const { x, y, code, ink, clears } of steps)
      if (clears) clearArea(grid, { x, y, cols: 2, rows: 1 });
      else putCell(grid, x, y, code, { ink, style: BOLD });
  });

test('a sheet laid over a picture is the same as what it was drawn from', () => {
  fc.assert(
    fc.property(drawing, drawing, (below, above) => {
      const drawn = createGrid(SIZE);
      const laid = createGrid(SIZE);
      for (const grid of [drawn, laid]) below(grid);
      above(drawn);
      laySheet(laid, sheetOf(SIZE, above));
      expect(laid).toEqual(drawn);
    }),
  );
});

test('what it leaves out stays, what it blanks goes', () => {
  const grid = createGrid({ cols: 6, rows: 1 });
  const sheet = sheetOf(grid, (own) => {
    writeText(own, 1, 0, 'x', PEN);
    clearArea(own, { x: 3, y: 0, cols: 1, rows: 1 });
  });
  writeText(grid, 0, 0, 'abcdef', PEN);
  laySheet(grid, sheet);
  expect(toText(grid)).toBe('axc ef');
});
