import { describe, expect, test } from 'vitest';
import { tabulate } from '../../src/target/tabulate.ts';
import { travelOf } from '../../src/target/travel.ts';
import { expectRelative } from '../close-to.ts';

/** Speed and time at `distanceM`, by Runge-Kutta steps of the equation of motion; shares nothing with the code. */
function rungeKutta(
  decelerationAt: (distanceM: number) => number,
  from: { distanceM: number; speedMps: number },
  distanceM: number,
): { timeS: number; speedMps: number } {
  const steps = 20_000;
  const h = (from.distanceM - distanceM) / steps;
  let [timeS, speedMps] = [0, from.speedMps];
  for (let i = 0; i < steps; i++) {
    const d = from.distanceM - i * h;
    const slope = (v: number, at: number): [number, number] => [1 / v, -decelerationAt(at) / v];
    const [t1, v1] = slope(speedMps, d);
    const [t2, v2] = slope(speedMps + (h / 2) * v1, d - h / 2);
    const [t3, v3] = slope(speedMps + (h / 2) * v2, d - h / 2);
    const [t4, v4] = slope(speedMps + h * v3, d - h);
    timeS += (h / 6) * (t1 + 2 * t2 + 2 * t3 + t4);
    speedMps += (h / 6) * (v1 + 2 * v2 + 2 * v3 + v4);
  }
  return { timeS, speedMps };
}

describe('constant level: the square of the speed is a straight line', () => {
  // 80 to 20 m/s at 1.5 g: 203.943243 m in 4.078864852 s (v^2 = u^2 - 2 a s; t = (u - v) / a).
  const travel = travelOf(
    tabulate(() => 1, 0, 203.943243),
    { entryMps: 80, slowestMps: 20 },
  );

  test('deceleration and time of the whole stop', () => {
    expect(travel.fullScaleDecelerationMps2).toBeCloseTo(1.5 * 9.80665, 6);
    expect(travel.timeAt(0)).toBeCloseTo(4.078864852, 6);
  });

  test('half of the distance: v^2 = (6400 + 400) / 2', () => {
    expect(travel.speedAt(203.943243 / 2)).toBeCloseTo(Math.sqrt(3400), 6);
  });

  test('a level twice as high means half the deceleration per level', () => {
    const half = travelOf(
      tabulate(() => 0.5, 0, 203.943243),
      { entryMps: 80, slowestMps: 20 },
    );
    expect(half.fullScaleDecelerationMps2).toBeCloseTo(3 * 9.80665, 6);
    expect(half.timeAt(0)).toBeCloseTo(4.078864852, 6);
  });
});

describe('mean deceleration that two speeds and a distance imply: (u^2 - v^2) / (2 s)', () => {
  // A brake maker's published braking zones: 330 to 66 km/h in 129 m and 295 to 81 km/h in 114 m.
  test.each([
    [330, 66, 129, 3.1883],
    [295, 81, 114, 2.7768],
  ])('%i to %i km/h in %i m', (fromKmh, toKmh, lengthM, meanG) => {
    const level = { start: 0, end: lengthM, at: () => 1 };
    const speeds = { entryMps: fromKmh / 3.6, slowestMps: toKmh / 3.6 };
    const { fullScaleDecelerationMps2 } = travelOf(level, speeds);
    expectRelative(fullScaleDecelerationMps2 / 9.80665, meanG, 2e-5);
  });
});

describe('share of the squared speed that a taper takes off, of what its first level would', () => {
  // Areas under tapers that leave 1 at the start of 60 m and end at 0, by hand: u / 60 from the slowest point is x.
  test.each<[string, (x: number) => number, number]>([
    ['linear: 1/2', (x) => x, 0.5],
    ['cosine: 2 / pi', (x) => Math.sin((Math.PI * x) / 2), 0.63661977],
    ['square root: 2/3', (x) => Math.sqrt(x), 0.66666667],
    ['quarter circle: pi / 4', (x) => Math.sqrt(x * (2 - x)), 0.78539816],
  ])('%s', (_, taper, share) => {
    const speeds = { entryMps: 50, slowestMps: 20 };
    const level = { start: 0, end: 60, at: (d: number) => taper(Math.min(1, Math.max(0, d / 60))) };
    const { fullScaleDecelerationMps2 } = travelOf(level, speeds);
    expectRelative((50 ** 2 - 20 ** 2) / (2 * 60 * fullScaleDecelerationMps2), share, 1e-6);
  });
});

describe('level that falls linearly to the slowest point', () => {
  // By hand: a = a0 d / L gives v^2 = v1^2 + a0 d^2 / L, so the time left is sqrt(L / a0) asinh(d sqrt(a0 / L) / v1).
  // With a0 = 1.5 g, L = 60 m and v1^2 = 50 a0 the whole takes 1.913145 s and starts at 40.225580 m/s.
  const A0 = 1.5 * 9.80665;
  const speeds = { entryMps: 40.22558, slowestMps: 27.12008 };
  const travel = travelOf(
    tabulate((d) => d / 60, 0, 60),
    speeds,
  );

  test('time and speed against the closed form', () => {
    expect(travel.timeAt(0)).toBeCloseTo(1.913145, 5);
    expect(travel.speedAt(30)).toBeCloseTo(30.921649, 5);
    expect(travel.fullScaleDecelerationMps2).toBeCloseTo(A0, 4);
  });

  test.each([45, 20, 3])('time at %d m', (distanceM) => {
    const left = Math.sqrt(60 / A0) * Math.asinh((distanceM * Math.sqrt(A0 / 60)) / 27.12008);
    expect(travel.timeAt(distanceM)).toBeCloseTo(1.913145 - left, 5);
  });
});

test('a curved level agrees with a Runge-Kutta integration', () => {
  // Quarter cosine over 90 m: the area is 90 * 2 / pi, so full scale is (55^2 - 22^2) * pi / 360.
  const levelAt = (d: number): number => Math.sin((Math.PI * d) / 180);
  const full = ((55 ** 2 - 22 ** 2) * Math.PI) / 360;
  const travel = travelOf(tabulate(levelAt, 0, 90), { entryMps: 55, slowestMps: 22 });
  for (const distanceM of [80, 51.3, 20, 0.5]) {
    const expected = rungeKutta(
      (d) => full * levelAt(d),
      { distanceM: 90, speedMps: 55 },
      distanceM,
    );
    expect(travel.speedAt(distanceM)).toBeCloseTo(expected.speedMps, 2);
    expect(travel.timeAt(distanceM)).toBeCloseTo(expected.timeS, 4);
  }
});

describe('outside the curve the car coasts', () => {
  const travel = travelOf(
    tabulate(() => 1, 10, 100),
    { entryMps: 50, slowestMps: 20 },
  );

  test('at entry speed before the rise', () => {
    expect(travel.timeAt(125)).toBeCloseTo(-0.5, 12);
    expect(travel.distanceAt(-0.5)).toBeCloseTo(125, 12);
    expect(travel.speedAt(125)).toBe(50);
  });

  test('at the slowest speed after brake off', () => {
    const off = travel.timeAt(10);
    expect(travel.timeAt(0)).toBeCloseTo(off + 0.5, 12);
    expect(travel.distanceAt(off + 0.5)).toBeCloseTo(0, 12);
    expect(travel.speedAt(0)).toBeCloseTo(20, 9);
  });

  test("distance and time are each other's inverse", () => {
    for (const distanceM of [130, 100, 77.7, 33, 10, 4])
      expect(travel.distanceAt(travel.timeAt(distanceM))).toBeCloseTo(distanceM, 9);
  });
});

test('where the car is at a time does not depend on what was asked before', () => {
  // The stop of 80 to 20 m/s at 1.5 g again: the way left is 203.943243 - 80 t + 14.709975 t^2 / 2.
  const travel = travelOf(
    tabulate(() => 1, 0, 203.943243),
    { entryMps: 80, slowestMps: 20 },
  );
  for (const timeS of [0, 0.001, 0.002, 4, 3.999, 1, 4.0788, 0, 2.5, 2.5001])
    expect(travel.distanceAt(timeS)).toBeCloseTo(
      203.943243 - 80 * timeS + 7.3549875 * timeS ** 2,
      4,
    );
});
