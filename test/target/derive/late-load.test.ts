import { describe, expect, test } from 'vitest';
import type { Car } from '../../../src/car/car.ts';
import { joinPath } from '../../../src/corner/path.ts';
import { profileCurve } from '../../../src/corner/profile-curve.ts';
import type { ProfilePoint } from '../../../src/corner/speed-profile.ts';
import { twoAxleModel } from '../../../src/corner/two-axle.ts';
import { lateLoadOf } from '../../../src/target/derive/late-load.ts';
import { zoneModel, zoneSetting } from '../../../src/target/derive/zone-model.ts';
import { expectRelative } from '../../close-to.ts';
import { GT_CAR, SMOOTH_CORNER } from '../../reference/gt-car.ts';

const G = 9.80665;
const car: Car = {
  ...GT_CAR,
  aero: { ...GT_CAR.aero, dragAreaM2: 0, downforceAreaM2: 0 },
  engine: { ...GT_CAR.engine, brakingTorque: [{ rpm: 0, torqueNm: 0 }] },
  pitchHz: 2,
};
const path = joinPath([{ kind: 'constant', lengthM: 500, startCurvature: 0, endCurvature: 0 }]);
const setting = zoneSetting(car, { ...SMOOTH_CORNER, path });
const schedule = [{ fromM: Number.NEGATIVE_INFINITY, gear: 5 }];
const model = zoneModel('two-axle', setting, schedule);

/** A zone at 40 m/s all the way whose foot eases from a force by a rate. */
function easing(fromN: number, perS: number, transferN: number) {
  const profile = Array.from({ length: 81 }, (_, i): ProfilePoint => {
    const brakeForceN = fromN - (perS * i) / 40;
    const decelerationMps2 = 0;
    return {
      sM: i,
      speedMps: 40,
      decelerationMps2,
      brakeForceN,
      limiter: 'foot',
      toSlowestS: 2 - i / 40,
    };
  });
  const application = [
    {
      timeS: 0,
      sM: 0,
      speedMps: 40,
      decelerationMps2: 0,
      brakeForceN: fromN,
      transferN,
      limiter: 'foot' as const,
    },
  ];
  const curve = profileCurve(profile);
  const zone = { model, profile, curve, slowestM: 80, application, brakePointM: 0, tooFastMps: 0 };
  return lateLoadOf(setting, zone, schedule);
}

// A first-order lag behind a ramp of r N/s is behind by r tau (1 - e^(-t / tau)), tau = 1 / (2 pi 2 Hz); 0.45 / 2.6 of
// the force is moved.
describe('load that is late', () => {
  const tau = 1 / (4 * Math.PI);
  const perNewton = 0.45 / 2.6;

  test.each([0.1, 0.3, 1, 1.9])('behind a steady release, %f s after its start', (timeS) => {
    const late = easing(8000, 3000, 8000 * perNewton)(40 * timeS);
    expectRelative(late, 3000 * perNewton * tau * (1 - Math.exp(-timeS / tau)), 0.03);
  });

  test('none where nothing changes, and what the application left behind dies out', () => {
    expect(Math.abs(easing(8000, 0, 8000 * perNewton)(40))).toBeLessThan(1e-9);
    const left = easing(8000, 0, 7000 * perNewton);
    expectRelative(left(20) / left(8), Math.exp(-0.3 / tau), 1e-6);
    expect(left(8)).toBeLessThan(0);
  });
});

// On a flat straight, friction 1.4, 0.777329 of the brakes in front: (1 - phi) F = mu (W a / L - late - F h / L).
describe('what the axles take meanwhile', () => {
  const limitWith = (frontShare: number, lateN: number) =>
    twoAxleModel(
      { ...setting.axles, brakeSplit: undefined, frontBrakeShare: frontShare } as never,
      setting.road,
      () => 0,
      {
        lateLoadN: () => lateN,
      },
    ).limit(10, 40 ** 2);
  const mu = 1.4;
  const restN = (1250 * G) / 2.6;

  test('the rear axle brakes less by what it lacks', () => {
    for (const lateN of [0, 400, 1200]) {
      const { brakeForceN, limiter } = limitWith(0.5, lateN);
      expect(limiter).toBe('rear axle');
      const byHand = (mu * (restN * 1.35 - lateN)) / (0.5 + (mu * 0.45) / 2.6);
      expectRelative(brakeForceN, byHand, 1e-9);
    }
  });

  test('the front axle takes nothing from load that is late in leaving it', () => {
    const settled = limitWith(0.777329, 0);
    expect(settled.limiter).toBe('front axle');
    expectRelative(limitWith(0.777329, 300).brakeForceN, settled.brakeForceN, 1e-12);
  });

  test('load on its way forward is missed at the front, beyond a fiftieth of what is there', () => {
    const frontN = restN * 1.25;
    const few = limitWith(0.777329, -0.01 * frontN);
    expectRelative(few.brakeForceN, limitWith(0.777329, 0).brakeForceN, 1e-12);
    const byHand = (mu * (frontN * 1.02 - 900)) / (0.777329 - (mu * 0.45) / 2.6);
    expectRelative(limitWith(0.777329, -900).brakeForceN, byHand, 1e-9);
  });
});
