import { expect, test } from 'vitest';
import type { BrakingModel } from '../../src/corner/braking-model.ts';
import { speedCeiling } from '../../src/corner/speed-ceiling.ts';
import { brakeToSlowest } from '../../src/corner/speed-profile.ts';
import { expectRelative } from '../close-to.ts';

/** 10 m/s^2 of brakes and 0.5 of drag, whatever the place. */
const model = (cornerLimit: (sM: number) => number): BrakingModel => ({
  limit: () => ({ decelerationMps2: 10.5, brakeForceN: 10, limiter: 'grip' }),
  decelerationMps2: (_, __, forceN) => forceN + 0.5,
  cornerLimit,
  releaseLaw: () => null,
});

test('before a tighter place: what the brakes take off until there, w = w1 + 2 D s', () => {
  const ceiling = speedCeiling(
    model((s) => (s >= 50 ? 400 : Number.POSITIVE_INFINITY)),
    0,
    80,
  );
  for (const s of [0, 20, 41.3]) expectRelative(ceiling(s), 400 + 21 * (50 - s), 1e-9);
  expect(ceiling(60)).toBe(400);
});

test('nothing where nothing limits', () => {
  expect(
    speedCeiling(
      model(() => Number.POSITIVE_INFINITY),
      0,
      30,
    )(10),
  ).toBe(Number.POSITIVE_INFINITY);
});

test('where the corner limits the speed the brake gives what its fall asks for: 3 m/s^2 less drag', () => {
  const points = brakeToSlowest(
    model((s) => 1000 - 6 * s),
    {
      slowestM: 50,
      fromM: 0,
      jointsM: [],
      stepM: 1,
      stopAboveMps: Number.POSITIVE_INFINITY,
      releaseNps: Number.POSITIVE_INFINITY,
    },
  );
  const riding = points.filter(({ limiter }) => limiter === 'corner');
  expect(riding.length).toBeGreaterThan(30);
  for (const { decelerationMps2, brakeForceN } of riding) {
    expectRelative(decelerationMps2, 3, 1e-9);
    expectRelative(brakeForceN, 2.5, 1e-9);
  }
});
