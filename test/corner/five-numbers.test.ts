import { describe, expect, test } from 'vitest';
import { buildCorner } from '../../src/corner/build-corner.ts';
import { brakingDistanceM } from '../../src/corner/five-numbers.ts';
import type { Line } from '../../src/corner/line.ts';
import { sheetFromFiveNumbers } from '../../src/corner/sheet-from-five-numbers.ts';
import { Problem } from '../../src/problem.ts';
import { solveZone } from '../../src/target/derive/derive-zone.ts';
import { GT_CAR } from '../reference/gt-car.ts';

const NUMBERS = {
  approachSpeedMps: 190 / 3.6,
  slowestSpeedMps: 90 / 3.6,
  zoneLengthM: 105,
  turnRad: (85 * Math.PI) / 180,
  gear: 3,
};
const G = 9.80665;

describe('a sheet from five numbers', () => {
  const { sheet, marks, text } = sheetFromFiveNumbers(NUMBERS, { name: 'Pump corner' });

  test('its radius carries the slowest speed with the stated grip', () => {
    // v^2 = mu g R: 25^2 / (1.4 * 9.80665) = 45.52 m.
    expect(sheet.line.radiusM).toBeCloseTo(45.5, 6);
    expect(sheet.name).toBe('Pump corner');
    expect(text).toContain('With a grip of 1.4');
  });

  test('its zone is as long as asked for', () => {
    expect(marks.goalM).toBeGreaterThan(104.5);
    expect(marks.goalM).toBeLessThan(105.5);
  });

  test('the example car, which has that grip and some downforce, brakes about there', () => {
    const zone = solveZone(GT_CAR, buildCorner(sheet, null));
    expect(zone.tooFastMps).toBe(0);
    expect(Math.abs(zone.slowestM - zone.brakePointM - 105)).toBeLessThan(20);
    expect(Math.abs((zone.points.at(-1)?.speedMps ?? 0) - 25)).toBeLessThan(3);
  });

  test('less grip moves the brake point back, ten per cent more than 0.05', () => {
    // A straight stop from v to 0 grows with 1 / mu: 0.05 of 1.4 is 3.6 %, of 105 m about 4 m.
    expect(marks.perGripM).toBeGreaterThan(2);
    expect(marks.perGripM).toBeLessThan(8);
    expect(marks.firstLapM - marks.goalM).toBeGreaterThan(2 * marks.perGripM);
  });
});

test('on an entry of no length the distance is the straight one', () => {
  const line: Line = {
    kind: 'smooth-apex',
    sign: 1,
    turnRad: 1,
    radiusM: 45.52,
    entryM: 0.01,
    exitM: null,
  };
  const straight = (NUMBERS.approachSpeedMps ** 2 - 1.4 * G * 45.52) / (2 * 1.4 * G);
  // And half the 0.2 s of the application.
  expect(brakingDistanceM(line, NUMBERS, 1.4)).toBeCloseTo(
    straight + 0.1 * NUMBERS.approachSpeedMps,
    1,
  );
});

test.each([
  [{ zoneLengthM: 60 }, 'a zone of 60 m is too short'],
  [{ slowestSpeedMps: 60 }, 'the slowest speed is not below the approach speed'],
])('%j is refused', (change, message) => {
  expect(() => sheetFromFiveNumbers({ ...NUMBERS, ...change })).toThrow(Problem);
  expect(() => sheetFromFiveNumbers({ ...NUMBERS, ...change })).toThrow(message);
});

test('a zone longer than the corner can fill ends in the longest entry, and the goal says so', () => {
  const { marks } = sheetFromFiveNumbers({ ...NUMBERS, zoneLengthM: 400 });
  expect(marks.goalM).toBeLessThan(200);
});
