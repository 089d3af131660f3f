import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { apexesM, apexM } from '../../src/corner/apex.ts';
import { type Line, missingTurnRad, pathOfLine, scaledLine } from '../../src/corner/line.ts';
import { planView } from '../../src/corner/plan-view.ts';

const RAD = Math.PI / 180;
const single = {
  kind: 'smooth-apex',
  sign: 1,
  turnRad: 90 * RAD,
  radiusM: 40,
  entryM: 50,
  exitM: 45,
} as const;
const compound = {
  ...single,
  kind: 'decreasing-radius',
  turnRad: 150 * RAD,
  radiusM: 70,
  firstArcRad: 25 * RAD,
  betweenM: 35,
  secondRadiusM: 34,
} as const;
const double = {
  ...compound,
  kind: 'double-apex',
  radiusM: 62,
  firstArcRad: 12 * RAD,
  betweenRadiusM: 130,
  secondRadiusM: 40,
} as const;
const chicane = {
  ...single,
  kind: 'chicane',
  sign: -1,
  turnRad: 60 * RAD,
  radiusM: 30,
  entryM: 36,
  betweenM: 30,
  secondRadiusM: 34,
  secondTurnRad: 55 * RAD,
  exitM: 35,
} as const;

/** The heading at the end, degrees, by quadrature over the path. */
function headingDeg(line: Line): number {
  return (planView(pathOfLine(line), 0.5).at(-1)?.headingRad ?? 0) / RAD;
}

describe('every line turns as far as it says', () => {
  test.each<[string, Line, number]>([
    ['smooth apex', single, 90],
    ['smooth apex to the right', { ...single, sign: -1 }, -90],
    ['clothoid', { ...single, kind: 'clothoid' }, 90],
    ['decreasing radius', compound, 150],
    ['double apex', double, 150],
    ['chicane, right by 60 and left by 55', chicane, -5],
    ['chicane, left by 60 and right by 55', { ...chicane, sign: 1 }, 5],
  ])('%s', (_, line, degrees) => {
    expect(headingDeg(line)).toBeCloseTo(degrees, 3);
  });

  test('whatever its radii and lengths, where they fit', () => {
    const line = fc.record({
      kind: fc.constant('chicane' as const),
      sign: fc.constantFrom(1 as const, -1 as const),
      turnRad: fc.double({ min: 1, max: 3, noNaN: true }),
      radiusM: fc.double({ min: 15, max: 120, noNaN: true }),
      entryM: fc.double({ min: 5, max: 120, noNaN: true }),
      exitM: fc.option(fc.double({ min: 5, max: 120, noNaN: true })),
      betweenM: fc.double({ min: 5, max: 60, noNaN: true }),
      secondRadiusM: fc.double({ min: 15, max: 120, noNaN: true }),
      secondTurnRad: fc.double({ min: 1, max: 3, noNaN: true }),
    });
    fc.assert(
      fc.property(line, (chosen) => {
        fc.pre(missingTurnRad(chosen) === 0);
        const expected = (chosen.sign * (chosen.turnRad - chosen.secondTurnRad)) / RAD;
        expect(headingDeg(chosen)).toBeCloseTo(expected, 1);
      }),
      { numRuns: 50 },
    );
  });
});

describe('a compound of two equal radii', () => {
  test('is the line of one radius', () => {
    const equal: Line = { ...compound, radiusM: 40, secondRadiusM: 40 };
    const one: Line = { ...single, turnRad: 150 * RAD };
    const [a, b] = [pathOfLine(equal), pathOfLine(one)];
    expect(a.lengthM).toBeCloseTo(b.lengthM, 9);
    for (let sM = 0; sM <= b.lengthM; sM += 0.7)
      expect(a.curvatureAt(sM)).toBeCloseTo(b.curvatureAt(sM), 12);
    expect(apexesM(a)).toEqual([50]);
  });
});

describe('apexes', () => {
  test('one where the radius decreases, at the tighter one', () => {
    // Entry of 50 m, 25 degrees on 70 m and 35 m of tightening.
    expect(apexesM(pathOfLine(compound))).toHaveLength(1);
    expect(apexM(pathOfLine(compound))).toBeCloseTo(50 + 25 * RAD * 70 + 35, 9);
  });

  test('two of a double apex, the tighter one counts', () => {
    const path = pathOfLine(double);
    expect(apexesM(path)).toHaveLength(2);
    expect(apexM(path)).toBeCloseTo(50 + 12 * RAD * 62 + 35, 9);
    // Between them the line is as wide as the sheet says.
    expect(1 / path.curvatureAt(50 + 12 * RAD * 62 + 17.5)).toBeCloseTo(130, 9);
  });

  test('two of a chicane, of opposite sign, with a straight moment between', () => {
    const path = pathOfLine(chicane);
    const [first, second] = apexesM(path) as [number, number];
    expect(1 / path.curvatureAt(first)).toBeCloseTo(-30, 9);
    expect(1 / path.curvatureAt(second)).toBeCloseTo(34, 9);
    expect(apexM(path)).toBe(first);
    expect(path.curvatureAt(second - 15)).toBeCloseTo(0, 12);
  });
});

describe('what does not fit', () => {
  test('transitions that turn more than the line, by how much', () => {
    // 50 m into 40 m turns 50 / 80 rad, the same for 45 m out of it: 1.1875 rad of 1 rad.
    const tight: Line = { ...single, turnRad: 1 };
    expect(missingTurnRad(tight)).toBeCloseTo(0.1875, 12);
    expect(() => pathOfLine(tight)).toThrow(RangeError);
  });

  test('an exit that is not given takes what is left', () => {
    const path = pathOfLine({ ...single, turnRad: 1, exitM: null });
    expect(path.lengthM).toBeCloseTo(50 + 2 * 40 * (1 - 50 / 80), 9);
    expect(missingTurnRad({ ...single, turnRad: 0.5, exitM: null })).toBeCloseTo(0.125, 12);
  });
});

test('a scaled line turns the same angle on radii and lengths of that share', () => {
  for (const line of [single, compound, double, chicane]) {
    const [full, inner] = [pathOfLine(line), pathOfLine(scaledLine(line, 0.8))];
    expect(inner.lengthM).toBeCloseTo(0.8 * full.lengthM, 9);
    expect(inner.curvatureAt(0.8 * 40)).toBeCloseTo(full.curvatureAt(40) / 0.8, 12);
  }
});
