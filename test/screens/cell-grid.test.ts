import { expect, test } from 'vitest';
import {
  BOLD,
  blankGrid,
  clearArea,
  createGrid,
  DEFAULT_INK,
  putCell,
} from '../../src/screens/cell-grid.ts';
import { toText } from '../../src/screens/grid-text.ts';

const PEN = { ink: 74, style: BOLD };

test('a new grid is blank in the terminal’s own colour', () => {
  const grid = createGrid({ cols: 3, rows: 2 });
  expect(toText(grid)).toBe('\n');
  expect([...grid.ink]).toEqual(Array(6).fill(DEFAULT_INK));
});

test('a grid that was drawn on is as empty as a new one once it is blanked', () => {
  const used = createGrid({ cols: 3, rows: 2 });
  for (let cell = 0; cell < 6; cell++) putCell(used, cell % 3, Math.floor(cell / 3), 65, PEN);
  expect(blankGrid(used)).toBe(used);
  expect(used.bytes.equals(createGrid({ cols: 3, rows: 2 }).bytes)).toBe(true);
});

test('a cell keeps character, ink and style', () => {
  const grid = createGrid({ cols: 3, rows: 2 });
  putCell(grid, 2, 1, 65, PEN);
  expect([grid.code[5], grid.ink[5], grid.style[5]]).toEqual([65, 74, BOLD]);
});

test.each([
  [-1, 0],
  [0, -1],
  [3, 0],
  [0, 2],
])('a cell outside at %i, %i changes nothing', (x, y) => {
  const grid = createGrid({ cols: 3, rows: 2 });
  putCell(grid, x, y, 65, PEN);
  expect([...grid.code]).toEqual(Array(6).fill(32));
});

test('a cleared area takes character and style away, its surroundings stay', () => {
  const grid = createGrid({ cols: 4, rows: 3 });
  for (let cell = 0; cell < 12; cell++) putCell(grid, cell % 4, Math.floor(cell / 4), 65, PEN);
  clearArea(grid, { x: 1, y: 1, cols: 2, rows: 5 });
  expect(toText(grid)).toBe('AAAA\nA  A\nA  A');
  expect(grid.style[5]).toBe(0);
});
