import { describe, expect, test } from 'vitest';
import { profileCurve } from '../../src/corner/profile-curve.ts';
import type { ProfilePoint } from '../../src/corner/speed-profile.ts';

const point = (sM: number, squared: number, decelerationMps2: number, brakeForceN: number) =>
  ({
    sM,
    speedMps: Math.sqrt(squared),
    decelerationMps2,
    brakeForceN,
    limiter: 'grip',
    toSlowestS: 0,
  }) satisfies ProfilePoint;

describe('between two points 100 m apart', () => {
  // constant deceleration of 10 m/s^2: v^2 = 2500 - 20 s
  const even = profileCurve([point(-100, 2500, 10, 9000), point(0, 500, 10, 3000)]);
  // a deceleration that falls in a straight line from 12 to 2 m/s^2: v^2 = 1600 - 24 x + 0.1 x^2 after x m
  const easing = profileCurve([point(-100, 1600, 12, 0), point(0, 200, 2, 0)]);

  test.each([-100, -80, -50, -10, 0])(
    'the squared speed at %d m is that of the closed form',
    (sM) => {
      const x = sM + 100;
      expect(even.speedMps(sM) ** 2).toBeCloseTo(2500 - 20 * x, 9);
      expect(easing.speedMps(sM) ** 2).toBeCloseTo(1600 - 24 * x + 0.1 * x * x, 9);
      expect(easing.decelerationMps2(sM)).toBeCloseTo(12 - 0.1 * x, 12);
      expect(even.brakeForceN(sM)).toBeCloseTo(9000 - 60 * x, 9);
    },
  );

  test('a speed has its place, and beyond the ends that of the end', () => {
    expect(even.placeOf(Math.sqrt(1500))).toBeCloseTo(-50, 9);
    expect(easing.placeOf(Math.sqrt(1600 - 24 * 30 + 90))).toBeCloseTo(-70, 9);
    expect(even.placeOf(60)).toBe(-100);
    expect(even.placeOf(1)).toBe(0);
  });
});
