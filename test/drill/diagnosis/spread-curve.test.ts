import { expect, test } from 'vitest';
import type { BlockGrid } from '../../../src/drill/diagnosis/block-grid.ts';
import {
  latestSpreadJson,
  phaseSpreads,
  practiceSpread,
  spreadReading,
} from '../../../src/drill/diagnosis/spread-curve.ts';
import { spreadChart } from '../../../src/screens/progress/spread-chart.ts';

const PLACES = 140;

/** 0.7 s in four phases of 35 places each, the last one of 20 and 15 places after it. */
const GRID: BlockGrid = {
  stepS: 0.005,
  fromS: 0,
  target: new Float64Array(PLACES),
  corridor: new Float64Array(PLACES),
  phases: {
    hit: { from: 0, to: 35 },
    '100 to 50 %': { from: 35, to: 70 },
    '50 to 10 %': { from: 70, to: 105 },
    'last 10 %': { from: 105, to: 125 },
  },
  plateau: { from: 10, to: 35 },
  release: { from: 35, to: 125 },
  onsetS: 0,
};

/** -1, 0, 1 times a step: the standard deviation (n - 1) of three is the step. */
const curves = (step: (place: number) => number): Float64Array[] =>
  [-1, 0, 1].map((side) => new Float64Array(PLACES).map((_, i) => 0.5 + side * step(i)));

test('phases have the spread that three reps a step apart have', () => {
  const step = (i: number): number => (i < 35 ? 0.01 : i < 70 ? 0.02 : i === 80 ? 0.05 : 0);
  const curve = practiceSpread('2026-11-25', curves(step), GRID)!;
  const levels = phaseSpreads(curve).map(({ level }) => level);
  expect(levels[0]).toBeCloseTo(0.01, 12);
  expect(levels[1]).toBeCloseTo(0.02, 12);
  expect(levels[2]).toBeCloseTo(0.05 / Math.sqrt(35), 12); // one place of 35
  expect(levels[3]).toBe(0);
  expect(spreadReading(curve)).toBe(
    'widest in the 100 to 50 % (2.0 %), closest in the last 10 % (0.0 %).',
  );
});

test('two reps have no spread', () => {
  expect(practiceSpread('2026-11-25', curves(() => 0.01).slice(1), GRID)).toBeNull();
  const none = latestSpreadJson({ kind: 'none', reason: 'no practice' });
  expect(none).toEqual({ spread_curve: null, spread_curve_missing: 'no practice' });
});

test('the picture: bars in proportion, a single peak not lost, the ends of the phases below', () => {
  const step = (i: number): number => (i < 70 ? 0.02 : i === 81 ? 0.04 : 0);
  const lines = spreadChart(practiceSpread('2026-11-25', curves(step), GRID)!);
  for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
  // two places a column: 70 places are 35 columns, place 81 is column 40; half of seven rows is four
  expect(lines[1]).toBe(`   4.0 |${''.padEnd(40)}#`);
  expect(lines[4]).toBe(`       |${'#'.repeat(35)}${''.padEnd(5)}#`);
  expect(lines[3]).toBe(`       |${''.padEnd(40)}#`);
  expect([...lines[8]!].flatMap((sign, i) => (sign === '^' ? [i - 8] : []))).toEqual([
    17, 35, 52, 62,
  ]);
});

test('reps that are all the same are drawn, without a bar', () => {
  const lines = spreadChart(
    practiceSpread(
      '2026-11-25',
      curves(() => 0),
      GRID,
    )!,
  );
  expect(lines.join('')).not.toContain('#');
  expect(
    spreadReading(
      practiceSpread(
        '2026-11-25',
        curves(() => 0),
        GRID,
      )!,
    ),
  ).toBe('the same in all phases, 0.0 %.');
});
