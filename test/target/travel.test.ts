import { describe, expect, test } from 'vitest';
import { tabulate } from '../../src/target/tabulate.ts';
import { travelOf } from '../../src/target/travel.ts';

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
