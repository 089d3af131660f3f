import { BIG_ROWS } from './big-number.ts';
import { bigPixels, PIXEL_COLS } from './big-pixels.ts';
import type { CellGrid, Pen } from './cell-grid.ts';

// Five rows of pixels per letter, from the top, as wide as the letter needs.
const LETTERS: Readonly<Record<string, string>> = {
  a: '###/# #/###/# #/# #',
  b: '## /# #/## /# #/## ',
  c: '###/#  /#  /#  /###',
  d: '## /# #/# #/# #/## ',
  e: '###/#  /###/#  /###',
  f: '###/#  /###/#  /#  ',
  g: '###/#  /# #/# #/###',
  h: '# #/# #/###/# #/# #',
  i: '#/#/#/#/#',
  j: '  #/  #/  #/# #/###',
  k: '# #/# #/## /# #/# #',
  l: '#  /#  /#  /#  /###',
  m: '#   #/## ##/# # #/#   #/#   #',
  n: '#  #/## #/# ##/#  #/#  #',
  o: '###/# #/# #/# #/###',
  p: '###/# #/###/#  /#  ',
  q: '###/# #/# #/###/  #',
  r: '###/# #/## /# #/# #',
  s: '###/#  /###/  #/###',
  t: '###/ # / # / # / # ',
  u: '# #/# #/# #/# #/###',
  v: '# #/# #/# #/# #/ # ',
  w: '#   #/#   #/# # #/## ##/#   #',
  x: '# #/# #/ # /# #/# #',
  y: '# #/# #/###/ # / # ',
  z: '###/  #/ # /#  /###',
};
const SPACE = ' / / / / ';

/** Rows of a word's pixels: letters one pixel apart, whatever is no letter left blank. */
function pixelsOf(word: string): readonly string[] {
  const letters = [...word.toLowerCase()].map((letter) => (LETTERS[letter] ?? SPACE).split('/'));
  return Array.from({ length: BIG_ROWS }, (_, row) =>
    letters.map((rows) => rows[row] ?? '').join(' '),
  );
}

/** Columns that a big word takes. */
export function bigWordWidth(word: string, scale = 1): number {
  return (pixelsOf(word)[0]?.length ?? 0) * PIXEL_COLS * scale;
}

/** Draws a word in capitals, five times `scale` rows high, from (x, y). */
export function bigWord(
  grid: CellGrid,
  x: number,
  y: number,
  word: string,
  pen: Pen,
  scale = 1,
): void {
  bigPixels(grid, x, y, pixelsOf(word), pen, scale);
}
