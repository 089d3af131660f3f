import { expect, test } from 'vitest';
import { roadTimeS } from '../../../src/drill/event/road-time.ts';

test('at one speed it is length over speed', () => {
  expect(roadTimeS(500, 50, 50)).toBeCloseTo(10, 12);
});

/**
 * Worked by hand with P/m = 300 W/kg from 20 m/s for 10 s: v^2 = 400 + 2 * 300 * 10 = 6400, v = 80 m/s;
 * d = (80^3 - 20^3) / (3 * 300) = 504000 / 900 = 560 m.
 */
test('under a constant power', () => {
  expect(roadTimeS(560, 20, 80)).toBeCloseTo(10, 12);
});

/** Steps of a millisecond with a = P / (m v), which knows nothing of the closed form. */
test('against a car that is moved in steps', () => {
  const [stepS, powerPerKg] = [0.001, 250];
  let [v, d, t] = [17, 0, 0];
  while (v < 60) {
    const middle = v + (powerPerKg / v) * (stepS / 2);
    d += middle * stepS;
    v += (powerPerKg / middle) * stepS;
    t += stepS;
  }
  expect(roadTimeS(d, 17, v)).toBeCloseTo(t, 4);
});
