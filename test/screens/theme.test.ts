import { describe, expect, test } from 'vitest';
import { THEME_NAMES } from '../../src/drill/display/display-settings.ts';
import { DEFAULT_INK } from '../../src/screens/cell-grid.ts';
import { themeFor } from '../../src/screens/look.ts';
import { type Theme, themeOf } from '../../src/screens/theme.ts';

// The colour cube and the greys of xterm's 256-colour palette, as its documentation (ctlseqs) defines them.
const CUBE = [0, 95, 135, 175, 215, 255];
function rgb(ink: number): readonly number[] {
  if (ink >= 232) return [0, 0, 0].map(() => 8 + 10 * (ink - 232));
  const place = ink - 16;
  return [Math.floor(place / 36), Math.floor(place / 6) % 6, place % 6].map((i) => CUBE[i]!);
}

/** Relative luminance and contrast ratio by WCAG 2.2, section "relative luminance". */
function luminance(colour: readonly number[]): number {
  const [r, g, b] = colour.map((value) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}
const contrast = (ink: number, ground: readonly number[]): number => {
  const [high, low] = [luminance(rgb(ink)), luminance(ground)].toSorted((a, b) => b - a);
  return (high! + 0.05) / (low! + 0.05);
};
const BLACK = [0, 0, 0];
const WHITE = [255, 255, 255];
const inks = (theme: Theme): number[] =>
  Object.values(theme).flatMap(({ ink }) => (ink === DEFAULT_INK ? [] : [ink]));

test('the two of the palette have the ratios that the rule gives for their colours', () => {
  // worked by hand: 8.6 and 11.4 on black
  expect(contrast(74, BLACK)).toBeCloseTo(8.6, 1);
  expect(contrast(214, BLACK)).toBeCloseTo(11.4, 1);
});

describe('contrast (WCAG 2.2: 4.5 for text, 7 enhanced)', () => {
  test.each([
    ['colour', BLACK, 4.5],
    ['light', WHITE, 4.5],
    ['high-contrast', BLACK, 7],
    ['high-contrast-light', WHITE, 7],
  ] as const)('%s on its ground', (name, ground, least) => {
    const used = inks(themeOf(name));
    expect(used.length).toBeGreaterThan(0);
    for (const ink of used) expect(contrast(ink, ground)).toBeGreaterThanOrEqual(least);
  });

  test('target and driver differ by more than hue in every theme', () => {
    for (const name of THEME_NAMES) {
      const { target, driver } = themeOf(name);
      expect([target.ink, target.style]).not.toEqual([driver.ink, driver.style]);
    }
    expect(inks(themeOf('monochrome'))).toEqual([]);
  });
});

describe('the theme of a terminal', () => {
  test('is light where the ground is said to be light', () => {
    expect(themeFor(null, { COLORFGBG: '0;15' }, true)).toBe(themeOf('light'));
    expect(themeFor(null, { COLORFGBG: '0;default;7' }, true)).toBe(themeOf('light'));
    for (const COLORFGBG of ['15;0', '15;default', '', undefined])
      expect(themeFor(null, { COLORFGBG }, true)).toBe(themeOf('colour'));
  });

  test('is the one asked for, but without colour always monochrome', () => {
    expect(themeFor('high-contrast', { COLORFGBG: '0;15' }, true)).toBe(themeOf('high-contrast'));
    expect(themeFor('light', {}, false)).toBe(themeOf('monochrome'));
    expect(themeFor('light', { TERM: 'dumb' }, true)).toBe(themeOf('monochrome'));
  });
});
