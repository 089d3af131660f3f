import { expect, test } from 'vitest';
import { DASHED, lineDots, THICK, THIN } from '../../../src/screens/grip/line-dots.ts';

const SIZE = { cols: 8, rows: 2 };

function count(dots: Uint8Array): number {
  return dots.reduce((sum, cell) => sum + cell.toString(2).replaceAll('0', '').length, 0);
}

test('a line has a dot for each step of its longer side, whichever way it goes', () => {
  const [a, b] = [
    { x: 1, y: 1 },
    { x: 12, y: 6 },
  ];
  expect(count(lineDots([a, b], SIZE, THIN).dots)).toBe(12);
  expect(lineDots([b, a], SIZE, THIN).dots).not.toEqual(lineDots([], SIZE, THIN).dots);
  expect(count(lineDots([b, a], SIZE, THIN).dots)).toBe(12);
});

test('a thick one is two dots high, and dashes go on over corners', () => {
  const flat = [
    { x: 0, y: 2 },
    { x: 9, y: 2 },
  ];
  expect(count(lineDots(flat, SIZE, THICK).dots)).toBe(22);
  // 5 on, 3 off, 2 on
  expect(count(lineDots(flat, SIZE, DASHED).dots)).toBe(7);
  const inSteps = Array.from({ length: 10 }, (_, x) => ({ x, y: 2 }));
  expect(lineDots(inSteps, SIZE, DASHED)).toEqual(lineDots(flat, SIZE, DASHED));
});

test('what lies outside is left out', () => {
  expect(
    count(
      lineDots(
        [
          { x: -4, y: 0 },
          { x: 3, y: 0 },
        ],
        SIZE,
        THIN,
      ).dots,
    ),
  ).toBe(4);
});
