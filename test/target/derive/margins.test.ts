import { describe, expect, test } from 'vitest';
import type { Car } from '../../../src/car/car.ts';
import { deriveTarget } from '../../../src/target/derive/derive-target.ts';
import { solveZone } from '../../../src/target/derive/derive-zone.ts';
import { expectRelative } from '../../close-to.ts';
import { GT_CAR, SMOOTH_CORNER } from '../../reference/gt-car.ts';

describe('downshifts of the GT example', () => {
  test('none before the lower gear stays under the rev limit: third from 52.57 m/s on', () => {
    const { downshifts } = solveZone(GT_CAR, SMOOTH_CORNER);
    expect(downshifts.map(({ toGear }) => toGear)).toEqual([4, 3]);
    for (const { rpm } of downshifts) expect(rpm).toBeLessThanOrEqual(7500);
    // 7500 rpm over 1.45 x 3.4 at 0.33 m; half a metre is searched at a time.
    const most = (((7500 * Math.PI) / 30) * 0.33) / (1.45 * 3.4);
    const third = downshifts[1]?.speedMps ?? 0;
    expect(third).toBeLessThanOrEqual(most);
    expect(third).toBeGreaterThan(most - 0.3);
  });

  test('an engine that brakes hard uses up the rear axle', () => {
    const rearUse = (torqueNm: number): number => {
      const engine: Car['engine'] = { ...GT_CAR.engine, brakingTorque: [{ rpm: 1000, torqueNm }] };
      const corner = { ...SMOOTH_CORNER, gears: { approach: 4, slowest: 3, shiftsAtM: [-10] } };
      return solveZone({ ...GT_CAR, engine }, corner).downshifts[0]?.rearUse ?? 0;
    };
    expect(rearUse(120)).toBeGreaterThan(rearUse(0) + 0.1);
  });
});

describe('a bump on the straight', () => {
  /** Wheels so heavy that no bump locks them: what is left is the rear axle's use. */
  const wheel = { inertiaKgm2: 1000, slidingShare: 0.8 };
  const bumpOf = (depth: number) =>
    deriveTarget(
      { ...GT_CAR, wheels: { front: wheel, rear: wheel } },
      { ...SMOOTH_CORNER, bumps: [{ atM: -21, lengthM: 2, depth }] },
    ).bumps[0];

  test('a third less load is half as much use again', () => {
    expectRelative(bumpOf(1 / 3)?.rearUse ?? 0, 1.5 * (bumpOf(0)?.rearUse ?? 0), 1e-9);
    expect(bumpOf(0)?.ease).toBe(0);
  });

  test('is eased for as much as the rear axle needs, in hundredths', () => {
    const bump = bumpOf(0.6);
    expect(bump?.rearUse).toBeGreaterThan(1);
    expect(bump?.ease).toBeGreaterThan(0.05);
    // The rear axle's use falls nearly in proportion to the brakes, and a little more with the load that comes back.
    expect(bump?.ease).toBeLessThanOrEqual(
      Math.ceil(100 * (1 - 1 / (bump?.rearUse ?? 1))) / 100 + 0.1,
    );
  });
});
