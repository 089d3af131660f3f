import { describe, expect, test } from 'vitest';
import type { Car } from '../../src/car/car.ts';
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

describe('the GT example without air forces', () => {
  const still = { ...GT_CAR, aero: { ...GT_CAR.aero, dragAreaM2: 0, downforceAreaM2: 0 } };
  const weightN = 1250 * 9.80665;
  const withFriction = (mu: number): Car => {
    const tyre = { ...GT_CAR.tyres.front, longitudinalFriction: mu };
    return { ...still, tyres: { front: tyre, rear: tyre } };
  };
  // 18747.67 + 5370.39 N of both axles at 700 N.
  const pedalAt = (rateG: number): number => (rateG * weightN * 700) / (18747.67 + 5370.39);

  // Hand-worked from Gillespie, Fundamentals of Vehicle Dynamics, ch. 3.
  test.each([
    [0.6, 0.428313, 0.954126],
    [1.0, 0.795643, 1.312024],
    [1.4, 1.258038, 1.563347],
  ])('locks at friction %f', (mu, frontG, rearG) => {
    const limit = straightLimit(withFriction(mu), 40);
    expectRelative(limit.decelerationG, frontG, 1e-5);
    expectRelative(limit.decelerationG + limit.marginG!, rearG, 1e-5);
  });

  // (b + z h) / L, where both axles lock at once at 1.2 g.
  test('ideal share at 1.2 g, whatever the share there is', () => {
    for (const balanceBarFront of [0.4, 0.58, 0.7]) {
      const brakes = { ...GT_CAR.brakes, balanceBarFront };
      const { idealFrontShare } = straightLimit({ ...withFriction(1.2), brakes }, 40);
      expectRelative(idealFrontShare, 0.688462, 1e-6);
    }
  });

  test('with the ideal share both axles do lock at once, in a car with air forces and load-sensitive tyres too', () => {
    const tyre = { ...GT_CAR.tyres.front, loadSensitivity: -0.1 };
    const odds = (share: number): number => share / (1 - share);
    for (const car of [still, { ...GT_CAR, tyres: { front: tyre, rear: tyre } }]) {
      const { idealFrontShare, frontShare } = straightLimit(car, 60);
      // The balance bar moves the odds of the two line pressures.
      const bar = odds(0.58) * (odds(idealFrontShare) / odds(frontShare));
      const brakes = { ...car.brakes, balanceBarFront: bar / (1 + bar) };
      expect(straightLimit({ ...car, brakes }, 60).marginG!).toBeLessThan(1e-6);
    }
  });

  // UN Regulation No. 13-H, annex 5: brake force over axle load.
  test('adhesion utilisation at 0.8 g', () => {
    const use = straightUse(still, 40, pedalAt(0.8));
    expectRelative(1.4 * use.front, 1.004251, 2e-6);
    expectRelative(1.4 * use.rear, 0.467834, 3e-6);
  });

  test('axle loads at 1.2 g: 8439.377 and 3818.936 N', () => {
    const use = straightUse(still, 40, pedalAt(1.2));
    const share = 18747.67 / (18747.67 + 5370.39);
    expectRelative((share * 1.2 * weightN) / (1.4 * use.front), 8439.377, 2e-6);
    expectRelative(((1 - share) * 1.2 * weightN) / (1.4 * use.rear), 3818.936, 4e-6);
  });
});

describe('stops of one axle alone', () => {
  const car = (chassis: Partial<Car['chassis']>, mu: number, balanceBarFront: number): Car => {
    const tyre = { ...GT_CAR.tyres.front, longitudinalFriction: mu };
    return {
      ...GT_CAR,
      aero: { ...GT_CAR.aero, dragAreaM2: 0, downforceAreaM2: 0 },
      chassis: { ...GT_CAR.chassis, ...chassis },
      brakes: { ...GT_CAR.brakes, balanceBarFront },
      tyres: { front: tyre, rear: tyre },
    };
  };
  const stopOf = (limited: Car, speed: number, g: number): number =>
    speed ** 2 / (2 * g * straightLimit(limited, 20).decelerationG);

  // Bevan, The Theory of Machines, ch. 8 example 6, p. 264 (g 32.2 ft/s^2): wheelbase 9.5 ft, centre of gravity 2 ft high
  // and 4 ft before the rear axle, 30 mph.
  const bevan = { cgToFrontM: 5.5, cgToRearM: 4, cgHeightM: 2 };
  test.each([
    [0.1, 530, 699],
    [0.6, 97.5, 104],
  ])('Bevan, at friction %f', (mu, rear, front) => {
    expectRelative(stopOf(car(bevan, mu, 0), 44, 32.2), rear, 0.5 / rear);
    expectRelative(stopOf(car(bevan, mu, 1), 44, 32.2), front, 0.5 / front);
  });

  test('L 2.5, h 0.6, b 1.15 m, friction 0.5, 45 km/h, g 9.81', () => {
    const chassis = { cgToFrontM: 1.35, cgToRearM: 1.15, cgHeightM: 0.6 };
    expectRelative(stopOf(car(chassis, 0.5, 0), 12.5, 9.81), 33.0351, 1e-5);
    expectRelative(stopOf(car(chassis, 0.5, 1), 12.5, 9.81), 30.4702, 1e-5);
  });

  // Bevan's ratio of the axle loads where all wheels are about to slide: (x + mu h) / (w - x - mu h).
  test.each([
    [0.1, 0.792, 0.0005],
    [0.6, 1.21, 0.005],
  ])('Bevan, front to rear ratio at friction %f', (mu, ratio, tolerance) => {
    const { idealFrontShare } = straightLimit(car(bevan, mu, 0.58), 20);
    expectRelative(idealFrontShare / (1 - idealFrontShare), ratio, tolerance / ratio);
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
