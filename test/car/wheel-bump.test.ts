import { expect, test } from 'vitest';
import { bumpSlowdownRadps } from '../../src/car/wheel-bump.ts';
import { expectRelative } from '../close-to.ts';

const bump = { loadN: 3500, depth: 0.3, durationS: 0.05 };
const wheel = { radiusM: 0.31, inertiaKgm2: 1.2, mu: 1.5 };

test('a wheel at the limit slows by 12.951233 rad/s over a 30 % dip, at 85 % by 4.434847, hand-worked', () => {
  expectRelative(bumpSlowdownRadps(bump, wheel, 1), 12.951233, 1e-6);
  expectRelative(bumpSlowdownRadps(bump, wheel, 0.85), 4.434847, 1e-6);
});

test('it does not slow while the spare grip covers the dip', () => {
  expect(bumpSlowdownRadps(bump, wheel, 0.7)).toBe(0);
  expect(bumpSlowdownRadps(bump, wheel, 0.5)).toBe(0);
});

test('the closed form is the integral of the missing grip', () => {
  // Independent: rectangle sum of mu N r (dip - spare) / J over the time in which the dip exceeds the spare grip.
  const n = 200_000;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const dip = 0.3 * Math.sin((Math.PI * (i + 0.5)) / n);
    sum += Math.max(0, dip - 0.15) * (0.05 / n);
  }
  expectRelative(bumpSlowdownRadps(bump, wheel, 0.85), (1.5 * 3500 * 0.31 * sum) / 1.2, 1e-6);
});
