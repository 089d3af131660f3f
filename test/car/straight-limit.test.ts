import { describe, expect, test } from 'vitest';
import { straightLimit, straightUse } from '../../src/car/straight-limit.ts';
import { barFromPascals } from '../../src/units.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CAR } from '../reference/gt-car.ts';

describe('the GT example on a straight, friction 1.4', () => {
  // Hand-worked closed form of the front lock with downforce; Limpert, Brake Design and Safety, ch. 7.
  test.each([
    [75, 26549.01, 78.401, 770.56, 2.44112],
    [50, 20367.01, 60.145, 591.13, 1.78385],
    [25, 16657.82, 49.192, 483.47, 1.38949],
  ])('at %i m/s', (speed, force, bar, pedal, rateG) => {
    const limit = straightLimit(GT_CAR, speed);
    expectRelative(limit.brakeForcesN.front + limit.brakeForcesN.rear, force, 1e-5);
    expectRelative(barFromPascals(limit.pressuresPa.front), bar, 1e-5);
    expectRelative(limit.pedalForceN, pedal, 1e-5);
    expectRelative(limit.decelerationG, rateG, 1e-5);
    expectRelative(limit.frontShare, 0.777329, 1e-5);
    expect(limit.locksFirst).toBe('front');
  });

  test('margin to the rear lock without air: 1.563347 - 1.258038 g', () => {
    const still = { ...GT_CAR, aero: { ...GT_CAR.aero, dragAreaM2: 0, downforceAreaM2: 0 } };
    expectRelative(straightLimit(still, 50).marginG!, 0.305309, 2e-5);
    // Rotating parts move both locks up the pedal and neither rate.
    expectRelative(straightLimit({ ...still, rotatingShare: 0.05 }, 50).marginG!, 0.305309, 2e-5);
  });

  test('rolling resistance comes on top: 0.015 of weight and downforce', () => {
    const rolling = straightLimit({ ...GT_CAR, rollingResistance: 0.015 }, 50);
    // 0.5 x 1.2 x 3 x 50^2 = 4500 N of downforce on 12258.3125 N of weight.
    expectRelative(
      rolling.decelerationG - straightLimit(GT_CAR, 50).decelerationG,
      (0.015 * 16758.3125) / 12258.3125,
      1e-9,
    );
  });

  test('rotating parts ask for more pedal and change no rate: B = F + k m D', () => {
    const [plain, turning] = [0, 0.05].map((rotatingShare) =>
      straightLimit({ ...GT_CAR, rotatingShare }, 50),
    );
    const rate = turning?.decelerationG ?? 0;
    expectRelative(rate, 1.78385, 1e-5);
    const extra = (591.13 * 0.05 * 1250 * 9.80665 * 1.78385) / 20367.01;
    expectRelative((turning?.pedalForceN ?? 0) - (plain?.pedalForceN ?? 0), extra, 1e-4);
  });

  test('load sensitivity takes grip from a tyre above its reference load', () => {
    const tyre = { ...GT_CAR.tyres.front, referenceLoadN: 3000, loadSensitivity: -0.1 };
    const car = { ...GT_CAR, tyres: { front: tyre, rear: tyre } };
    const limit = straightLimit(car, 50);
    const total = limit.brakeForcesN.front + limit.brakeForcesN.rear;
    const load = (1250 * 9.80665 * 1.25) / 2.6 + 4500 * 0.42 + (total * 0.45) / 2.6;
    const friction = 1.4 * (1 - (0.1 * (load / 2 - 3000)) / 3000);
    expectRelative(limit.brakeForcesN.front, friction * load, 1e-9);
  });
});

test('a rear axle that is braked too much locks first', () => {
  const brakes = { ...GT_CAR.brakes, balanceBarFront: 0.3 };
  expect(straightLimit({ ...GT_CAR, brakes }, 50).locksFirst).toBe('rear');
});

test('a front axle that gains more load than brake force never locks', () => {
  // Share below friction x height / wheelbase = 0.2423.
  const brakes = { ...GT_CAR.brakes, balanceBarFront: 0.05 };
  const limit = straightLimit({ ...GT_CAR, brakes }, 30);
  expect(limit.frontShare).toBeLessThan(0.2423);
  expect(limit.marginG).toBeNull();
  expect(limit.locksFirst).toBe('rear');
});

test('the use is 1 at the limit and above 1 on an axle in the air', () => {
  const { pedalForceN } = straightLimit(GT_CAR, 40);
  expectRelative(straightUse(GT_CAR, 40, pedalForceN).front, 1, 1e-9);
  expect(straightUse(GT_CAR, 40, 19_000).rear).toBe(Number.POSITIVE_INFINITY);
});
