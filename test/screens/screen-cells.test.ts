import { expect, test } from 'vitest';
import { attributeOf } from '../../src/screens/cell-attribute.ts';
import { createGrid, REVERSE } from '../../src/screens/cell-grid.ts';
import { copyCells, type ScreenLine } from '../../src/screens/screen-cells.ts';
import { writeText } from '../../src/screens/write-text.ts';

const PLAIN = 0x1ff | (0x1ff << 9);

function picture(cols: number, rows: number): ScreenLine[] {
  return Array.from({ length: rows }, () =>
    Object.assign(
      Array.from({ length: cols }, (): [number, string] => [PLAIN, ' ']),
      { dirty: false },
    ),
  );
}

const text = (lines: readonly ScreenLine[]) =>
  lines.map((line) => line.map(([, character]) => character).join(''));

test('cells are copied and only changed rows are marked', () => {
  const lines = picture(4, 3);
  const grid = createGrid({ cols: 4, rows: 3 });
  writeText(grid, 1, 1, 'ab', { ink: 74, style: 0 });
  copyCells(grid, lines);
  expect(text(lines)).toEqual(['    ', ' ab ', '    ']);
  expect(lines.map(({ dirty }) => dirty)).toEqual([false, true, false]);
});

test('the last cell of the terminal is never written', () => {
  const lines = picture(3, 2);
  const grid = createGrid({ cols: 3, rows: 2 });
  for (const row of [0, 1]) writeText(grid, 0, row, 'xyz', { ink: -1, style: 0 });
  copyCells(grid, lines);
  expect(text(lines)).toEqual(['xyz', 'xy ']);
});

test.each([
  [5, 4],
  [2, 1],
])('a grid and a terminal of other sizes (%i x %i) share what both have', (cols, rows) => {
  const grid = createGrid({ cols, rows });
  writeText(grid, 0, 0, 'abcde', { ink: -1, style: 0 });
  const lines = picture(3, 2);
  copyCells(grid, lines);
  expect(text(lines)[0]).toBe('abcde'.slice(0, Math.min(cols, 3)).padEnd(3));
});

test('a cell has its attribute', () => {
  const lines = picture(4, 2);
  const grid = createGrid({ cols: 4, rows: 2 });
  writeText(grid, 2, 0, 'a', { ink: 74, style: REVERSE });
  copyCells(grid, lines);
  expect(lines[0]!.map(([attribute]) => attribute)).toEqual([
    PLAIN,
    PLAIN,
    attributeOf(74, REVERSE),
    PLAIN,
  ]);
});
