import { expect, test } from 'vitest';
import { BIG_ROWS, bigNumber, bigNumberWidth } from '../../src/screens/big-number.ts';
import { createGrid } from '../../src/screens/cell-grid.ts';
import { toText } from '../../src/screens/grid-text.ts';

test('all ten digits, read by eye', async () => {
  const text = '0123456789';
  const grid = createGrid({ cols: bigNumberWidth(text), rows: BIG_ROWS });
  bigNumber(grid, 0, 0, text, { ink: -1, style: 0 });
  await expect(`${toText(grid)}\n`).toMatchFileSnapshot('golden/big-digits.txt');
});

test('100 fits beside the plot of the smallest screen', () => {
  expect(bigNumberWidth('100')).toBe(22);
});
