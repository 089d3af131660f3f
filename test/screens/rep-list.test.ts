import { describe, expect, test } from 'vitest';
import type { RepLine } from '../../src/drill/drill-view.ts';
import { createGrid } from '../../src/screens/cell-grid.ts';
import { toText } from '../../src/screens/grid-text.ts';
import { drawRepList } from '../../src/screens/rep-list.ts';
import { COLOUR_THEME } from '../../src/screens/theme.ts';
import { LIVE_REPS } from './live/sample-live.ts';

const LONG = 'front wheels locked 64 m before turn-in: ease, re-apply, carry on';
const newest: RepLine = { ...LIVE_REPS[0]!, sentence: LONG };

function listed(
  reps: readonly RepLine[],
  rows: number,
  { live, cols } = { live: true, cols: 78 },
): readonly string[] {
  const grid = createGrid({ cols, rows });
  const look = { theme: COLOUR_THEME, unicode: true };
  drawRepList(grid, { x: 0, y: 0, cols, rows }, reps, look, live);
  return toText(grid)
    .split('\n')
    .map((line) => line.trimEnd());
}

const words = (lines: readonly string[]): string =>
  lines
    .map((line) => line.slice(35).trim())
    .join(' ')
    .trim();

describe('the list of reps at 80 columns', () => {
  test('says the whole sentence of the newest rep, and cuts those of older ones to a row', () => {
    const lines = listed([newest, { ...newest, number: 4 }], 4);
    expect(words(lines.slice(1, 3))).toBe(LONG);
    expect(lines[3]).toMatch(/^4 .*…$/);
  });

  test('never takes more rows than it has', () => {
    const lines = listed([newest, ...LIVE_REPS], 2);
    expect(lines).toHaveLength(2);
    expect(lines[1]).toMatch(/…$/);
  });

  test('says which late call a rep was driven with', () => {
    const lines = listed([{ ...newest, call: 'damp', sentence: 'braked 9 m late' }], 3);
    expect(words(lines.slice(1))).toBe('damp call: braked 9 m late');
  });
});

describe('the list of a block of several targets', () => {
  const mixed = LIVE_REPS.map((rep, i) => ({
    ...rep,
    targetName: i % 2 === 0 ? 'Kiln hairpin' : 'A corner with a name of many words',
  }));

  test.each([true, false])('names the target of each rep (live car: %s)', (live) => {
    for (const cols of [78, 158]) {
      const lines = listed(mixed, 8, { live, cols });
      expect(lines[0]).toMatch(/^rep +target +score/);
      const at = lines[0]!.indexOf('target');
      expect(lines[1]!.slice(at)).toMatch(/^Kiln hairpin +\S/);
      expect(lines.some((line) => line.slice(at).startsWith('A corner with a…'))).toBe(true);
      for (const line of lines) expect(line.length).toBeLessThanOrEqual(cols);
      expect(lines[0]!.length - lines[0]!.indexOf('in words')).toBe(8);
      expect(lines[0]!.indexOf('in words')).toBeLessThan(cols - 25);
    }
  });

  test('keeps how often the brake went back up', () => {
    expect(listed(mixed, 8, { live: false, cols: 78 })[0]).toContain('re-applied');
  });
});
