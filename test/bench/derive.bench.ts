import { createRequire } from 'node:module';
import { afterAll, bench, describe } from 'vitest';
import { GT_CAR, SMOOTH_CORNER } from '../reference/gt-car.ts';

/** As it is built (`npm run build`): what the test runner makes of the sources asks for each import by a function. */
const { solveZone } = createRequire(import.meta.url)(
  '../../dist/target/derive/derive-zone.js',
) as typeof import('../../src/target/derive/derive-zone.ts');

/** 400 m from the start of the zone to the slowest point, at a step of a metre. */
const CORNER = { ...SMOOTH_CORNER, approachM: 340, approachSpeedMps: 80 };
const STEPS = 400;

/** The same method and number of steps on a right side that costs nothing: w' = 2 (a + b w). */
function plainRungeKutta(steps: number): number {
  let w = 625;
  const slope = (at: number): number => 2 * (12.3 + 0.002 * at);
  for (let i = 0; i < steps; i++) {
    const k1 = slope(w);
    const k2 = slope(w + k1 / 2);
    const k3 = slope(w + k2 / 2);
    const k4 = slope(w + k3);
    w += (k1 + 2 * k2 + 2 * k3 + k4) / 6;
  }
  return w;
}

/** The first runs are not compiled yet. */
const ROUNDS = { iterations: 50, warmupIterations: 50 };

let sink = 0;

describe('a braking zone of 400 m', () => {
  bench('floor: plain Runge-Kutta on a trivial right side', () => {
    sink += plainRungeKutta(STEPS);
  });

  bench(
    'point mass',
    () => {
      sink += solveZone(GT_CAR, CORNER, 'point-mass').durationS;
    },
    ROUNDS,
  );

  bench(
    'two axles',
    () => {
      sink += solveZone(GT_CAR, CORNER).durationS;
    },
    ROUNDS,
  );
});

/** Reads the sums, so that the loops are not optimised away. */
afterAll(() => {
  if (!Number.isFinite(sink)) throw new Error(`the sums came to ${sink}`);
});
