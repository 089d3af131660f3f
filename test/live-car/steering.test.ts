import { describe, expect, test } from 'vitest';
import type { Corner } from '../../src/corner/corner.ts';
import { joinPath } from '../../src/corner/path.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import type { LiveRun } from '../../src/live/live-run.ts';
import { deriveTarget } from '../../src/target/derive/derive-target.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CAR, SMOOTH_CORNER } from '../reference/gt-car.ts';
import { pointsOver, recordOf, WHOLE_RIG, zoneOf } from './rigs.ts';
import { BRAKES_AND_AIR, NO_AIR, straightZone } from './straight.ts';

const CAR = { ...GT_CAR, understeerRadpMps2: 0.0008 };
const degrees = (rad: number) => (rad * 180) / Math.PI;

describe('the wheel', () => {
  // kappa = delta / (L + K v^2), delta the angle at the wheels; 14 : 1 at the steering wheel.
  test('asks for the curvature of its angle: left is positive', () => {
    const zone = {
      ...straightZone({ ...NO_AIR, understeerRadpMps2: 0.0008 }, 40),
      controls: WHOLE_RIG,
    };
    const steering = () => 28;
    const { end } = driveRecord(zone, recordOf({ brake: () => 0, steering, endS: 0 }));
    const curvature = (2 * Math.PI) / 180 / (2.6 + 0.0008 * 1600);
    expectRelative(end.accelYMps2, curvature * 1600, 1e-9);
  });

  // The front axle carries m a_y b / L across and 0.777329 of the brakes along; friction 1.4 both ways.
  test('takes grip from the brakes: the use of an axle is that of its ellipse', () => {
    const zone = { ...straightZone({ ...NO_AIR, tyres: GT_CAR.tyres }, 40), controls: WHOLE_RIG };
    const brake = (t: number) => (t < 0 ? 0 : 0.25);
    const { columns } = driveRecord(zone, recordOf({ brake, steering: () => 12, endS: 0.0005 }));
    const across = (1250 * 1600 * (((12 / 14) * (Math.PI / 180)) / 2.6) * 1.25) / 2.6;
    const along = (0.25 / 0.7) * 18747.67;
    const load = (1250 * 9.80665 * 1.25) / 2.6;
    expectRelative(columns.frontUse.at(-1) ?? 0, Math.hypot(across, along) / (1.4 * load), 1e-6);
  });

  const zone = zoneOf(CAR, SMOOTH_CORNER, { ...WHOLE_RIG, throttle: false, paddles: false });
  const { points, durationS } = zone.derived.zone;
  const level = pointsOver(points, (p) => 0.96 * p.level);
  const rail = pointsOver(points, (p) => degrees(p.steeringRad));
  const drive = (steering: (t: number) => number): LiveRun =>
    driveRecord(zone, recordOf({ brake: level, steering, endS: durationS }));

  test('turned too early, with the brakes still full on, locks the front axle', () => {
    const early = drive((t) => (t > 0.8 ? 70 : 0));
    const locked = early.end.events.filter(({ kind }) => kind === 'lock-up');
    expect(locked[0]).toMatchObject({ axle: 'front' });
    expect(drive(rail).end.events.filter(({ kind }) => kind === 'lock-up')).toEqual([]);
  });

  test('turned along the rail it is the same zone as without a wheel', () => {
    const steered = drive(rail);
    const railed = driveRecord(
      { ...zone, controls: { ...zone.controls, steering: false } },
      recordOf({ brake: level, endS: durationS }),
    );
    expect(Math.abs(steered.end.speedMps - railed.end.speedMps)).toBeLessThan(0.1);
    expect(Math.abs(steered.end.sM - railed.end.sM)).toBeLessThan(0.3);
  });
});

describe('mirror', () => {
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
  test('a right-hander is a left-hander with the signs turned', () => {
    const run = (corner: Corner, sign: number) => {
      const zone = zoneOf(CAR, corner, { ...WHOLE_RIG, throttle: false });
      const { points, durationS } = zone.derived.zone;
      const brake = pointsOver(points, (p) => p.level);
      const steering = pointsOver(
        points,
        (p) => sign * Math.abs(degrees(p.steeringRad)) + sign * 2,
      );
      return driveRecord(zone, recordOf({ brake, steering, endS: durationS }));
    };
    const left = run(SMOOTH_CORNER, 1);
    const right = run(mirrored, -1);
    const { held, waiting } = left.end;
    const turned = { ...right.end, accelYMps2: -right.end.accelYMps2, held, waiting };
    expect(turned).toEqual(left.end);
    expect(right.columns.speedMps).toEqual(left.columns.speedMps);
  });
});

test('with less grip the same foot is nowhere slower, and no target is quicker', () => {
  const wet = (share: number) => {
    const tyre = {
      ...BRAKES_AND_AIR.tyres.front,
      longitudinalFriction: 1.4 * share,
      lateralFriction: 1.4 * share,
    };
    return { ...GT_CAR, tyres: { front: tyre, rear: tyre } };
  };
  const dry = zoneOf(GT_CAR, SMOOTH_CORNER);
  const { points, durationS } = dry.derived.zone;
  const level = pointsOver(points, (p) => p.level);
  // A sample is held over its step: that of the middle.
  const brake = (t: number): number => (t < 0 ? 0 : level(t + 0.0005));
  const record = recordOf({ brake, endS: durationS });
  const runs = [1, 0.9, 0.8, 0.65].map((share) => driveRecord({ ...dry, car: wet(share) }, record));
  for (const [i, run] of runs.entries()) {
    const before = runs[i - 1];
    if (before === undefined) continue;
    expect(run.end.speedMps).toBeGreaterThan(before.end.speedMps);
    // A wheel that begins to slip within a step takes up to a millionth from the speed.
    for (const [k, speed] of run.columns.speedMps.entries())
      expect(speed).toBeGreaterThanOrEqual(before.columns.speedMps[k]! - 1e-6);
  }
  const times = [1, 0.9, 0.8, 0.65].map((share) => {
    const { zone } = deriveTarget(wet(share), SMOOTH_CORNER);
    return zone.durationS - (zone.slowestM - zone.brakePointM) / SMOOTH_CORNER.approachSpeedMps;
  });
  expect(times).toEqual([...times].sort((a, b) => a - b));
});
