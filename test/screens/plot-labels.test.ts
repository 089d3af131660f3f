import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixed } from '../../src/number-text.ts';
import { createGrid } from '../../src/screens/cell-grid.ts';
import { toText } from '../../src/screens/grid-text.ts';
import { drawMarks, marksOf } from '../../src/screens/mark-labels.ts';
import { drawAxes } from '../../src/screens/plot-axes.ts';
import { plotScale } from '../../src/screens/plot-scale.ts';
import { COLOUR_THEME } from '../../src/screens/theme.ts';
import { HAIRPIN } from './sample-views.ts';

const LOOK = { theme: COLOUR_THEME, unicode: true };

function axes(cols: number, fromS: number, toS: number, topLevel: number): readonly string[] {
  const area = { x: 7, y: 0, cols, rows: 10 };
  const grid = createGrid({ cols: cols + 8, rows: 13 });
  const window = { fromS, toS, topLevel };
  drawAxes(grid, area, window, plotScale(window, area), LOOK);
  return toText(grid).split('\n');
}

describe('scales', () => {
  test('stand where their values are', () => {
    const lines = axes(40, 0, 4, 1);
    expect(lines[11]).toBe('       0 s      1 s       2 s       3 s');
    expect(lines[10]?.indexOf('┬', 8)).toBe(17);
    // Ten rows from 100 % at the top to 0 at the bottom: 80 % is in the third.
    expect(lines.findIndex((line) => line.startsWith('  80 %'))).toBe(2);
    expect(lines[10]).toMatch(/^ {3}0 %└/);
  });

  test('never have labels that touch', () => {
    const seconds = fc.double({ min: 0.5, max: 12, noNaN: true });
    const start = fc.double({ min: -0.5, max: 5, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 18, max: 200 }), start, seconds, (cols, fromS, lengthS) => {
        const labels = axes(cols, fromS, fromS + lengthS, 0.88)[11]!;
        expect(labels).toMatch(/^( *-?\d+(\.\d)? s( |$))*$/);
        expect(labels.length).toBeLessThanOrEqual(7 + cols);
        if (cols >= 48) expect(labels.split(' s').length).toBeGreaterThan(2);
      }),
    );
  });

  test('leave out a label that would touch the one pushed in at the left edge', () => {
    expect(axes(40, -0.4, 0.6, 1)[11]).toBe('       -0.4 s         0 s    0.2 s   0.4 s');
  });

  test('always have at least two levels, each on a row of its own', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 1.1, noNaN: true }), (topLevel) => {
        const lines = axes(40, 0, 4, topLevel).slice(0, 11);
        expect(lines.filter((line) => line.includes('%')).length).toBeGreaterThanOrEqual(2);
      }),
    );
  });
});

describe('key points', () => {
  const named = (marks: Partial<typeof HAIRPIN.marks>, cols = 48) => {
    const area = { x: 7, y: 0, cols, rows: 3 };
    const grid = createGrid({ cols: cols + 9, rows: 6 });
    const target = { ...HAIRPIN, marks: { ...HAIRPIN.marks, ...marks } };
    const scale = plotScale({ fromS: -0.3, toS: 3.85, topLevel: 0.88 }, area);
    drawMarks(grid, area, scale, marksOf(target), LOOK);
    return toText(grid).split('\n');
  };

  test('are named in the order of time', () => {
    expect(named({})[5]?.trim()).toBe('start of release  turn-in  apex  brake off');
    expect(named({ turnIn: null, apex: null })[5]).toMatch(/start of release +brake off/);
  });

  test('in one column share one mark and one name', () => {
    const lines = named({ apex: 2.6 });
    expect(lines[5]).toContain('apex, brake off');
    expect(lines[3]?.match(/▲/g)).toHaveLength(3);
  });

  test('outside the picture are left out', () => {
    expect(named({ apex: 9 })[5]).not.toContain('apex');
  });

  test('have names that never touch and never leave the plot', () => {
    const times = fc.array(fc.double({ min: 0, max: 3.8, noNaN: true }), {
      minLength: 4,
      maxLength: 4,
    });
    fc.assert(
      fc.property(times, (unsorted) => {
        const [startOfRelease, turnIn, apex, brakeOff] = unsorted.toSorted((a, b) => a - b);
        const row = named({ startOfRelease, turnIn, apex, brakeOff })[5]!;
        const names = row.trim().split(/ {2,}|, /);
        expect(names).toEqual(['start of release', 'turn-in', 'apex', 'brake off']);
        expect(row.length).toBeLessThanOrEqual(7 + 48);
      }),
    );
  });
});

test.each([
  [-0.04, 1, '0.0'],
  [-0.4, 0, '0'],
  [-0.06, 1, '-0.1'],
])('%d with %i decimals has no minus before zero', (value, decimals, text) => {
  expect(fixed(value, decimals)).toBe(text);
});
