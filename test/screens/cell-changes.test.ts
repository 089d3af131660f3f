import { describe, expect, test } from 'vitest';
import { attributeOf } from '../../src/screens/cell-attribute.ts';
import { cellChanges } from '../../src/screens/cell-changes.ts';
import {
  BOLD,
  type CellGrid,
  createGrid,
  DEFAULT_INK,
  type Pen,
} from '../../src/screens/cell-grid.ts';
import { writeText } from '../../src/screens/write-text.ts';

const PLAIN: Pen = { ink: DEFAULT_INK, style: 0 };
const BLUE: Pen = { ink: 74, style: 0 };
const ORANGE: Pen = { ink: 214, style: BOLD };
const PENS = new Map([
  [attributeOf(74, 0), '<blue>'],
  [attributeOf(214, BOLD), '<orange>'],
]);

/** A grid of eight by three cells with these words in it. */
function written(...words: readonly (readonly [number, number, string, Pen])[]): CellGrid {
  const grid = createGrid({ cols: 8, rows: 3 });
  for (const [x, y, word, pen] of words) writeText(grid, x, y, word, pen);
  return grid;
}

const changes = (from: CellGrid, to: CellGrid): string =>
  cellChanges(to, from, (attribute) => PENS.get(attribute)!);

// ECMA-48: CUP is CSI row ; column H, counted from 1; CUF is CSI n C; SGR without parameters is CSI m.
describe('what a terminal is sent', () => {
  test('is nothing where nothing changed', () => {
    expect(changes(written([1, 1, 'abc', BLUE]), written([1, 1, 'abc', BLUE]))).toBe('');
  });

  test('is the place and the characters that changed', () => {
    const from = written([1, 1, 'abcdef', PLAIN]);
    expect(changes(from, written([1, 1, 'abXYef', PLAIN]))).toBe('\x1b[2;4HXY');
  });

  test('goes to the right over what stays in a row, and to a place in the next', () => {
    const from = written([0, 0, 'abcdef', PLAIN], [0, 1, 'abc', PLAIN]);
    const to = written([0, 0, 'Xbcdef', PLAIN], [0, 1, 'abX', PLAIN]);
    writeText(to, 5, 0, 'Y', PLAIN);
    expect(changes(from, to)).toBe('\x1b[1;1HX\x1b[4CY\x1b[2;3HX');
  });

  test('takes a pen once for all cells that are written with it, and leaves the plain one', () => {
    const to = written(
      [0, 0, 'ab', BLUE],
      [2, 0, 'cd', ORANGE],
      [4, 0, 'e', PLAIN],
      [0, 1, 'f', BLUE],
    );
    expect(changes(written(), to)).toBe(
      '\x1b[1;1H<blue>ab\x1b[m<orange>cd\x1b[me\x1b[2;1H<blue>f\x1b[m',
    );
  });

  test.each([
    ['ink', { ink: 74, style: 0 }, '<blue>a\x1b[m'],
    ['ink and style', ORANGE, '<orange>a\x1b[m'],
  ])('is a character again whose %s changed', (_, pen, text) => {
    expect(changes(written([0, 0, 'a', PLAIN]), written([0, 0, 'a', pen]))).toBe(
      `\x1b[1;1H${text}`,
    );
  });

  test('is a blank where a character is gone', () => {
    expect(changes(written([7, 0, 'a', BLUE]), written())).toBe('\x1b[1;8H ');
  });

  test('is a character beyond the basic plane whole', () => {
    expect(changes(written(), written([0, 0, '𝄞', PLAIN]))).toBe('\x1b[1;1H𝄞');
  });

  test('never has the very last cell', () => {
    expect(changes(written(), written([6, 2, 'xy', PLAIN]))).toBe('\x1b[3;7Hx');
  });
});
