import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { brakeForcesN } from '../../src/car/brake-force.ts';
import { brakeSplitOf, frontForceN, totalForAxleN } from '../../src/car/brake-split.ts';
import { expectRelative } from '../close-to.ts';
import { GT_BRAKES } from '../reference/gt-example.ts';

// 700 N at the pedal of the GT example with a valve of slope 0.4 from 30 bar: 18747.66 N front, 4347.8664 N rear, worked
// by hand after Limpert, Brake Design and Safety, ch. 5 and 7.
const VALVE = { ...GT_BRAKES, rearValve: { kneePa: 30e5, slope: 0.4 } };

describe('split of a brake force between the axles', () => {
  test('is one straight piece without push-out and valve: 0.777329', () => {
    const split = brakeSplitOf(GT_BRAKES);
    expect(split).toHaveLength(1);
    expectRelative(frontForceN(split, 24118.06), 18747.67, 1e-5);
    expect(frontForceN(split, 0)).toBe(0);
  });

  test('holds the rear back behind the valve, and bends at its knee', () => {
    const split = brakeSplitOf(VALVE);
    expect(split).toHaveLength(2);
    expectRelative(frontForceN(split, 18747.66 + 4347.8664), 18747.66, 1e-5);
    // 30 bar at the rear: 30e5 of the 43.9454 bar that 700 N make.
    const knee = (24118.06 * 30) / 43.9454;
    expectRelative(split[1]?.fromN ?? 0, knee, 1e-5);
    expectRelative(frontForceN(split, knee / 2), (0.777329 * knee) / 2, 1e-5);
  });

  test('the inverse finds the force at which an axle has its own', () => {
    const split = brakeSplitOf(VALVE);
    expectRelative(totalForAxleN(split, 'front', 18747.66), 18747.66 + 4347.8664, 1e-5);
    expectRelative(totalForAxleN(split, 'rear', 4347.8664), 18747.66 + 4347.8664, 1e-5);
  });

  test('an axle that a shut valve keeps at its knee never gets more', () => {
    const shut = brakeSplitOf({ ...GT_BRAKES, rearValve: { kneePa: 30e5, slope: 0 } });
    expect(totalForAxleN(shut, 'rear', 9000)).toBe(Number.POSITIVE_INFINITY);
  });

  test('at the road a twentieth of the mass that turns leaves each force 1.05 times smaller', () => {
    const brakes = { ...VALVE, pushOutPa: 0.8e5 };
    const road = brakeSplitOf(brakes, 0.05);
    // the valve closes in at 16156 N
    for (const total of [50, 8000, 15500, 16700, 23095])
      expectRelative(
        frontForceN(road, total / 1.05),
        frontForceN(brakeSplitOf(brakes), total) / 1.05,
        1e-12,
      );
  });

  test('says of every pedal force what the hydraulics say', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 3000, noNaN: true }),
        fc.double({ min: 0, max: 5e5, noNaN: true }),
        fc.double({ min: 1e5, max: 60e5, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (pedal, pushOutPa, kneePa, slope) => {
          const brakes = { ...GT_BRAKES, pushOutPa, rearValve: { kneePa, slope } };
          const { front, rear } = brakeForcesN(brakes, pedal);
          const split = brakeSplitOf(brakes);
          expect(Math.abs(frontForceN(split, front + rear) - front)).toBeLessThan(1e-6);
        },
      ),
    );
  });
});
