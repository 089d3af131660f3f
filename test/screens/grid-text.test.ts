import { expect, test } from 'vitest';
import { asciiFallback } from '../../src/screens/ascii-fallback.ts';
import { BOLD, createGrid, REVERSE, UNDERLINE } from '../../src/screens/cell-grid.ts';
import { toAnsi, toText } from '../../src/screens/grid-text.ts';
import { writeText } from '../../src/screens/write-text.ts';

test('text leaves out trailing blanks and keeps rows', () => {
  const grid = createGrid({ cols: 5, rows: 3 });
  writeText(grid, 1, 1, 'ab', { ink: 74, style: BOLD });
  expect(toText(grid)).toBe('\n ab\n');
});

// ECMA-48, SGR: 0 default, 1 bold, 4 underlined, 7 negative image; 38;5;n by ISO 8613-6.
test('ANSI changes style only where it changes and ends each row plain', () => {
  const grid = createGrid({ cols: 4, rows: 2 });
  writeText(grid, 1, 0, 'ab', { ink: 74, style: BOLD });
  writeText(grid, 0, 1, 'xxxx', { ink: -1, style: REVERSE | UNDERLINE });
  expect(toAnsi(grid)).toBe(' \x1b[0;1;38;5;74mab\x1b[0m \n\x1b[0;4;7mxxxx\x1b[0m');
});

test('without UTF-8 known signs have look-alikes and others a question mark', () => {
  const grid = createGrid({ cols: 6, rows: 1 });
  writeText(grid, 0, 0, '█─▲·éa', { ink: -1, style: 0 });
  asciiFallback(grid);
  expect(toText(grid)).toBe('#-^-?a');
});
