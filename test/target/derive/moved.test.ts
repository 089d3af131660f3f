import { expect, test } from 'vitest';
import { profileCurve } from '../../../src/corner/profile-curve.ts';
import type { ProfilePoint } from '../../../src/corner/speed-profile.ts';
import { movedM } from '../../../src/target/derive/moved.ts';
import type { AppliedZone } from '../../../src/target/derive/zone-points.ts';

/** A zone over 100 m with a force at every metre. */
function zoneOf(forceN: (sM: number) => number, brakePointM = 0): AppliedZone {
  const profile = Array.from(
    { length: 101 },
    (_, sM): ProfilePoint => ({
      sM,
      speedMps: 40,
      decelerationMps2: 0,
      brakeForceN: forceN(sM),
      limiter: 'rear axle',
      toSlowestS: (100 - sM) / 40,
    }),
  );
  const curve = profileCurve(profile);
  return { profile, curve, brakePointM, slowestM: 100, tooFastMps: 0, application: [] } as never;
}
const dropAt = (atM: number) => (sM: number) => (sM < atM ? 8000 : 0);

test('a force that drops three metres later has moved by three metres', () => {
  expect(movedM(zoneOf(dropAt(50)), zoneOf(dropAt(53)))).toBeCloseTo(3, 9);
});

test('a hundredth more force over a hundred metres is a metre', () => {
  expect(
    movedM(
      zoneOf(() => 7920),
      zoneOf(() => 8000),
    ),
  ).toBeCloseTo(1, 9);
});

test('so does a brake point that moved further than the force', () => {
  expect(movedM(zoneOf(dropAt(50), 0), zoneOf(dropAt(50), 2))).toBe(2);
});

test('the same zone has not moved, and one without brakes has no force to move', () => {
  expect(movedM(zoneOf(dropAt(50)), zoneOf(dropAt(50)))).toBe(0);
  expect(
    movedM(
      zoneOf(() => 0),
      zoneOf(() => 0),
    ),
  ).toBe(0);
});
