import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Car } from '../../../src/car/car.ts';
import type { Corner } from '../../../src/corner/corner.ts';
import { joinPath } from '../../../src/corner/path.ts';
import { solveZone } from '../../../src/target/derive/derive-zone.ts';
import { keyPointsOf } from '../../../src/target/derive/zone-key-points.ts';
import type { ZonePoint } from '../../../src/target/derive/zone-point.ts';
import { expectRelative } from '../../close-to.ts';
import { GT_CAR, SMOOTH_CORNER } from '../../reference/gt-car.ts';

const G = 9.80665;
const NO_AERO: Car = { ...GT_CAR, aero: { ...GT_CAR.aero, dragAreaM2: 0, downforceAreaM2: 0 } };
/** A car whose engine does nothing, so that hand-worked values without one hold. */
const noEngine = (car: Car): Car => ({
  ...car,
  engine: { ...car.engine, brakingTorque: [{ rpm: 0, torqueNm: 0 }] },
});
const at = (points: readonly ZonePoint[], sM: number): ZonePoint =>
  points.reduce((best, p) => (Math.abs(p.sM - sM) < Math.abs(best.sM - sM) ? p : best));

describe('hand-worked pressures of the GT example without air forces and engine', () => {
  // The values are of loads that follow the brakes at once.
  const car = { ...noEngine(NO_AERO), pitchHz: 1e9 };
  const zone = solveZone(car, { ...SMOOTH_CORNER, approachSpeedMps: 50 });

  test.each([
    [15, 44.462, 436.99, 'front axle'],
    [30, 32.191, 316.39, 'rear axle'],
    [40, 17.328, 170.3, 'rear axle'],
    [50, 5.554, 54.59, 'rear axle'],
  ])('at %i m', (sM, bar, foot, limiter) => {
    const near = at(zone.points, sM);
    const next = at(zone.points, sM + (near.sM > sM ? -1 : 1) * 0.9);
    const blend = (key: 'pressureFrontPa' | 'pedalForceN'): number =>
      near[key] + ((next[key] - near[key]) * (sM - near.sM)) / (next.sM - near.sM || 1);
    expectRelative(blend('pressureFrontPa') / 1e5, bar, 2e-3);
    expectRelative(blend('pedalForceN'), foot, 2e-3);
    expect(near.limiter).toBe(limiter);
  });
});

describe('a zone of the GT example', () => {
  const zone = solveZone(GT_CAR, SMOOTH_CORNER);

  test('kinetic energy lost is the work of brakes, drag and engine', () => {
    // Trapezoid over the points, from what they say: F, drag 0.5 * 1.2 * 1.0 v^2, and m D as the sum of all.
    let work = 0;
    for (let i = 1; i < zone.points.length; i++) {
      const [a, b] = [zone.points[i - 1] as ZonePoint, zone.points[i] as ZonePoint];
      work += (-1250 * (a.accelXMps2 + b.accelXMps2) * (b.sM - a.sM)) / 2;
    }
    const [first, last] = [zone.points[0] as ZonePoint, zone.points.at(-1) as ZonePoint];
    expectRelative(work, 0.5 * 1250 * (first.speedMps ** 2 - last.speedMps ** 2), 1e-3);
  });

  test('no axle is asked for more than it has, and at the limit one uses all of it', () => {
    // Off the brake the throttle takes out what the rear axle does not carry of the engine braking.
    for (const point of zone.points) {
      expect(Math.max(point.frontUse, point.rearUse)).toBeLessThanOrEqual(1 + 1e-6);
      if (point.limiter === 'front axle') expectRelative(point.frontUse, 1, 1e-6);
      if (point.limiter === 'rear axle') expectRelative(point.rearUse, 1, 1e-6);
    }
  });

  test('time and distance run forwards and meet at the slowest point', () => {
    for (let i = 1; i < zone.points.length; i++) {
      const [a, b] = [zone.points[i - 1] as ZonePoint, zone.points[i] as ZonePoint];
      expect(b.timeS).toBeGreaterThan(a.timeS);
      expect(b.sM).toBeGreaterThan(a.sM);
    }
    expectRelative(zone.points.at(-1)?.timeS ?? 0, zone.durationS, 1e-9);
  });

  test('signs of ISO 8855 in a left-hander', () => {
    const middle = at(zone.points, 40);
    expect(middle.accelXMps2).toBeLessThan(0);
    expect(middle.accelYMps2).toBeGreaterThan(0);
    expect(middle.steeringRad).toBeGreaterThan(0);
  });

  test('release begins at the last place that still has 97 % of what the straight would carry', () => {
    const car = noEngine(GT_CAR);
    const solved = solveZone(car, SMOOTH_CORNER);
    const { startOfRelease } = keyPointsOf(car, SMOOTH_CORNER, solved);
    const next = solved.points[solved.points.indexOf(startOfRelease) + 1] as ZonePoint;
    // Front lock on the straight with downforce: mu (W b + A_f L) / (phi L - mu h).
    const share = ({ brakeForceN, speedMps }: ZonePoint): number => {
      const down = 0.5 * 1.2 * 3 * 0.42 * speedMps ** 2;
      const limit = (1.4 * (1250 * G * 1.25 + down * 2.6)) / (0.777329 * 2.6 - 1.4 * 0.45);
      return brakeForceN / limit;
    };
    expect(share(startOfRelease)).toBeGreaterThanOrEqual(0.97);
    expect(share(next)).toBeLessThan(0.97);
  });

  test('release begins after turn-in, after a bleed on the straight', () => {
    const keys = keyPointsOf(GT_CAR, SMOOTH_CORNER, zone);
    expect(keys.startOfRelease.sM).toBeGreaterThan(0);
    expect(keys.peak.level).toBeGreaterThan(keys.turnIn.level);
    expect(keys.turnIn.level).toBeGreaterThan(keys.startOfRelease.level);
    expectRelative(keys.slowest.speedMps, at(zone.points, 60).speedMps, 1e-9);
  });
});

describe('relations', () => {
  const mirrored: Corner = {
    ...SMOOTH_CORNER,
    path: joinPath(
      SMOOTH_CORNER.path.segments.map((segment) => ({
        ...segment,
        startCurvature: -segment.startCurvature,
        endCurvature: -segment.endCurvature,
      })),
    ),
  };

  test('a mirrored corner has the same speeds and pressures and turned signs', () => {
    const left = solveZone(GT_CAR, SMOOTH_CORNER).points;
    const right = solveZone(GT_CAR, mirrored).points;
    expect(right.length).toBe(left.length);
    left.forEach((point, i) => {
      const other = right[i] as ZonePoint;
      expect(other.speedMps).toBeCloseTo(point.speedMps, 9);
      expect(other.level).toBeCloseTo(point.level, 9);
      expect(other.accelYMps2).toBeCloseTo(-point.accelYMps2, 9);
      expect(other.steeringRad).toBeCloseTo(-point.steeringRad, 9);
    });
  });

  test('without air and engine the mass changes the pedal and nothing else', () => {
    const light = solveZone(noEngine(NO_AERO), SMOOTH_CORNER);
    const heavy = solveZone(
      noEngine({ ...NO_AERO, chassis: { ...NO_AERO.chassis, massKg: 2500 } }),
      SMOOTH_CORNER,
    );
    expectRelative(heavy.brakePointM, light.brakePointM, 1e-4);
    expectRelative(at(heavy.points, 10).pedalForceN, 2 * at(light.points, 10).pedalForceN, 1e-3);
  });

  test('more grip is nowhere slower and brakes nowhere earlier; more radius is faster by its square root', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.7, max: 0.98, noNaN: true }), (share) => {
        const less = solveZone(GT_CAR, { ...SMOOTH_CORNER, gripShare: share });
        const more = solveZone(GT_CAR, { ...SMOOTH_CORNER, gripShare: share + 0.02 });
        expect(more.brakePointM).toBeGreaterThanOrEqual(less.brakePointM);
        for (const sM of [0, 20, 40, 60]) {
          expect(at(more.points, sM).speedMps).toBeGreaterThan(at(less.points, sM).speedMps - 1e-9);
        }
      }),
      { numRuns: 8 },
    );
    const apex = (radius: number): number => {
      const segments = [
        { kind: 'smooth' as const, lengthM: 60, startCurvature: 0, endCurvature: 1 / radius },
      ];
      return (
        solveZone(NO_AERO, { ...SMOOTH_CORNER, path: joinPath(segments) }).points.at(-1)
          ?.speedMps ?? 0
      );
    };
    expectRelative(apex(80) / apex(20), 2, 1e-9);
    expectRelative(apex(50), Math.sqrt(1.4 * G * 50), 1e-6);
  });

  test('weak pads need more foot and change no speed', () => {
    const weak = (factor: number): Car => ({
      ...GT_CAR,
      brakes: {
        ...GT_CAR.brakes,
        front: { ...GT_CAR.brakes.front, padFriction: 0.5 * factor },
        rear: { ...GT_CAR.brakes.rear, padFriction: 0.5 * factor },
      },
    });
    const fresh = at(solveZone(weak(1), SMOOTH_CORNER).points, 10);
    const faded = at(solveZone(weak(0.8), SMOOTH_CORNER).points, 10);
    expectRelative(faded.pedalForceN, fresh.pedalForceN / 0.8, 1e-6);
    expectRelative(faded.speedMps, fresh.speedMps, 1e-9);
  });

  test('a zone too short for its approach says by how much', () => {
    const short = solveZone(GT_CAR, { ...SMOOTH_CORNER, approachM: 20, approachSpeedMps: 70 });
    expect(short.tooFastMps).toBeGreaterThan(1);
    expect(solveZone(GT_CAR, SMOOTH_CORNER).tooFastMps).toBe(0);
  });

  test('pitch lag costs distance: a slower chassis brakes earlier', () => {
    const slow = solveZone({ ...GT_CAR, pitchHz: 1.5 }, SMOOTH_CORNER).brakePointM;
    const quick = solveZone({ ...GT_CAR, pitchHz: 3 }, SMOOTH_CORNER).brakePointM;
    expect(slow).toBeLessThan(quick);
  });

  test.each([0, 0.05])(
    'a foot that releases slowly loses time and brakes less late, rotating share %f',
    (rotatingShare) => {
      const driver = { ...GT_CAR.driver, releaseNps: 350 };
      const slowFoot: Car = { ...GT_CAR, rotatingShare, driver };
      const slow = solveZone(slowFoot, SMOOTH_CORNER);
      expect(slow.footLossS()).toBeGreaterThan(0);
      const rates = slow.points.slice(1).map((p, i) => {
        const before = slow.points[i] as ZonePoint;
        return (before.pedalForceN - p.pedalForceN) / (p.timeS - before.timeS);
      });
      const released = rates.filter(
        (_, i) =>
          (slow.points[i + 1] as ZonePoint).limiter === 'foot' &&
          (slow.points[i] as ZonePoint).sM > 0,
      );
      expect(released.length).toBeGreaterThan(5);
      expect(Math.max(...released)).toBeLessThan(350 * 1.02);
    },
  );
});
