import { expect, test } from 'vitest';
import { engineBrakingInGearN, gearAt } from '../../../src/target/derive/zone-model.ts';
import { expectRelative } from '../../close-to.ts';
import { GT_CAR } from '../../reference/gt-car.ts';

// 1246.23 N at the axle for 63.662 N m in second gear of the GT example, and 1100 / 0.33 N of motor.
test('beside the friction brakes engine and motor add up', () => {
  const engine = { ...GT_CAR.engine, brakingTorque: [{ rpm: 1000, torqueNm: 63.662 }] };
  const electric = { torqueNm: 1100, powerW: 200e3, fadeFromMps: 30, fadeOutMps: 10 };
  expectRelative(engineBrakingInGearN({ ...GT_CAR, engine }, 2, 40), 1246.23, 1e-5);
  expectRelative(engineBrakingInGearN({ ...GT_CAR, engine, electric }, 2, 40), 4579.563, 1e-6);
});

test('a gear holds from its place on, the first one from before the zone', () => {
  const schedule = [
    { fromM: Number.NEGATIVE_INFINITY, gear: 4 },
    { fromM: -50, gear: 3 },
  ];
  expect([-200, -50.01, -50, 10].map((sM) => gearAt(schedule, sM))).toEqual([4, 4, 3, 3]);
});
