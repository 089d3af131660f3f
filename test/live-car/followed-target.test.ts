import { describe, expect, test } from 'vitest';
import type { Car } from '../../src/car/car.ts';
import { liveZone } from '../../src/live/build-live-zone.ts';
import { startLiveCar } from '../../src/live/drive-live-car.ts';
import { drivenGears } from '../../src/live/driven-gears.ts';
import { followedTarget } from '../../src/live/followed-target.ts';
import type { LiveEvent } from '../../src/live/live-event.ts';
import type { LiveRun } from '../../src/live/live-run.ts';
import type { LiveZone } from '../../src/live/live-zone.ts';
import { deriveTarget } from '../../src/target/derive/derive-target.ts';
import type { ModelName } from '../../src/target/derive/zone-model.ts';
import { GT_CAR, SMOOTH_CORNER } from '../reference/gt-car.ts';
import golden from '../reference/live-score.json' with { type: 'json' };
import { PEDAL_ONLY, pointsOver } from './rigs.ts';

function zoneWith(car: Car, model: ModelName = 'two-axle'): LiveZone {
  const derived = deriveTarget(car, SMOOTH_CORNER, model);
  return liveZone({ derived, advice: null, controls: PEDAL_ONLY, call: null });
}

/** A car whose place and speed are given functions of the time from the cue. */
function passing(
  zone: LiveZone,
  at: (timeS: number) => readonly [number, number],
  untilS: number,
  events: readonly LiveEvent[] = [],
): LiveRun {
  const timeS = Float64Array.from({ length: 3000 + 1000 * untilS }, (_, i) => (i - 3000) / 1000);
  const none = new Float64Array(timeS.length);
  const columns = {
    timeS,
    placeM: timeS.map((t) => at(t)[0]),
    speedMps: timeS.map((t) => at(t)[1]),
    level: none,
    steeringRad: none,
    accelXMps2: none,
    accelYMps2: none,
    frontUse: none,
    rearUse: none,
  };
  return { zone, columns, end: { ...startLiveCar(zone), events } };
}

const step = (timeS: number): number => Math.round(1000 * (timeS + 3));

describe('a car that is where the derived zone has it', () => {
  test.each([
    ['', GT_CAR],
    ['with rotating parts', { ...GT_CAR, rotatingShare: 0.08 }],
    [
      'with an engine that holds it back',
      {
        ...GT_CAR,
        engine: {
          ...GT_CAR.engine,
          brakingTorque: [
            { rpm: 1000, torqueNm: 200 },
            { rpm: 8000, torqueNm: 300 },
          ],
        },
      },
    ],
  ] as const)('is asked for the derived level %s', (_, car) => {
    const zone = zoneWith(car);
    const { points, durationS, downshifts } = zone.derived.zone;
    const place = pointsOver(points, ({ sM }) => sM);
    const speed = pointsOver(points, ({ speedMps }) => speedMps);
    const level = pointsOver(points, (point) => point.level);
    const events = downshifts.map((shift): LiveEvent => {
      const made = { atS: 0, overRev: false, byDriver: false };
      return { kind: 'downshift', ...shift, ...made };
    });
    const at = (t: number): readonly [number, number] =>
      t < 0
        ? [points[0]!.sM + t * SMOOTH_CORNER.approachSpeedMps, SMOOTH_CORNER.approachSpeedMps]
        : [place(t), speed(t)];
    const run = passing(zone, at, durationS, events);
    const followed = followedTarget(zone, run, 0);
    const misses = Array.from({ length: Math.floor(100 * (durationS - 0.05)) }, (__, i) =>
      Math.abs(followed.level[step(i / 100)]! - level(i / 100)),
    );
    // At the seam between application and profile the derived zone leaps by 3 % of its level.
    expect(Math.max(...misses)).toBeLessThan(0.02);
    expect(misses.reduce((sum, miss) => sum + miss) / misses.length).toBeLessThan(5e-4);
    expect(followed.riseStep).toBe(3000);
    expect(followed.level.subarray(0, 3000).every((value) => value === 0)).toBe(true);
  });
});

describe('a car that is faster', () => {
  // F = mu m g (1 + w rho C_l A / (2 m g)) on the straight; the GT example presses with C_l A = 3 m^2 at 1.2 kg/m^3.
  test('has the grip of its own downforce on the straight', () => {
    const zone = zoneWith(GT_CAR, 'point-mass');
    const run = passing(zone, () => [-20, 70], 1);
    const { level } = followedTarget(zone, run, 0);
    const newtons = (v: number): number => 1.4 * (1250 * 9.80665 + 0.5 * 1.2 * 3 * v * v);
    expect(level[step(0.9)]! * golden.newtons_per_level).toBeCloseTo(newtons(70), 0);
  });
});

describe('the foot', () => {
  test('falls no faster than it releases, and is off beyond the slowest point', () => {
    const car = { ...GT_CAR, driver: { ...GT_CAR.driver, releaseNps: 1000 } };
    const zone = zoneWith(car);
    const run = passing(zone, (t) => (t < 0.6 ? [-60, 55] : [70, 20]), 2);
    const { level } = followedTarget(zone, run, 0);
    const before = level[step(0.55)]!;
    // 1000 N/s on 1000 N of full scale: 0.1 in 0.1 s.
    expect(level[step(0.7)]! - level[step(0.8)]!).toBeCloseTo(0.1, 9);
    expect(level[step(0.6)]!).toBeGreaterThan(before - 0.06);
    expect(level[step(1.9)]!).toBe(0);
  });

  test('has no more than full scale', () => {
    const zone = zoneWith({ ...GT_CAR, fullScalePedalForceN: 200 });
    const { level } = followedTarget(
      zone,
      passing(zone, () => [-60, 55], 1),
      0,
    );
    expect(Math.max(...level)).toBe(1);
  });
});

test('the gears of the places as they were driven', () => {
  const zone = zoneWith(GT_CAR);
  const shift = { overRev: false, rearUse: 0, byDriver: true, rpm: 5000, atS: 1 };
  const events: readonly LiveEvent[] = [
    { kind: 'downshift', fromGear: 5, toGear: 4, atM: -40, ...shift },
    { kind: 'lock-up', axle: 'front', fromM: -38, fromS: 1, toM: -30, toS: 1.2 },
    { kind: 'upshift', fromGear: 4, toGear: 5, atM: -20, ...shift },
  ];
  expect(drivenGears(passing(zone, () => [0, 50], 1, events))).toEqual([
    { fromM: Number.NEGATIVE_INFINITY, gear: 5 },
    { fromM: -40, gear: 4 },
    { fromM: -20, gear: 5 },
  ]);
});
