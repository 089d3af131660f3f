import { describe, expect, test } from 'vitest';
import type { Car } from '../../src/car/car.ts';
import { driveLiveCar, startLiveCar } from '../../src/live/drive-live-car.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import type { LiveEvent } from '../../src/live/live-event.ts';
import { inputsOfRecord } from '../../src/live/live-inputs.ts';
import type { LiveRun } from '../../src/live/live-run.ts';
import type { Downshift } from '../../src/target/derive/downshifts.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CAR, SMOOTH_CORNER } from '../reference/gt-car.ts';
import { paddle, pointsOver, recordOf, WHOLE_RIG, zoneOf } from './rigs.ts';
import { NO_AIR, STICKY, straightZone } from './straight.ts';

type Shift = Extract<LiveEvent, { readonly toGear: number }>;

function shiftsOf({ end }: LiveRun): Shift[] {
  return end.events.filter((event): event is Shift => 'toGear' in event);
}

const gears = (approach: number) => ({ approach, slowest: 1, shiftsAtM: null });
const onStraight = (car: Car, speedMps: number, gear: number) => ({
  ...straightZone(car, speedMps, { gears: gears(gear) }),
  controls: WHOLE_RIG,
});
const still = { brake: () => 0, steering: () => 0, throttle: () => 0, clutch: () => 0 };
const unmatched = (car: Car, shiftS = 0.25): Car => ({
  ...car,
  gearbox: { ...car.gearbox, blip: false, shiftS },
});

describe('a paddle', () => {
  test('is a gear lower after the time that a shift takes', () => {
    const zone = onStraight(STICKY, 40, 4);
    const gearAt = (endS: number) =>
      driveRecord(zone, recordOf({ ...still, buttons: [paddle(0.2)], endS })).end.gear;
    expect(gearAt(0.2985)).toBe(4);
    expect(gearAt(0.3025)).toBe(3);
  });

  test('pressed during a shift waits for its end; none goes below first gear', () => {
    const zone = onStraight(STICKY, 12, 3);
    const buttons = [paddle(0.2), paddle(0.22), paddle(0.24)];
    const run = driveRecord(zone, recordOf({ ...still, buttons, endS: 1 }));
    expect(shiftsOf(run).map(({ toGear, atS }) => [toGear, atS])).toEqual([
      [2, 0.2],
      [1, 0.3],
    ]);
    expect(run.end.gear).toBe(1);
  });

  test('pressed before the car rolls does nothing', () => {
    const record = recordOf({ ...still, buttons: [paddle(-3.1)], endS: 0 });
    expect(driveRecord(onStraight(STICKY, 40, 4), record).end.gear).toBe(4);
  });

  // 7500 rpm in first gear, 2.6 on 3.4 with wheels of 0.33 m, is 29.319162 m/s.
  test.each([
    { speedMps: 29.31, overRev: false },
    { speedMps: 29.33, overRev: true },
  ])('at $speedMps m/s into first gear over-revs: $overRev', ({ speedMps, overRev }) => {
    const record = recordOf({ ...still, buttons: [paddle(-1)], endS: 0 });
    const [shift] = shiftsOf(driveRecord(onStraight(STICKY, speedMps, 2), record));
    expect(shift).toMatchObject({
      kind: 'downshift',
      fromGear: 2,
      toGear: 1,
      overRev,
      byDriver: true,
    });
    expectRelative(shift?.rpm ?? 0, (7500 * speedMps) / 29.319162, 1e-6);
  });
});

// Inertia 0.15 kg m^2 from 7477.39 to 10232.22 rpm in 0.25 s at 40 m/s: 4636.74 N at the axle.
test('an unmatched downshift drags the engine up to speed with the rear wheels', () => {
  const zone = onStraight(unmatched(STICKY), 40, 2);
  const record = recordOf({ ...still, buttons: [paddle(-1)], endS: 0 });
  const during = driveLiveCar(zone, startLiveCar(zone), inputsOfRecord(record), -0.9);
  expectRelative(during.shift?.dragN ?? 0, 4636.74, 1e-5);
  expect(during.rpm).toBeGreaterThan(7477.39);
  expect(during.rpm).toBeLessThan(10232.22);
});

test('it slows the car by that force over the mass, on top of the gear', () => {
  const brake = (t: number) => (t < 0 ? 0 : 0.1);
  const at = (car: Car) =>
    driveRecord(
      onStraight(car, 40, 2),
      recordOf({ ...still, brake, buttons: [paddle(-0.01)], endS: 0.0005 }),
    ).end.accelXMps2;
  // Without air, so that nothing else differs over the step.
  expectRelative(at(NO_AIR) - at(unmatched(NO_AIR)), 4636.74 / 1250, 1e-5);
});

describe('an unmatched downshift', () => {
  // On the straight the rear axle has grip to spare; on the way to the apex the brakes use all of it.
  const car = unmatched({ ...GT_CAR, engine: { ...GT_CAR.engine, inertiaKgm2: 0.3 } }, 0.2);
  const planned = { ...SMOOTH_CORNER, gears: { approach: 5, slowest: 4, shiftsAtM: null } };

  function driven(shiftsAtM: readonly number[] | null): {
    run: LiveRun;
    shift: Downshift | undefined;
  } {
    const zone = zoneOf(car, { ...planned, gears: { ...planned.gears, shiftsAtM } });
    const level = pointsOver(zone.derived.zone.points, (p) => p.level);
    const run = driveRecord(zone, recordOf({ brake: level, endS: zone.derived.zone.durationS }));
    return { run, shift: zone.derived.zone.downshifts[0] };
  }

  test('where the derived target calls it unsafe takes the rear axle beyond its limit, elsewhere not', () => {
    const onStraight = driven(null);
    const inCorner = driven([30]);
    expect([onStraight.shift?.safe, inCorner.shift?.safe]).toEqual([true, false]);
    expect(onStraight.shift?.atM).toBeLessThan(-20);
    const [safe] = shiftsOf(onStraight.run);
    const [unsafe] = shiftsOf(inCorner.run);
    expect(safe?.rearUse).toBeLessThan(0.95);
    expect(unsafe?.rearUse).toBeGreaterThan(1.05);
    expect(unsafe?.byDriver).toBe(false);
  });
});

describe('without paddles', () => {
  test('the downshifts come at the places of the target', () => {
    const zone = zoneOf(GT_CAR, SMOOTH_CORNER);
    const { points, durationS, downshifts } = zone.derived.zone;
    const brake = pointsOver(points, (p) => p.level);
    const shifts = shiftsOf(driveRecord(zone, recordOf({ brake, endS: durationS })));
    expect(shifts.map(({ toGear }) => toGear)).toEqual(downshifts.map(({ toGear }) => toGear));
    for (const [i, { atM, byDriver }] of shifts.entries()) {
      // The second one comes at the rev limit: a car that is a hair quicker there waits.
      expect(Math.abs(atM - (downshifts[i]?.atM ?? 0))).toBeLessThan(2.5);
      expect(byDriver).toBe(false);
    }
  });

  test('a car that is quicker there shifts as well where the engine stands it', () => {
    const early = zoneOf(GT_CAR, SMOOTH_CORNER).derived.zone.downshifts;
    const shiftsAtM = early.map(({ atM }) => atM + 15);
    const { gears } = SMOOTH_CORNER;
    const zone = zoneOf(GT_CAR, { ...SMOOTH_CORNER, gears: { ...gears, shiftsAtM } });
    const { points, durationS } = zone.derived.zone;
    // 4 % light: some 1 m/s quicker, and far below the rev limit 15 m behind the earliest safe place
    const brake = pointsOver(points, (p) => 0.96 * p.level);
    const run = driveRecord(zone, recordOf({ brake, endS: durationS }));
    for (const [i, { atM, overRev }] of shiftsOf(run).entries()) {
      expect(overRev).toBe(false);
      expect(atM - shiftsAtM[i]!).toBeLessThan(0.1);
    }
    expect(shiftsOf(run).length).toBe(shiftsAtM.length);
  });

  test('they wait while the engine would not stand them', () => {
    const zone = zoneOf(GT_CAR, SMOOTH_CORNER);
    const { durationS } = zone.derived.zone;
    // Far too late and far too light.
    const brake = (t: number) => (t < 1 ? 0 : 0.25);
    for (const { overRev } of shiftsOf(driveRecord(zone, recordOf({ brake, endS: durationS }))))
      expect(overRev).toBe(false);
  });
});

describe('the engine', () => {
  // 40 + 40 (rpm - 1000) / 7000 N m closed and 380 + 100 (rpm - 2000) / 5000 N m open, times 1.45 times 3.4 over 0.33 m.
  const speedMps = 40;
  const perNm = (1.45 * 3.4) / 0.33;
  const rpm = (v: number): number => (v * perNm * 30) / Math.PI;
  const closedN = (v: number): number => (40 + (40 * (rpm(v) - 1000)) / 7000) * perNm;
  const openN = (v: number): number => (380 + (100 * (rpm(v) - 2000)) / 5000) * perNm;
  const dragN = (v: number): number => 0.5 * 1.2 * v ** 2;
  const car: Car = { ...STICKY, engine: GT_CAR.engine };

  test.each([
    { throttle: 0, clutch: 0, forceN: closedN },
    { throttle: 1, clutch: 0, forceN: (v: number) => -openN(v) },
    { throttle: 0.25, clutch: 0, forceN: (v: number) => 0.75 * closedN(v) - 0.25 * openN(v) },
    { throttle: 1, clutch: 0.6, forceN: () => 0 },
  ])('with throttle $throttle and clutch $clutch', ({ throttle, clutch, forceN }) => {
    // Too little for the pads to matter much: 20 N at the pedal.
    const brake = (t: number) => (t < 0 ? 0 : 0.02002);
    const record = recordOf({
      ...still,
      brake,
      throttle: () => throttle,
      clutch: () => clutch,
      endS: 0.0005,
    });
    const { end } = driveRecord(onStraight(car, speedMps, 3), record);
    const brakesN = (Math.round(0.02002 * 65536) / 65.536) * ((18747.67 + 5370.39) / 700);
    const slowingN = (v: number): number => brakesN + dragN(v) + forceN(v);
    // The mean of a step is that of the speed in its middle, half a millisecond on.
    const middleMps = speedMps - (slowingN(speedMps) / 1250) * 0.0005;
    expectRelative(-end.accelXMps2 * 1250, slowingN(middleMps), 1e-6);
  });
});
