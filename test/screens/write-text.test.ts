import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createGrid } from '../../src/screens/cell-grid.ts';
import { toText } from '../../src/screens/grid-text.ts';
import { isPlain, narrowText } from '../../src/screens/narrow-text.ts';
import {
  fitText,
  textWidth,
  wrapText,
  writeCentred,
  writeRight,
  writeText,
} from '../../src/screens/write-text.ts';

/** Any code points of the first planes, controls and marks among them. */
const anyText = fc
  .array(fc.integer({ min: 0, max: 0x1ffff }).filter((code) => code < 0xd800 || code > 0xdfff))
  .map((codes) => String.fromCodePoint(...codes));
const PEN = { ink: -1, style: 0 };

describe('narrow text', () => {
  test.each([
    ['plain', 'plain'],
    ['P\x1b[31medal\x07\x9b', 'P[31medal'],
    ['pe\u202edal\u2066', 'pedal'],
    ['cafe\u0301', 'caf\u00e9'],
    ['a\u0336b', 'ab'],
    ['ブレーキ', '????'],
    ['pedal 🚗', 'pedal ?'],
    ['{bold}x', '{bold}x'],
  ])('%j becomes %j', (text, narrow) => expect(narrowText(text)).toBe(narrow));

  test('no control character is ever left', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must be gone
        expect(narrowText(text)).not.toMatch(/[\x00-\x1f\x7f-\x9f]/);
      }),
    );
  });

  // Unicode Standard Annex 44 (general categories), Annex 15 (normal form C), and Technical Standard 51: an emoji by
  // presentation is two cells wide.
  test('what is taken as it is, is seen, stands alone and is one cell wide', () => {
    const plain = Array.from({ length: 0x10000 }, (_, code) => String.fromCharCode(code)).filter(
      isPlain,
    );
    expect(plain.filter((letter) => !/[\p{L}\p{N}\p{P}\p{S} ]/u.test(letter))).toEqual([]);
    expect(plain.filter((letter) => /\p{Emoji_Presentation}/u.test(letter))).toEqual([]);
    expect(plain.filter((letter) => letter.normalize('NFC') !== letter)).toEqual([]);
    expect(plain).toEqual(expect.arrayContaining(['a', '·', '…', '█', '░', '▲', '┴']));
  });
});

describe('fitting', () => {
  test.each([
    ['release', 7, 'release'],
    ['release', 6, 'relea…'],
    ['a b', 2, 'a…'],
    ['ab c', 4, 'ab c'],
    ['x', 0, ''],
  ])('%j in %i', (text, width, fitted) => expect(fitText(text, width)).toBe(fitted));

  test('a fitted text is never wider than asked', () => {
    fc.assert(
      fc.property(anyText, fc.nat(20), (text, width) => {
        expect(textWidth(fitText(text, width))).toBeLessThanOrEqual(width);
      }),
    );
  });
});

test('wrapping breaks between words and cuts a word that is too long', () => {
  expect(wrapText('20 % too quick off the brake', 14)).toEqual(['20 % too quick', 'off the brake']);
  expect(wrapText('incomprehensible', 6)).toEqual(['incom…']);
  expect(wrapText('  ', 6)).toEqual([]);
});

test('writing is clipped at both edges and returns the next column', () => {
  const grid = createGrid({ cols: 6, rows: 3 });
  expect(writeText(grid, -2, 0, 'abcd', PEN)).toBe(2);
  writeText(grid, 4, 0, 'xyz', PEN);
  writeRight(grid, 5, 1, 'end', PEN);
  writeCentred(grid, 0, 6, 2, 'mi', PEN);
  expect(toText(grid)).toBe('cd  xy\n   end\n  mi');
});
