import { describe, expect, test } from 'vitest';
import { driveForceN, type Engine, type Gearbox } from '../../src/car/gearbox.ts';
import { upshiftSpeedMps } from '../../src/car/upshift.ts';
import { expectRelative } from '../close-to.ts';

const gearbox: Gearbox = {
  ratios: [3, 2, 1.6],
  finalDrive: 3,
  efficiency: 0.9,
  drivenWheelRadiusM: 0.3,
  revLimitRpm: 8000,
  shiftS: 0.1,
  blip: true,
};
const engine = (driveTorque: Engine['driveTorque']): Engine => ({
  driveTorque,
  brakingTorque: [{ rpm: 0, torqueNm: 0 }],
  inertiaKgm2: 0.1,
});
/** Road speed at an engine speed in a gear, m/s. */
const speed = (rpm: number, ratio: number): number => (((rpm * Math.PI) / 30) * 0.3) / (ratio * 3);

describe('place of an upshift', () => {
  test('at the rev limit where the torque is even: the lower gear always pulls more', () => {
    const even = engine([{ rpm: 1000, torqueNm: 400 }]);
    expectRelative(upshiftSpeedMps(gearbox, even, 1), speed(8000, 3), 1e-9);
  });

  test('before it where the next gear pulls more', () => {
    // 400 N m up to 6000 rpm, then falling by 0.15 N m a rpm: 3 (400 - 0.15 (n - 6000)) = 2 * 400 at n = 6888.9, where
    // second turns 4592.6, still on the even part.
    const falling = engine([
      { rpm: 1000, torqueNm: 400 },
      { rpm: 6000, torqueNm: 400 },
      { rpm: 8000, torqueNm: 100 },
    ]);
    expectRelative(upshiftSpeedMps(gearbox, falling, 1), speed(6000 + 400 / 3 / 0.15, 3), 1e-7);
  });

  test('never in the highest gear', () => {
    const even = engine([{ rpm: 1000, torqueNm: 400 }]);
    expect(upshiftSpeedMps(gearbox, even, 3)).toBe(Number.POSITIVE_INFINITY);
  });
});

test('driving force: 400 N m through 3 x 3 with a tenth lost on the way, at 0.3 m', () => {
  const even = engine([{ rpm: 1000, torqueNm: 400 }]);
  expectRelative(driveForceN(gearbox, even, 1, 10), (400 * 9 * 0.9) / 0.3, 1e-12);
  expect(driveForceN(gearbox, even, 1, speed(8001, 3))).toBe(0);
});
