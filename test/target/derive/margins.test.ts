import { describe, expect, test } from 'vitest';
import type { Car } from '../../../src/car/car.ts';
import { deriveTarget } from '../../../src/target/derive/derive-target.ts';
import { solveZone } from '../../../src/target/derive/derive-zone.ts';
import { expectRelative } from '../../close-to.ts';
import { GT_CAR, SMOOTH_CORNER } from '../../reference/gt-car.ts';
import { CARS, derivedIn, SHEETS } from './bundled-zones.ts';

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

// Third gear, 1.45 x 3.4 at 0.33 m, from 1.15 x 3.4, the clutch dragging the engine's inertia up within a tenth of a second.
// On the straight the rear axle has 1.4 of its load, which the brakes and the engine move away from it.
describe('an unmatched downshift before the corner', () => {
  const shiftWith = (inertiaKgm2: number) => {
    const gearbox = { ...GT_CAR.gearbox, blip: false };
    const engine = { ...GT_CAR.engine, brakingTorque: [{ rpm: 0, torqueNm: 0 }], inertiaKgm2 };
    const aero = { ...GT_CAR.aero, downforceAreaM2: 0, dragAreaM2: 0 };
    const corner = {
      ...SMOOTH_CORNER,
      approachSpeedMps: 50,
      gears: { approach: 4, slowest: 3, shiftsAtM: [-10] },
    };
    const zone = solveZone({ ...GT_CAR, aero, gearbox, engine }, corner);
    const at = zone.points.reduce((a, b) => (Math.abs(b.sM + 10) < Math.abs(a.sM + 10) ? b : a));
    const angular = (at.speedMps / 0.33) * 3.4 * (1.45 - 1.15);
    const dragN = (((inertiaKgm2 * angular) / 0.1) * 1.45 * 3.4) / 0.33;
    const use = (ease: number): number => {
      const brakeN = at.brakeForceN * (1 - ease);
      const loadN = (1250 * 9.80665 * 1.35 - (brakeN + dragN) * 0.45) / 2.6;
      return ((1 - 0.777329) * brakeN + dragN) / (1.4 * loadN);
    };
    return { shift: zone.downshifts[0], use };
  };

  test('is safe as it is while the rear axle has some left', () => {
    const { shift, use } = shiftWith(0.02);
    expect(use(0)).toBeLessThan(1);
    expect(shift).toMatchObject({ safe: true, ease: 0 });
    expectRelative(shift?.rearUse ?? 0, use(0), 1e-3);
  });

  test('is safe where some hundredths less brake do, and tells the margin with them', () => {
    const inertias = Array.from({ length: 200 }, (_, i) => 0.02 + i * 0.002);
    const eased = inertias.map(shiftWith).filter(({ use }) => use(0) > 1.002 && use(0.05) < 0.998);
    expect(eased.length).toBeGreaterThan(2);
    for (const { shift, use } of eased) {
      const ease = shift?.ease ?? 0;
      expect(shift?.safe).toBe(true);
      expect(use(ease)).toBeLessThan(1.001);
      expect(use(ease - 0.01)).toBeGreaterThan(0.999);
      expectRelative(shift?.rearUse ?? 0, use(ease), 1e-3);
    }
  });

  test('is not safe where the corridor is too narrow for it', () => {
    const { shift, use } = shiftWith(0.3);
    expect(use(0.05)).toBeGreaterThan(1);
    expect(shift).toMatchObject({ safe: false, ease: 0 });
    expectRelative(shift?.rearUse ?? 0, use(0), 1e-3);
  });
});

test('no bundled downshift that counts as safe asks the rear axle for more than it has', () => {
  const shifts = SHEETS.flatMap((sheet) => CARS.flatMap((file) => derivedIn(sheet, file))).flatMap(
    (derived) => derived?.zone.downshifts ?? [],
  );
  expect(shifts.filter(({ ease }) => ease > 0).length).toBeGreaterThan(10);
  for (const { safe, rearUse, ease } of shifts.filter((shift) => shift.safe)) {
    expect(safe && rearUse).toBeLessThanOrEqual(1);
    expect(ease).toBeLessThanOrEqual(0.05);
  }
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
