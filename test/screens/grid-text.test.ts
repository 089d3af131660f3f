import { expect, test } from 'vitest';
import { asciiFallback } from '../../src/screens/ascii-fallback.ts';
import { BOLD, createGrid } from '../../src/screens/cell-grid.ts';
import { toText } from '../../src/screens/grid-text.ts';
import { writeText } from '../../src/screens/write-text.ts';

test('text leaves out trailing blanks and keeps rows', () => {
  const grid = createGrid({ cols: 5, rows: 3 });
  writeText(grid, 1, 1, 'ab', { ink: 74, style: BOLD });
  expect(toText(grid)).toBe('\n ab\n');
});

test('without UTF-8 known signs have look-alikes and others a question mark', () => {
  const grid = createGrid({ cols: 6, rows: 1 });
  writeText(grid, 0, 0, '█─▲·éa', { ink: -1, style: 0 });
  asciiFallback(grid);
  expect(toText(grid)).toBe('#-^-?a');
});
