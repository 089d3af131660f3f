import { describe, expect, test } from 'vitest';
import type { BlockDiagnosis } from '../../src/drill/diagnosis/block-diagnosis.ts';
import type { BlockSummary } from '../../src/drill/drill-view.ts';
import { createGrid } from '../../src/screens/cell-grid.ts';
import { toText } from '../../src/screens/grid-text.ts';
import { drawSummary } from '../../src/screens/summary-panel.ts';
import { COLOUR_THEME, MONOCHROME_THEME } from '../../src/screens/theme.ts';
import { SUMMARY } from './sample-views.ts';

const area = { x: 0, y: 0, cols: 78, rows: 20 };
const LOOK = { theme: COLOUR_THEME, unicode: true };
const drawn = (change: Partial<BlockSummary> = {}, look = LOOK) => {
  const grid = createGrid(area);
  drawSummary(grid, area, { ...SUMMARY, ...change }, look);
  return grid;
};
const text = (change: Partial<BlockSummary> = {}, look = LOOK) => toText(drawn(change, look));
const diagnosis = (change: Partial<BlockDiagnosis>) => ({
  diagnosis: { ...SUMMARY.diagnosis, ...change },
});

describe('the text below the picture', () => {
  test('has every phase with average error, interval, spread and cause', () => {
    const row = text().match(/^100 to 50 % .*/m)?.[0];
    expect(row).toMatch(
      /^100 to 50 % +[+-]\d+\.\d % \([+-]\d+\.\d to [+-]\d+\.\d\) +\d+\.\d % +\w+, .* in \d+ of 10/,
    );
  });

  test('what is not known says why', () => {
    const none = { cause: null, ...diagnosis({ cause: null }) };
    const nothing = text({ medianScore: null, troubles: [], ...none });
    // what the reps share is told in its place
    const shared = text(none);
    expect(shared).toContain('20 % too quick off the brake, 6 of 10 reps');
    expect(shared).not.toContain('no cause');
    expect(nothing).toContain('score not known: no rep was scored');
    expect(nothing).toContain('no cause: timing, rate and amount are not alike in three reps');
    const few = { reps: 2, cause: null, ...diagnosis({ cause: null }) };
    expect(text(few)).not.toContain('no cause');
    expect(text({ reps: 2, spreadLevel: null }).replace(/\s+/g, ' ')).toContain(
      'spread from three reps on',
    );
  });

  test('when the foot came down is told beside the score', () => {
    const start = { medianS: 0.123, earliestS: -0.05, latestS: 0.2, reps: 10 };
    expect(text(diagnosis({ start })).replace(/\s+/g, ' ')).toContain(
      'braked 0.12 s after the cue (-0.05 to +0.20)',
    );
  });

  test('aborted reps are told apart', () => {
    expect(text({ aborted: 2 })).toContain('10 reps, 2 aborted');
    expect(text({ aborted: 0 })).not.toContain('aborted');
  });
});

describe('the picture', () => {
  const empty = { ...SUMMARY.diagnosis.overlay, reps: [], mean: null, spread: null };

  test('of a block without a measured rep is the target alone', () => {
    const lone = text(diagnosis({ overlay: empty }));
    expect(lone).toContain('target');
    expect(lone.split('\n')[0]).not.toMatch(/mean|reps|spread/);
    expect(lone).toMatch(/[\u2800-\u28ff]/);
  });

  test('without Unicode tells its lines apart by their characters', () => {
    const plain = text({}, { ...LOOK, unicode: false });
    expect(plain).not.toMatch(/[\u2800-\u28ff]/);
    for (const character of ['#', '-', ':']) expect(plain).toContain(character);
  });

  test('without colour has its mean in bold', () => {
    const grid = drawn({}, { theme: MONOCHROME_THEME, unicode: true });
    expect(grid.ink.every((ink) => ink === -1)).toBe(true);
    const isBraille = (code: number) => code >= 0x2800 && code <= 0x28ff;
    const bold = grid.code.filter((code, cell) => isBraille(code) && grid.style[cell] === 1);
    expect(bold.length).toBeGreaterThan(50);
  });

  test('a wider spread has a wider shade', () => {
    const shaded = (factor: number) => {
      const { overlay } = SUMMARY.diagnosis;
      const spread = overlay.spread!.map((level) => factor * level);
      const grid = drawn(diagnosis({ overlay: { ...overlay, reps: [], spread } }));
      return grid.ink.filter((ink, cell) => ink === 245 && grid.code[cell]! >= 0x2800).length;
    };
    expect(shaded(2)).toBeGreaterThan(shaded(1));
    expect(shaded(1)).toBeGreaterThan(0);
  });
});
