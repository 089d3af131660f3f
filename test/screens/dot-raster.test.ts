import { describe, expect, test } from 'vitest';
import { createGrid } from '../../src/screens/cell-grid.ts';
import { createRaster, paintRaster, setDot, setSpan } from '../../src/screens/dot-raster.ts';
import { toText } from '../../src/screens/grid-text.ts';

const PEN = { ink: 74, style: 0 };
const AREA = { x: 0, y: 0, cols: 2, rows: 1 };

function painted(dots: readonly (readonly [number, number])[], plain: string | null = null) {
  const grid = createGrid(AREA);
  const raster = createRaster(AREA);
  for (const [x, y] of dots) setDot(raster, x, y);
  paintRaster(grid, AREA, raster, PEN, plain);
  return toText(grid);
}

// The Unicode character names number the dots 1 2 3 7 down the left column and 4 5 6 8 down the right one.
describe('braille patterns by their Unicode names', () => {
  const names: readonly (readonly [number, number, string, string])[] = [
    [0, 0, '\u2801', 'dots-1'],
    [0, 1, '\u2802', 'dots-2'],
    [0, 2, '\u2804', 'dots-3'],
    [0, 3, '\u2840', 'dots-7'],
    [1, 0, '\u2808', 'dots-4'],
    [1, 1, '\u2810', 'dots-5'],
    [1, 2, '\u2820', 'dots-6'],
    [1, 3, '\u2880', 'dots-8'],
  ];
  test.each(names)('dot %i, %i is %s (%s)', (x, y, char) => expect(painted([[x, y]])).toBe(char));
});

test('dots of one cell add up, and the next cell is its own', () => {
  expect(
    painted([
      [0, 0],
      [1, 3],
      [2, 0],
    ]),
  ).toBe('\u2881\u2801');
});

test('dots outside are left out', () => {
  expect(
    painted([
      [-1, 0],
      [4, 0],
      [0, -1],
      [0, 4],
    ]),
  ).toBe('');
});

test('without braille a cell with any dot shows the series’ own character', () => {
  expect(painted([[3, 2]], '#')).toBe(' #');
});

test.each([
  [4, '\u2809\u2809'],
  [3, '\u2809\u2801'],
  [2, '\u2809'],
  [1, '\u2801'],
  [0, ''],
  [-1, ''],
])('a series that ends before dot column %i', (endDot, text) => {
  const grid = createGrid(AREA);
  const raster = createRaster(AREA);
  for (let x = 0; x < 4; x++) setDot(raster, x, 0);
  paintRaster(grid, AREA, raster, PEN, null, endDot);
  expect(toText(grid)).toBe(text);
});

test('a span fills a column between two heights in either order, clipped', () => {
  const raster = createRaster({ cols: 1, rows: 1 });
  setSpan(raster, 0, 9, 2);
  expect(raster.dots[0]).toBe(0x44);
});

test('the series drawn last has the cell to itself', () => {
  const grid = createGrid(AREA);
  const target = createRaster(AREA);
  const own = createRaster(AREA);
  setDot(target, 0, 0);
  setDot(own, 1, 0);
  paintRaster(grid, AREA, target, PEN, null);
  paintRaster(grid, AREA, own, { ink: 214, style: 0 }, null);
  expect([toText(grid), grid.ink[0]]).toEqual(['\u2808', 214]);
});
