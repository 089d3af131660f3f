import { expect, test } from 'vitest';
import { joinPath } from '../../src/corner/path.ts';
import { liveModel } from '../../src/live/live-model.ts';
import { type Motion, moveOn } from '../../src/live/motion.ts';
import { type Asked, newRates, ratesAt } from '../../src/live/motion-rates.ts';
import { GT_CAR, SMOOTH_CORNER } from '../reference/gt-car.ts';

/** Wide enough for the axles to carry it at any speed here. */
const BEND = joinPath([
  { kind: 'smooth', lengthM: 80, startCurvature: 0, endCurvature: 0.004 },
  { kind: 'smooth', lengthM: 80, startCurvature: 0.004, endCurvature: 0 },
]);
const MODEL = liveModel(GT_CAR, { ...SMOOTH_CORNER, path: BEND });
const GEARS = { gear: 3, shift: null, rearUse: 0 };

/** Where a smooth push and release has brought the car after two seconds in steps of `stepS`. */
function drive(stepS: number): Motion {
  const rates = newRates();
  const middleRates = newRates();
  const motion: Motion = {
    sM: -50,
    speedMps: 55,
    transferN: 0,
    frontSlip: 0,
    rearSlip: 0,
    frontWorkJ: 0,
    rearWorkJ: 0,
  };
  const middle = { ...motion };
  const asked: Asked = {
    level: 0,
    throttle: 0,
    clutch: 0,
    steeringRad: null,
    engineGives: false,
    frontThrough: 1,
    rearThrough: 1,
  };
  const steps = Math.round(2 / stepS);
  for (let i = 0; i < steps; i++) {
    // An input that is held over a step is that of its middle.
    asked.level = 0.45 * Math.sin((Math.PI * (i + 0.5) * stepS) / 2) ** 2;
    ratesAt(MODEL, GEARS, asked, motion, rates);
    moveOn(motion, rates, stepS / 2, middle);
    ratesAt(MODEL, GEARS, asked, middle, middleRates);
    moveOn(motion, middleRates, stepS, motion);
  }
  return motion;
}

test('halving the step quarters the error: second order for a smooth input', () => {
  const exact = drive(1 / 8000);
  const errorOf = (stepS: number) => Math.abs(drive(stepS).speedMps - exact.speedMps);
  const placeErrorOf = (stepS: number) => Math.abs(drive(stepS).sM - exact.sM);
  expect(exact.sM).toBeGreaterThan(20);
  for (const of of [errorOf, placeErrorOf]) {
    const ratio = of(1 / 125) / of(1 / 250);
    expect(ratio).toBeGreaterThan(3.7);
    expect(ratio).toBeLessThan(4.3);
  }
  expect(errorOf(1 / 1000)).toBeLessThan(1e-5);
});
