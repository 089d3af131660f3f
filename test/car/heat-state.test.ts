import { describe, expect, test } from 'vitest';
import { pedalForceOf } from '../../src/car/brake-force.ts';
import { frontBrakeShare } from '../../src/car/brakes.ts';
import type { Car } from '../../src/car/car.ts';
import {
  cooledFor,
  type HeatState,
  heatedBy,
  startHeat,
  withHeat,
} from '../../src/car/heat-state.ts';
import { contactC, padFrictionAt } from '../../src/car/pad-friction.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CAR } from '../reference/gt-car.ts';

// 9 kg of 480 J/kgK cooled by 250 W/m^2K on 0.12 m^2: a time constant of 4320 / 30 = 144 s.
const disc = {
  massKg: 9,
  specificHeatJpkgK: 480,
  coolingAreaM2: 0.12,
  coolingAtRestWpm2K: 250,
  coolingPerRadpsWpm2K: 0,
  heatShare: 0.96,
};

function carWith(padCurve: Car['padCurves']['front'], startC: number): Car {
  const both = { front: startC, rear: startC };
  return {
    ...GT_CAR,
    discs: { front: disc, rear: disc },
    padCurves: { front: padCurve, rear: padCurve },
    discStartC: both,
    padStartC: both,
    airC: 30,
  };
}

/** Work that warms each of the two discs of an axle by that much. */
const workFor = (riseK: number): { front: number; rear: number } => {
  const workJ = (2 * riseK * 9 * 480) / 0.96;
  return { front: workJ, rear: workJ };
};

/** Temperatures before and after each of equal stops, 30 s apart. */
function stops(car: Car, riseK: number, count: number): { before: HeatState; after: HeatState }[] {
  const list: { before: HeatState; after: HeatState }[] = [];
  let before = startHeat(car);
  for (let stop = 0; stop < count; stop++) {
    const after = heatedBy(car, before, workFor(riseK));
    list.push({ before, after });
    before = cooledFor(car, after, { durationS: 30, speedMps: 40 });
  }
  return list;
}

const LINE = [
  { discC: 0, friction: 0.5 },
  { discC: 400, friction: 0.3 },
];

describe('repeated stops: 30 C air, time constant 144 s, one every 30 s', () => {
  // Closed form T_n = T_air + dT (1 - exp(-n x)) / (1 - exp(-x)), x = 30 / 144. @source Limpert, Brake Design and
  // Safety, ch. 3.
  test('of 120 K: 442.9244 C after five, 668.0818 C in the limit', () => {
    const list = stops(carWith(LINE, 30), 120, 200);
    expectRelative(list[4]!.after.discC.front, 442.9244, 1e-6);
    expectRelative(list[4]!.after.discC.rear, 442.9244, 1e-6);
    expectRelative(list[199]!.after.discC.front, 668.0818, 1e-6);
    expectRelative(list[199]!.before.discC.front, 548.0818, 1e-6);
  });

  // By hand from the closed form: 249.3157 C before the tenth stop of 60 K, so that friction on the straight line from
  // 0.5 at 0 C to 0.3 at 400 C has gone from 0.485 to 0.3753421; torque is linear in friction, so force goes up by
  // the inverse ratio.
  test('of 60 K: the tenth needs 1.2921544 times the pedal force of the first', () => {
    const car = carWith(LINE, 30);
    const list = stops(car, 60, 10);
    expectRelative(list[9]!.before.discC.front, 249.315703, 1e-8);
    const first = withHeat(car, list[0]!.before);
    const tenth = withHeat(car, list[9]!.before);
    const ratio = pedalForceOf(tenth.brakes)(15_000) / pedalForceOf(first.brakes)(15_000);
    expectRelative(ratio, 1.29215438, 1e-8);
    expectRelative(frontBrakeShare(tenth.brakes), frontBrakeShare(first.brakes), 1e-12);
  });

  test('moving air cools more', () => {
    const car = {
      ...carWith(LINE, 400),
      discs: {
        front: { ...disc, coolingPerRadpsWpm2K: 0.73 },
        rear: { ...disc, coolingPerRadpsWpm2K: 0.73 },
      },
    };
    // By hand at 33 m/s on 0.33 m: 100 rad/s, 323 W/m^2K, 111.45511 s: 30 + 370 exp(-30/111.45511).
    const cooled = cooledFor(car, startHeat(car), { durationS: 30, speedMps: 33 });
    expectRelative(cooled.discC.front, 30 + 370 * 0.764021, 1e-5);
    expectRelative(cooled.padC.rear, cooled.discC.rear, 1e-12);
  });
});

describe('fade', () => {
  test('from friction 0.80 to 0.55 the pedal takes 1.454545 times the force', () => {
    const curve = [
      { discC: 450, friction: 0.8 },
      { discC: 650, friction: 0.55 },
    ];
    const car = carWith(curve, 450);
    const hot = { front: 650, rear: 650 };
    const cold = withHeat(car, startHeat(car));
    const faded = withHeat(car, { discC: hot, padC: hot });
    const ratio = pedalForceOf(faded.brakes)(9000) / pedalForceOf(cold.brakes)(9000);
    expectRelative(ratio, 1.4545455, 1e-7);
  });

  test('of the front alone moves the brakes to the rear', () => {
    const car = carWith(LINE, 100);
    const discC = { front: 300, rear: 100 };
    const { brakes } = withHeat(car, { discC, padC: discC });
    // phi / (1 - phi) of 0.777329 scales by 0.35 / 0.45.
    const odds = ((0.777329 / 0.222671) * 0.35) / 0.45;
    expectRelative(frontBrakeShare(brakes), odds / (1 + odds), 1e-5);
  });

  // Front curve of a student-team model; values between its points from SciPy 1.17.1, PchipInterpolator.
  test.each([
    [50, 0.495],
    [250, 0.7229166667],
    [450, 0.815],
    [550, 0.675],
    [650, 0.544375],
    [400, 0.85],
    [-20, 0.2],
    [900, 0.5],
  ])('pad friction at %f C', (temperatureC, friction) => {
    const curve = [0.2, 0.65, 0.7, 0.75, 0.85, 0.75, 0.6, 0.5].map((value, i) => ({
      discC: 100 * i,
      friction: value,
    }));
    expectRelative(padFrictionAt(curve, temperatureC), friction, 1e-9);
  });

  test('a cold pad on a hot disc counts by its share of the heat', () => {
    // 0.96 x 400 + 0.04 x 25 = 385 C.
    expectRelative(contactC(disc, 400, 25), 385, 1e-12);
    const car = carWith(LINE, 400);
    const { brakes } = withHeat(car, {
      discC: { front: 400, rear: 400 },
      padC: { front: 25, rear: 400 },
    });
    expectRelative(brakes.front.padFriction, 0.5 - 0.0005 * 385, 1e-9);
    expectRelative(brakes.rear.padFriction, 0.3, 1e-9);
  });
});

test('a state is never changed in place', () => {
  const car = carWith(LINE, 30);
  const start = startHeat(car);
  const frozen = JSON.stringify(start);
  heatedBy(car, start, workFor(100));
  cooledFor(car, start, { durationS: 10, speedMps: 10 });
  expect(JSON.stringify(start)).toBe(frozen);
});
