import { describe, expect, test } from 'vitest';
import { bestFrontLateral, frontLimitN, rearLimitN } from '../../src/car/axle-ellipse.ts';
import { staticAxleLoadsN } from '../../src/car/chassis.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CHASSIS } from '../reference/gt-example.ts';

const G = 9.80665;
const PHI = 0.777329;
const { front: frontLoad, rear: rearLoad } = staticAxleLoadsN(GT_CHASSIS);
const lateral = (ayG: number, arm: number): number => (1250 * ayG * G * arm) / 2.6;

describe('axle friction circles of the GT example, friction 1.4', () => {
  // Hand-worked: force and moment balance of the two-axle model, checked by substitution below.
  test.each([
    [0, 15421.418],
    [0.5, 14723.789],
    [1.0, 12299.077],
    [1.3, 9198.365],
  ])('front limit at %f g', (ayG, force) => {
    const limit = frontLimitN(GT_CHASSIS, {
      mu: 1.4,
      loadN: frontLoad,
      brakeShare: PHI,
      lateralN: lateral(ayG, 1.25),
    });
    expectRelative(limit, force, 1e-6);
  });

  test.each([
    [0, 19163.998],
    [0.8, 12725.816],
    [1.2, 4929.692],
  ])('rear limit at %f g', (ayG, force) => {
    const limit = rearLimitN(GT_CHASSIS, {
      mu: 1.4,
      loadN: rearLoad,
      brakeShare: 1 - PHI,
      lateralN: lateral(ayG, 1.35),
    });
    expectRelative(limit, force, 1e-5);
  });

  test('the limits lie on the circles they come from', () => {
    const y = lateral(0.9, 1.25);
    const f = frontLimitN(GT_CHASSIS, { mu: 1.4, loadN: frontLoad, brakeShare: PHI, lateralN: y });
    expectRelative(Math.hypot(PHI * f, y), 1.4 * (frontLoad + (f * 0.45) / 2.6), 1e-12);
    const yr = lateral(0.9, 1.35);
    const r = rearLimitN(GT_CHASSIS, {
      mu: 1.4,
      loadN: rearLoad,
      brakeShare: 1 - PHI,
      lateralN: yr,
    });
    expectRelative(Math.hypot((1 - PHI) * r, yr), 1.4 * (rearLoad - (r * 0.45) / 2.6), 1e-12);
  });

  test('engine braking comes off the rear limit: the sum stays on the circle', () => {
    const y = lateral(0.5, 1.35);
    const axle = {
      mu: 1.4,
      loadN: rearLoad,
      brakeShare: 1 - PHI,
      lateralN: y,
      engineN: 1500,
    };
    const f = rearLimitN(GT_CHASSIS, axle);
    const load = rearLoad - ((f + 1500) * 0.45) / 2.6;
    expectRelative(Math.hypot((1 - PHI) * f + 1500, y), 1.4 * load, 1e-12);
    expect(f).toBeLessThan(rearLimitN(GT_CHASSIS, { ...axle, engineN: 0 }));
    expect(rearLimitN(GT_CHASSIS, { ...axle, engineN: 9000 })).toBe(0);
  });

  test('engine braking of a front-driven car comes off the front limit and still moves load', () => {
    const y = lateral(0.5, 1.25);
    const axle = { mu: 1.4, loadN: frontLoad, brakeShare: PHI, lateralN: y, engineN: 1500 };
    const f = frontLimitN(GT_CHASSIS, axle);
    expectRelative(
      Math.hypot(PHI * f + 1500, y),
      1.4 * (frontLoad + ((f + 1500) * 0.45) / 2.6),
      1e-12,
    );
    const driven = frontLimitN(GT_CHASSIS, { ...axle, engineN: 0, totalEngineN: 1500 });
    expectRelative(
      Math.hypot(PHI * driven, y),
      1.4 * (frontLoad + ((driven + 1500) * 0.45) / 2.6),
      1e-12,
    );
  });

  test('a little braking gives the front axle its highest lateral force', () => {
    const best = bestFrontLateral(GT_CHASSIS, { mu: 1.4, loadN: frontLoad, brakeShare: PHI });
    expectRelative(best.gain, 1.052438, 1e-5);
    expectRelative(best.brakeForceN, 3664.76, 1e-5);
    const rearLeft = Math.sqrt(
      (1.4 * (rearLoad - (best.brakeForceN * 0.45) / 2.6)) ** 2 -
        ((1 - PHI) * best.brakeForceN) ** 2,
    );
    expectRelative(rearLeft / (1.4 * rearLoad), 0.895677, 1e-5);
  });

  test('no brake force is left for an axle that cannot carry the corner', () => {
    expect(
      rearLimitN(GT_CHASSIS, {
        mu: 1.4,
        loadN: rearLoad,
        brakeShare: 1 - PHI,
        lateralN: 1.4 * rearLoad,
      }),
    ).toBe(0);
    expect(
      frontLimitN(GT_CHASSIS, {
        mu: 1.4,
        loadN: frontLoad,
        brakeShare: PHI,
        lateralN: 1.5 * frontLoad,
      }),
    ).toBe(0);
  });
});
