import { describe, expect, test } from 'vitest';
import { buildCar } from '../../../src/car/build-car.ts';
import { buildCorner, variantOfSheet } from '../../../src/corner/build-corner.ts';
import type { CornerSheet } from '../../../src/corner/corner-sheet.ts';
import type { ProfilePoint } from '../../../src/corner/speed-profile.ts';
import { solveZone } from '../../../src/target/derive/derive-zone.ts';
import { underThrottle } from '../../../src/target/derive/under-throttle.ts';
import { CARS, SHEETS } from './bundled-zones.ts';

const IN_SECOND = [{ fromM: Number.NEGATIVE_INFINITY, gear: 2 }];

/** Down to 20 m/s, free up to 60 m/s in between, down to 15 m/s: what the corner alone would allow. */
const PROFILE: readonly ProfilePoint[] = [40, 30, 20, 40, 60, 60, 60, 40, 20, 15].map((v, i) => ({
  sM: 10 * i,
  speedMps: v,
  decelerationMps2: 0,
  brakeForceN: 1,
  limiter: 'corner',
  toSlowestS: 0,
}));

describe('under throttle', () => {
  test('a constant pull makes v^2 grow by 2 a s until the profile is met again', () => {
    const driven = underThrottle(PROFILE, () => 5, IN_SECOND);
    const squared = driven.map(({ speedMps }) => speedMps ** 2);
    // 20^2 + 2 * 5 * 10 a step, until 20^2 again lies above the profile.
    const expected = [1600, 900, 400, 500, 600, 700, 800, 900, 400, 225];
    squared.forEach((w, i) => void expect(w).toBeCloseTo(expected[i]!, 9));
    expect(driven[4]).toMatchObject({ limiter: 'throttle', brakeForceN: 0, decelerationMps2: -5 });
    expect(driven[8]).toMatchObject({ limiter: 'corner', brakeForceN: 1 });
  });

  test('drag that grows with v^2 ends in w = (a/c) (1 - e^(-2 c s)) + w0 e^(-2 c s)', () => {
    const [a, c] = [8, 0.01];
    const driven = underThrottle(PROFILE, (_, w) => a - c * w, IN_SECOND);
    const at = (s: number) => (a / c) * (1 - Math.exp(-2 * c * s)) + 400 * Math.exp(-2 * c * s);
    for (const i of [3, 4, 5, 6]) {
      expect(driven[i]!.speedMps ** 2).toBeCloseTo(at(10 * (i - 2)), 1);
    }
  });

  test('is asked for the gear of the place', () => {
    const asked = new Set<number | null>();
    const schedule = [...IN_SECOND, { fromM: 35, gear: 3 }];
    const pull = (_: number, __: number, gear: number | null): number => {
      asked.add(gear);
      return 1;
    };
    underThrottle(PROFILE, pull, schedule);
    expect([...asked].sort()).toEqual([2, 3]);
  });

  test('times are those of the road: 2 s / (v0 + v1) a step at constant acceleration', () => {
    const level = PROFILE.map((point) => ({ ...point, decelerationMps2: -1 }));
    const driven = underThrottle(level.slice(2, 5), () => 5, IN_SECOND);
    const v = [400, 500, 600].map(Math.sqrt) as [number, number, number];
    expect(driven[1]!.toSlowestS).toBeCloseTo(20 / (v[1] + v[2]), 5);
  });
});

describe('between two apexes', () => {
  test.each(CARS)('$id is pulled by no more than its engine', (file) => {
    const sheet = SHEETS.find(({ id }) => id === 'twin-barrows') as CornerSheet;
    const corner = buildCorner(sheet, 'race');
    const built = buildCar(file, variantOfSheet(sheet, 'race').car);
    // A foot that lets go in no time, and comes back for the second apex.
    const car = { ...built, driver: { ...built.driver, releaseNps: Number.POSITIVE_INFINITY } };
    const { points } = solveZone(car, corner);
    const throttled = points.filter(({ limiter }) => limiter === 'throttle');
    expect(throttled.length).toBeGreaterThan(3);
    const most = Math.max(...file.engine.torque.map(({ torque_nm }) => torque_nm));
    const radius = car.gearbox.drivenWheelRadiusM;
    for (const { accelXMps2, gear, frontUse, rearUse, level } of throttled) {
      const ratio = file.gearbox.ratios[gear - 1]! * file.gearbox.final_drive;
      const pulled = (most * ratio * file.gearbox.efficiency) / radius / car.chassis.massKg;
      expect(accelXMps2).toBeLessThan(pulled);
      expect(Math.max(frontUse, rearUse)).toBeLessThan(1 + 1e-6);
      expect(level).toBe(0);
    }
  });
});
