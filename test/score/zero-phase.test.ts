import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { butterworth } from '../../src/score/butterworth.ts';
import { scoringFilter } from '../../src/score/scoring-filter.ts';
import { zeroPhase } from '../../src/score/zero-phase.ts';
import golden from '../reference/score-signal.json' with { type: 'json' };

const filter = butterworth(50, 1000, 1);
const signals = fc
  .array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 20, maxLength: 300 })
  .map((values) => Float64Array.from(values));

describe('zeroPhase', () => {
  test('matches the reference on a step', () => {
    const step = Float64Array.from({ length: 15 }, (_, i) => (i < 5 ? 0 : 1));
    const filtered = zeroPhase(filter, step, 9);
    golden.filtfiltStep.forEach((value, i) => {
      expect(Math.abs(filtered[i]! - value)).toBeLessThan(1e-9);
    });
  });

  test('keeps a constant', () => {
    const levels = new Float64Array(400).fill(0.37);
    for (const level of scoringFilter(levels)) expect(level).toBeCloseTo(0.37, 12);
  });

  test('follows a straight line to its very ends', () => {
    const line = Float64Array.from({ length: 600 }, (_, i) => 0.8 - i / 1000);
    scoringFilter(line).forEach((level, i) => {
      expect(Math.abs(level - line[i]!)).toBeLessThan(1e-9);
    });
  });

  test('treats time alike in both directions, away from the ends', () => {
    fc.assert(
      fc.property(signals, (signal) => {
        const quiet = new Float64Array(signal.length + 1000);
        quiet.set(signal, 500);
        const there = zeroPhase(filter, quiet, 200);
        const back = zeroPhase(filter, quiet.toReversed(), 200).toReversed();
        there.forEach((value, i) => {
          expect(Math.abs(value - back[i]!)).toBeLessThan(1e-9);
        });
      }),
      { numRuns: 50 },
    );
  });

  test('returns a signal that is too short for its padding as it came', () => {
    const short = Float64Array.of(1, 2, 3);
    expect(zeroPhase(filter, short, 3)).toEqual(short);
    expect(zeroPhase(filter, short, 3)).not.toBe(short);
  });

  test('overshoots a step by 3.4 % on both sides', () => {
    const step = Float64Array.from({ length: 2000 }, (_, i) => (i < 1000 ? 0 : 1));
    const filtered = scoringFilter(step);
    expect(Math.max(...filtered)).toBeCloseTo(1.034, 3);
    expect(Math.min(...filtered)).toBeCloseTo(-0.034, 3);
  });
});
