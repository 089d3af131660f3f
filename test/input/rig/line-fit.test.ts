import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lineFit } from '../../../src/input/rig/line-fit.ts';
import { NORRIS } from '../../reference/norris.ts';

const relative = (found: number, certified: number): number => Math.abs(found / certified - 1);

describe('lineFit', () => {
  test('gives the certified line of Norris to ten digits', () => {
    const fit = lineFit(NORRIS.x.map((x, i) => ({ x, y: NORRIS.y[i]! })))!;
    expect(relative(fit.slope, NORRIS.certified.slope)).toBeLessThan(1e-10);
    expect(relative(fit.intercept, NORRIS.certified.intercept)).toBeLessThan(1e-10);
    expect(relative(fit.residual!, NORRIS.certified.residualStandardDeviation)).toBeLessThan(1e-10);
  });

  test('finds any line through points that lie on it, far from the origin too', () => {
    const integer = fc.integer({ min: -1000, max: 1000 });
    fc.assert(
      fc.property(integer, integer, fc.uniqueArray(integer, { minLength: 3 }), (slope, at, xs) => {
        const far = 1e6;
        const fit = lineFit(xs.map((x) => ({ x: far + x, y: at + slope * (far + x) })))!;
        expect(fit.slope).toBeCloseTo(slope, 6);
        expect(fit.residual).toBeLessThan(1e-5);
      }),
    );
  });

  test('two points have a line and nothing to check it by', () => {
    const points = [
      { x: 1, y: 5 },
      { x: 3, y: 9 },
    ];
    expect(lineFit(points)).toEqual({ slope: 2, intercept: 3, residual: null });
  });

  test('there is no line without two different x', () => {
    expect(lineFit([])).toBeNull();
    expect(lineFit([{ x: 1, y: 1 }])).toBeNull();
    expect(
      lineFit([
        { x: 2, y: 1 },
        { x: 2, y: 3 },
      ]),
    ).toBeNull();
  });
});
