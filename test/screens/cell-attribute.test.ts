import { expect, test } from 'vitest';
import { attributeOf } from '../../src/screens/cell-attribute.ts';
import { BOLD, REVERSE } from '../../src/screens/cell-grid.ts';

// The library packs flags << 18 | foreground << 9 | background, 0x1ff for the terminal's own colour.
const PLAIN = 0x1ff | (0x1ff << 9);

test.each([
  [-1, 0, PLAIN],
  [214, BOLD, (1 << 18) | (214 << 9) | 0x1ff],
  [-1, BOLD | REVERSE, (9 << 18) | PLAIN],
])('ink %i with style %i', (ink, style, attribute) => {
  expect(attributeOf(ink, style)).toBe(attribute);
});
