import { describe, expect, test } from 'vitest';
import { buildCar } from '../../../src/car/build-car.ts';
import type { Car } from '../../../src/car/car.ts';
import { buildCorner } from '../../../src/corner/build-corner.ts';
import { deriveTarget } from '../../../src/target/derive/derive-target.ts';
import { ggLimits } from '../../../src/target/derive/gg-limits.ts';
import { type GripLimit, gripLimit } from '../../../src/target/derive/grip-limit.ts';
import { targetGripTrace } from '../../../src/target/derive/grip-trace.ts';
import { CARS, SHEETS } from './bundled-zones.ts';

const G = 9.80665;
const file = (id: string) => CARS.find((each) => each.id === id)!;
const sheet = (id: string) => SHEETS.find((each) => each.id === id)!;
const GT = buildCar(file('gt'), {});
const HAIRPIN = buildCorner(sheet('kiln-hairpin'), 'qualifying');
const PLACE = { sM: -60, speedMps: 40, gear: 3 };

/** Nothing but tyres, brakes and load transfer: what a closed form can hold. */
function bare(car: Car): Car {
  const tyre = { ...car.tyres.front, loadSensitivity: 0 };
  return {
    ...car,
    aero: { ...car.aero, dragAreaM2: 0, downforceAreaM2: 0 },
    rollingResistance: 0,
    electric: null,
    engine: {
      ...car.engine,
      brakingTorque: car.engine.brakingTorque.map((p) => ({ ...p, torqueNm: 0 })),
    },
    tyres: { front: tyre, rear: tyre },
    brakes: { ...car.brakes, pushOutPa: 0, rearValve: null },
  };
}

/** Front share of the brake force, by the hydraulics: pressure, piston area, pads, radii (Limpert ch. 5). */
function frontShare({ brakes }: Car): number {
  const axle = (brake: Car['brakes']['front'], bar: number): number =>
    (bar / brake.masterCylinderAreaM2) *
    ((brake.pistonAreaM2 * brake.padFriction * brake.effectiveRadiusM) / brake.wheelRadiusM);
  const front = axle(brakes.front, brakes.balanceBarFront);
  return front / (front + axle(brakes.rear, 1 - brakes.balanceBarFront));
}

/**
 * Grip used over grip there is of the worse axle at a point of the limit, from Newton's law and moments: loads by
 * Gillespie ch. 1, the ellipse by Milliken ch. 2. Shares no code with the model.
 */
function worseUse(car: Car, { accelXMps2, accelYMps2 }: GripLimit, i: number): number {
  const { massKg: m, cgToFrontM: a, cgToRearM: b, cgHeightM: h } = car.chassis;
  const { longitudinalFriction: muX, lateralFriction: muY } = car.tyres.front;
  const [force, across, base] = [-m * accelXMps2[i]!, m * accelYMps2[i]!, a + b];
  const s = frontShare(car);
  const moved = (force * h) / base;
  const use = (load: number, along: number, side: number): number =>
    Math.hypot(along / muX, side / muY) / load;
  return Math.max(
    use((m * G * b) / base + moved, s * force, (across * b) / base),
    use((m * G * a) / base - moved, (1 - s) * force, (across * a) / base),
  );
}

describe('grip limit', () => {
  test('of a car without air forces and engine: one axle is at its limit at every point, none beyond', () => {
    const car = bare(GT);
    const limit = gripLimit(car, HAIRPIN, PLACE);
    for (let i = 0; i < limit.accelXMps2.length; i++)
      expect(worseUse(car, limit, i), `point ${i}`).toBeCloseTo(1, 6);
  });

  test('straight ahead and off the brake it is what the closed forms give', () => {
    const car = bare(GT);
    const { accelXMps2, accelYMps2 } = gripLimit(car, HAIRPIN, PLACE);
    const { cgToFrontM: a, cgToRearM: b, cgHeightM: h } = car.chassis;
    const { longitudinalFriction: muX, lateralFriction: muY } = car.tyres.front;
    const s = frontShare(car);
    // s F = mu (m g b / L + F h / L), and the same for the rear axle, which loses what the front gains
    const front = (muX * G * b) / (s * (a + b) - muX * h);
    const rear = (muX * G * a) / ((1 - s) * (a + b) + muX * h);
    expect(accelYMps2[0]).toBe(0);
    expect(-accelXMps2[0]!).toBeCloseTo(Math.min(front, rear), 6);
    expect(accelYMps2.at(-1)).toBeCloseTo(muY * G, 6);
    expect(accelXMps2.at(-1)).toBeCloseTo(0, 3);
  });

  test('of the point mass it is an ellipse, larger by the downforce of the speed', () => {
    const car = { ...bare(GT), aero: { ...GT.aero, dragAreaM2: 0 } };
    const { accelXMps2, accelYMps2 } = gripLimit(car, HAIRPIN, PLACE, 'point-mass');
    const { longitudinalFriction: muX, lateralFriction: muY } = car.tyres.front;
    const { airDensityKgpm3, downforceAreaM2 } = car.aero;
    const pressed =
      1 + (0.5 * airDensityKgpm3 * downforceAreaM2 * 40 ** 2) / (car.chassis.massKg * G);
    expect(pressed).toBeGreaterThan(1.05);
    for (let i = 0; i < accelXMps2.length; i++)
      expect(
        (accelXMps2[i]! / (muX * G * pressed)) ** 2 + (accelYMps2[i]! / (muY * G * pressed)) ** 2,
      ).toBeCloseTo(1, 6);
  });

  test('uses all of the grip, whatever share the corner asks for', () => {
    const careful = gripLimit(GT, { ...HAIRPIN, gripShare: 0.8 }, PLACE);
    expect(careful).toEqual(gripLimit(GT, HAIRPIN, PLACE));
  });

  test.each(['gt', 'prototype', 'touring'])(
    'the target of the %s ends where its slow limit ends',
    (id) => {
      const derived = deriveTarget(buildCar(file(id), {}), HAIRPIN);
      const { fast, slow } = ggLimits(derived);
      const { accelYMps2, frontUse, rearUse } = targetGripTrace(derived);
      expect(accelYMps2.at(-1)).toBeCloseTo(slow.accelYMps2.at(-1)!, 2);
      expect(Math.max(frontUse.at(-1)!, rearUse.at(-1)!)).toBeCloseTo(1, 3);
      expect(fast.speedMps).toBe(derived.keys.brakePoint.speedMps);
      expect(fast.accelYMps2.at(-1)).toBeGreaterThan(
        id === 'touring' ? 0 : slow.accelYMps2.at(-1)!,
      );
    },
  );
});
