import { describe, expect, test } from 'vitest';
import { bigWord, bigWordWidth } from '../../src/screens/big-word.ts';
import { createGrid } from '../../src/screens/cell-grid.ts';
import { toText } from '../../src/screens/grid-text.ts';
import { COLOUR_THEME } from '../../src/screens/theme.ts';

describe('big words', () => {
  test('can be read', async () => {
    const words = ['abcdefghi', 'jklmnop', 'qrstuv', 'wxyz', 'car inside'];
    const grid = createGrid({ cols: 76, rows: 6 * words.length });
    words.forEach((word, index) => {
      bigWord(grid, 0, 6 * index, word, COLOUR_THEME.strong);
    });
    await expect(`${toText(grid)}\n`).toMatchFileSnapshot('golden/big-letters.txt');
  });

  test.each([1, 2, 3])('take the columns they say, %d times as large', (scale) => {
    const grid = createGrid({ cols: 240, rows: 20 });
    bigWord(grid, 0, 0, 'yellow', COLOUR_THEME.strong, scale);
    const lines = toText(grid).split('\n');
    expect(Math.max(...lines.map(({ length }) => length))).toBe(bigWordWidth('yellow', scale));
    expect(lines.filter((line) => line !== '')).toHaveLength(5 * scale);
  });

  test('every late call fits the smallest screen', () => {
    for (const word of ['defend', 'car inside', 'damp', 'yellow'])
      expect(bigWordWidth(word)).toBeLessThanOrEqual(78);
  });
});
