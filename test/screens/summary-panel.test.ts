import { describe, expect, test } from 'vitest';
import type { BlockSummary } from '../../src/drill/drill-view.ts';
import type { Cause } from '../../src/score/rep-score.ts';
import { createGrid } from '../../src/screens/cell-grid.ts';
import { toText } from '../../src/screens/grid-text.ts';
import { causeWords, drawSummary } from '../../src/screens/summary-panel.ts';
import { COLOUR_THEME } from '../../src/screens/theme.ts';
import { SUMMARY } from './sample-views.ts';

const NONE: Cause = { kind: 'shape', timingS: 0, rateRatio: 1, amountRatio: 1, explained: 0.1 };
const causes: readonly (readonly [Partial<Cause>, string])[] = [
  [{ kind: 'timing', timingS: 0.123 }, 'timing, 0.12 s late'],
  [{ kind: 'timing', timingS: -0.3 }, 'timing, 0.30 s early'],
  [{ kind: 'rate', rateRatio: 1.25 }, 'rate, 25 % too slow'],
  [{ kind: 'rate', rateRatio: 0.8 }, 'rate, 20 % too quick'],
  [{ kind: 'amount', amountRatio: 1.1 }, 'amount, 10 % too heavy'],
  [{ kind: 'amount', amountRatio: 0.93 }, 'amount, 7 % too light'],
  [{ kind: 'shape' }, 'shape: neither timing nor rate nor amount alone'],
];
test.each(causes)('%j is %j', (cause, words) => {
  expect(causeWords({ ...NONE, ...cause })).toBe(words);
});

describe('the table', () => {
  const area = { x: 0, y: 0, cols: 78, rows: 12 };
  const text = (change: Partial<BlockSummary>) => {
    const grid = createGrid(area);
    drawSummary(grid, area, { ...SUMMARY, ...change }, { theme: COLOUR_THEME, unicode: true });
    return toText(grid);
  };

  test.each([
    [0.0118, '+1.2 % of full scale, heavier than the target'],
    [-0.02, '-2.0 % of full scale, lighter than the target'],
    [-0.0001, '0.0 % of full scale\n'],
  ])('an average error of %d', (averageErrorLevel, words) => {
    expect(text({ averageErrorLevel })).toContain(words);
  });

  test('what is not known says why', () => {
    const nothing = text({
      medianScore: null,
      medianReleaseErrorLevel: null,
      averageErrorLevel: null,
      spreadLevel: null,
      cause: null,
    });
    expect(nothing.match(/not known: no rep was scored/g)).toHaveLength(3);
    expect(nothing).toContain('not known under three reps');
    expect(nothing).toContain('none: no error is alike in three reps or more');
  });

  test('aborted reps are told apart', () => {
    expect(text({ aborted: 2 })).toContain('10, 2 aborted and not counted');
    expect(text({ aborted: 0 })).not.toContain('aborted');
  });
});
