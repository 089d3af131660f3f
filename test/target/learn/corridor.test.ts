import { describe, expect, test } from 'vitest';
import { fitCorridor } from '../../../src/target/learn/fit-corridor.ts';
import { spreadBand } from '../../../src/target/learn/spread-band.ts';
import { normals } from './made-reps.ts';

describe('band', () => {
  test('is the interval of one more value of a normal population', () => {
    // By hand: 1, 2, 3 have mean 2 and standard deviation 1; t of 0.9 with 2 degrees of freedom is 1.8856 (NIST/SEMATECH
    // e-Handbook 1.3.6.7.2); 1.8856 * sqrt(1 + 1/3) = 2.1773.
    const curves = [1, 2, 3].map((value) => Float64Array.of(value));
    expect(spreadBand(curves, Float64Array.of(2))[0]).toBeCloseTo(2.1773, 3);
  });

  test.each([3, 5, 12])('of %d reps holds four of five further ones, by simulation', (count) => {
    const random = normals(31 + count);
    const trials = 4000;
    const reps = Array.from({ length: count }, () => Float64Array.from({ length: trials }, random));
    const mean = reps[0]!.map((_, i) => reps.reduce((sum, rep) => sum + rep[i]!, 0) / count);
    const band = spreadBand(reps, mean);
    let held = 0;
    for (let i = 0; i < trials; i++) held += Number(Math.abs(random() - mean[i]!) <= band[i]!);
    // standard error sqrt(0.8 * 0.2 / 4000) = 0.0063
    expect(Math.abs(held / trials - 0.8)).toBeLessThan(0.022);
  });
});

describe('corridor', () => {
  const levels = Float64Array.from({ length: 161 }, (_, i) => 0.8 * (1 - i / 160));

  test('stays the default where the band is inside it', () => {
    const band = levels.map((level) => Math.max(0.015, 0.05 * level));
    expect(fitCorridor(levels, band, 0, 0.01)).toEqual({ kind: 'default', knots: [] });
  });

  test('takes the widest of the cells beside each knot, from the place where it starts', () => {
    const band = levels.map((_, i) => (i === 85 ? 0.2 : 0.01));
    const { kind, knots } = fitCorridor(levels, band, 0.5, 0.01);
    expect(kind).toBe('widened');
    expect(knots).toHaveLength(17);
    expect(knots[0]!.x).toBe(0.5);
    expect(knots[16]!.x).toBeCloseTo(2.1, 12);
    // place 85 lies between the knots at 80 and 90
    expect(knots.flatMap(({ y }, k) => (y > 0.015 ? [k] : []))).toEqual([8, 9]);
  });

  test('says so where it would be wider than a file may say', () => {
    const { kind, knots } = fitCorridor(
      levels,
      levels.map(() => 0.7),
      0,
      0.01,
    );
    expect(kind).toBe('cut');
    expect(Math.max(...knots.map(({ y }) => y))).toBe(0.5);
  });
});
