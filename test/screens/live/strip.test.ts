import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RoadMark } from '../../../src/live/live-view.ts';
import type { CellGrid, Size } from '../../../src/screens/cell-grid.ts';
import { drillScreen } from '../../../src/screens/drill-screen.ts';
import { toText } from '../../../src/screens/grid-text.ts';
import { COLOUR_THEME, MONOCHROME_THEME } from '../../../src/screens/theme.ts';
import { groundRow, nearestMark } from './read-strip.ts';
import { APPROACH, LIVE_VIEWS, MARKS, withLive } from './sample-live.ts';

const SMALL: Size = { cols: 80, rows: 24 };
const SIZES: readonly Size[] = [SMALL, { cols: 160, rows: 48 }];

function strip(placeM: number, marks: readonly RoadMark[], size: Size, unicode = true): CellGrid {
  const view = withLive({ ...APPROACH, placeM, marks }, { phase: 'cue' });
  return drillScreen(view, size, { theme: COLOUR_THEME, unicode });
}

/** 150 m take the columns from behind the bar (six columns and the bar itself) to the last but one. */
const metresPerCell = ({ cols }: Size): number => 150 / (cols - 8);

describe.each(SIZES)('the strip at $cols x $rows', (size) => {
  const anyPlace = fc.record({
    placeM: fc.double({ min: -400, max: 50, noNaN: true }),
    aheadM: fc.double({ min: 0.01, max: 145, noNaN: true }),
  });

  test('shows the brake mark where it is, to less than an eighth of a cell', () => {
    fc.assert(
      fc.property(anyPlace, ({ placeM, aheadM }) => {
        const marks: readonly RoadMark[] = [
          ...MARKS.filter(({ kind }) => kind !== 'brake'),
          { sM: placeM + aheadM, kind: 'brake', word: 'brake' },
        ];
        const grid = strip(placeM, marks, size);
        const seen = nearestMark(grid, groundRow(grid))!;
        expect(Math.abs(seen - aheadM / metresPerCell(size))).toBeLessThan(1 / 8);
      }),
    );
  });

  test('shows a board where it is, to less than an eighth of a cell', () => {
    fc.assert(
      fc.property(anyPlace, ({ placeM, aheadM }) => {
        const grid = strip(placeM, [{ sM: placeM + aheadM, kind: 'board', word: '100' }], size);
        const seen = nearestMark(grid, groundRow(grid) - 1)!;
        expect(Math.abs(seen - aheadM / metresPerCell(size))).toBeLessThan(1 / 8);
      }),
    );
  });

  test('in plain text shows it to half a cell', () => {
    fc.assert(
      fc.property(anyPlace, ({ placeM, aheadM }) => {
        const brake: RoadMark = { sM: placeM + aheadM, kind: 'brake', word: 'brake' };
        const grid = strip(placeM, [brake], size, false);
        const seen = nearestMark(grid, groundRow(grid))!;
        expect(Math.abs(seen - aheadM / metresPerCell(size))).toBeLessThan(0.51 + 1 / 16);
      }),
    );
  });
});

describe('marks', () => {
  const text = (name: string) =>
    toText(drillScreen(LIVE_VIEWS[name]!, SMALL, { theme: MONOCHROME_THEME, unicode: true }));

  test('the brake mark stands on shown reps only', () => {
    expect(text('approach')).toMatch(/ brake {2}/);
    expect(text('approach-hidden')).not.toMatch(/ brake {2}/);
    const grid = drillScreen(LIVE_VIEWS['approach-hidden']!, SMALL, {
      theme: COLOUR_THEME,
      unicode: true,
    });
    expect(nearestMark(grid, groundRow(grid))).toBeNull();
  });

  test('the first of a day has boards and the place, nothing else', () => {
    expect(text('approach-first-of-day')).toMatch(/100 .* 50/);
    expect(text('approach-first-of-day')).toContain('131 m to turn-in');
    expect(text('approach-first-of-day')).not.toMatch(/wall| brake {2}| {4}turn-in/);
    expect(text('zone-first-of-day')).not.toMatch(/[\u2801-\u28ff]|speed|gear|%/);
    expect(text('zone-first-of-day')).toContain('30 m to turn-in');
  });

  test('a board keeps its number; where it is passed the number is twice as large for a quarter of a second', () => {
    const at = (placeM: number): number => {
      const lines = toText(strip(placeM, MARKS, SMALL))
        .split('\n')
        .slice(14);
      return lines.filter((line) => /█/.test(line)).length;
    };
    expect(at(-100.1)).toBe(5);
    expect(at(-99.9)).toBe(10);
    expect(at(-100 + 0.24 * APPROACH.speedMps)).toBe(10);
    expect(at(-100 + 0.26 * APPROACH.speedMps)).toBe(5);
    expect(at(-30)).toBe(0);
  });

  test('a late call is one large word, and stays in the zone', () => {
    const rows = text('call').split('\n').slice(2, 7);
    expect(rows.every((row) => /██/.test(row))).toBe(true);
    expect(text('approach').split('\n').slice(2, 7).join('').trim()).toBe('');
    expect(text('zone-locked')).toContain('DAMP');
  });
});
