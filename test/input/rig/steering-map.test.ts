import { describe, expect, test } from 'vitest';
import { steeringMap } from '../../../src/input/rig/steering-map.ts';
import { Problem } from '../../../src/problem.ts';
import { calibration, WORD } from './calibration.ts';

describe('steeringMap', () => {
  test('left is positive, the stops are half of the lock away', () => {
    const degrees = steeringMap(calibration(32768, 0), WORD, 900);
    expect(degrees(0)).toBe(450);
    expect(degrees(16384)).toBe(225);
    expect(degrees(32768)).toBeCloseTo(0, 12);
    expect(degrees(49152)).toBe(-225);
  });

  test('a wheel that counts up to the left gives the same signs', () => {
    const degrees = steeringMap(calibration(32768, 65535), WORD, 540);
    expect(degrees(65535)).toBe(270);
    expect(degrees(1)).toBe(-270);
  });

  test('is clamped at both stops', () => {
    const degrees = steeringMap(calibration(1000, 2000), WORD, 360);
    expect([2500, 0, 65535].map(degrees)).toEqual([180, -180, 180]);
    expect(steeringMap(calibration(5000, 6000), WORD, 360)(0)).toBe(-180);
  });

  test('dead zones lie on both sides of straight ahead and before both stops', () => {
    const dead = calibration(1000, 2000, { deadStart: 0.1, deadEnd: 0.1 });
    const degrees = steeringMap(dead, WORD, 360);
    expect(Math.abs(degrees(1090))).toBe(0);
    expect(Math.abs(degrees(910))).toBe(0);
    expect(degrees(1500)).toBeCloseTo(90, 9);
    expect(degrees(500)).toBeCloseTo(-90, 9);
    expect(degrees(1950)).toBe(180);
  });

  test.each([null, 0, -900, Number.NaN, Number.POSITIVE_INFINITY])(
    'refuses a lock of %s',
    (lock) => {
      expect(() => steeringMap(calibration(32768, 0), WORD, lock)).toThrow(Problem);
    },
  );

  test('refuses a wheel that hardly moved', () => {
    expect(() => steeringMap(calibration(100, 120), WORD, 900)).toThrow('20 counts');
  });
});
