import { describe, expect, test } from 'vitest';
import {
  BOLD,
  blankGrid,
  type CellGrid,
  createGrid,
  REVERSE,
} from '../../src/screens/cell-grid.ts';
import {
  attributeOf,
  copyCells,
  gridCopier,
  type ScreenLine,
} from '../../src/screens/screen-cells.ts';
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

// The library packs flags << 18 | foreground << 9 | background, 0x1ff for the terminal's own colour.
test.each([
  [-1, 0, PLAIN],
  [214, BOLD, (1 << 18) | (214 << 9) | 0x1ff],
  [-1, BOLD | REVERSE, (9 << 18) | PLAIN],
])('ink %i with style %i', (ink, style, attribute) => {
  expect(attributeOf(ink, style)).toBe(attribute);
});

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

describe('one grid after the other', () => {
  const written = (word: string, ink = -1, style = 0) => {
    const grid = createGrid({ cols: 4, rows: 2 });
    writeText(grid, 0, 0, word, { ink, style });
    return grid;
  };

  test('the lines hold what the last one has', () => {
    const lines = picture(4, 2);
    const { copy } = gridCopier();
    for (const word of ['abcd', 'axcd', 'ab', '', 'abcd']) {
      copy(written(word), lines);
      expect(text(lines)[0]).toBe(word.padEnd(4));
    }
    copy(written('abcd', 74), lines);
    expect(lines[0]![3]![0]).toBe(attributeOf(74, 0));
    copy(written('abcd', 74, REVERSE), lines);
    expect(lines[0]![3]![0]).toBe(attributeOf(74, REVERSE));
  });

  test('only a row that has another character, ink or style than before is marked', () => {
    const lines = picture(4, 2);
    const { copy } = gridCopier();
    const grids = [
      written('abcd'),
      written('abcd'),
      written('abcd', 74),
      written('abcd', 74, BOLD),
    ];
    const marked = grids.map((grid) => {
      for (const line of lines) line.dirty = false;
      copy(grid, lines);
      return lines.map(({ dirty }) => dirty);
    });
    const first = [true, false];
    expect(marked).toEqual([first, [false, false], first, first]);
  });

  test('there is news where a cell, the lines or the size changed', () => {
    const lines = picture(4, 2);
    const { copy, isNews } = gridCopier();
    expect(isNews(written('abcd'), lines)).toBe(true);
    copy(written('abcd'), lines);
    expect(isNews(written('abcd'), lines)).toBe(false);
    expect(isNews(written('abcx'), lines)).toBe(true);
    expect(isNews(written('abcd', 74), lines)).toBe(true);
    expect(isNews(written('abcd', -1, BOLD), lines)).toBe(true);
    expect(isNews(written('abcd'), picture(4, 2))).toBe(true);
    expect(isNews(createGrid({ cols: 2, rows: 4 }), lines)).toBe(true);
  });

  test('new lines get the cells that have not changed as well', () => {
    const { copy } = gridCopier();
    copy(written('abcd'), picture(4, 2));
    const lines = picture(4, 2);
    copy(written('abcd'), lines);
    expect(text(lines)[0]).toBe('abcd');
  });

  test('a grid of another size is copied whole', () => {
    const lines = picture(4, 2);
    const { copy } = gridCopier();
    const narrow = createGrid({ cols: 2, rows: 2 });
    // Where it has these cells, the grid before has the same in its first row.
    writeText(narrow, 0, 1, 'cd', { ink: -1, style: 0 });
    copy(written('abcd'), lines);
    copy(narrow, lines);
    expect(text(lines)).toEqual(['  cd', 'cd  ']);
  });
});

test('what may be drawn on is never what is shown, and of one size no more than two grids are made', () => {
  const size = { cols: 4, rows: 2 };
  const lines = picture(4, 2);
  const copier = gridCopier();
  const made = new Set<CellGrid>();
  let shown: CellGrid | null = null;
  for (const word of ['one', 'two', 'two', 'two', 'one', 'six']) {
    const canvas = blankGrid(copier.canvas(size));
    expect(canvas).not.toBe(shown);
    made.add(canvas);
    writeText(canvas, 0, 0, word, { ink: -1, style: 0 });
    if (copier.isNews(canvas, lines)) {
      copier.copy(canvas, lines);
      // The library draws again on its own, as after a change of size.
      copier.copy(canvas, lines);
      shown = canvas;
    }
    expect(text(lines)[0]).toBe(`${word} `);
  }
  expect(made.size).toBe(2);
  expect(copier.canvas({ cols: 5, rows: 2 }).cols).toBe(5);
});
