import { describe, expect, test } from 'vitest';
import { buildCar } from '../../../src/car/build-car.ts';
import type { Car } from '../../../src/car/car.ts';
import { accelerate, type DrivePoint } from '../../../src/corner/accelerate.ts';
import { buildCorner } from '../../../src/corner/build-corner.ts';
import type { Corner } from '../../../src/corner/corner.ts';
import { deriveTarget } from '../../../src/target/derive/derive-target.ts';
import { exitDrive } from '../../../src/target/derive/exit-drive.ts';
import { type TimeDifference, timeDifference } from '../../../src/target/derive/time-difference.ts';
import { timeDifferenceJson } from '../../../src/target/derive/time-difference-json.ts';
import { timeDifferenceTable } from '../../../src/target/derive/time-difference-table.ts';
import { expectRelative } from '../../close-to.ts';
import { GT_CAR, SMOOTH_CORNER } from '../../reference/gt-car.ts';
import { CARS, SHEETS } from './bundled-zones.ts';

const G = 9.80665;
/** The GT example with an engine of even torque. */
const EVEN: Car = {
  ...GT_CAR,
  rotatingShare: 0.05,
  rollingResistance: 0.015,
  engine: { ...GT_CAR.engine, driveTorque: [{ rpm: 1000, torqueNm: 450 }] },
};
const inGear = (corner: Corner, slowest: number): Corner => ({
  ...corner,
  gears: { ...corner.gears, slowest, shiftsAtM: null },
});
const gears = (car: Car, corner: Corner, one: number, other: number): TimeDifference =>
  timeDifference(deriveTarget(car, inGear(corner, one)), deriveTarget(car, inGear(corner, other)));

describe('full throttle on the straight behind the corner', () => {
  const drive = exitDrive(EVEN, SMOOTH_CORNER, 60, 320);

  test('what the engine pulls, less drag, rolling and rotating parts', () => {
    // Third gear 1.45 on 3.4 at 0.33 m: 450 N m is 6722.7 N. At 40 m/s drag 960 N, rolling 0.015 (W + 2880 N).
    const pulled = (450 * 1.45 * 3.4) / 0.33;
    const against = 960 + 0.015 * (1250 * G + 0.5 * 1.2 * 3 * 1600);
    expectRelative(drive.accelerationMps2(200, 1600, 3), (pulled - against) / (1250 * 1.05), 1e-9);
    expectRelative(drive.accelerationMps2(200, 1600, null), -against / (1250 * 1.05), 1e-9);
  });

  test('what the rear axle carries where the gear pulls more: rotating parts take nothing of it', () => {
    const strong: Car = {
      ...EVEN,
      engine: { ...EVEN.engine, driveTorque: [{ rpm: 1000, torqueNm: 4000 }] },
    };
    const load = (1250 * G * 1.35) / 2.6 + 0.5 * 1.2 * 3 * 0.58 * 400;
    const carried = (1.4 * load) / (1 - (1.4 * 0.45) / 2.6);
    const against = 240 + 0.015 * (1250 * G + 720);
    expectRelative(
      exitDrive(strong, SMOOTH_CORNER, 60, 320).accelerationMps2(200, 400, 2),
      (carried - against) / 1250,
      1e-9,
    );
  });

  test('uphill takes its share of the weight', () => {
    const hill = exitDrive(EVEN, { ...SMOOTH_CORNER, slopeAt: () => 0.04 }, 60, 320);
    expectRelative(
      drive.accelerationMps2(200, 1600, 3) - hill.accelerationMps2(200, 1600, 3),
      (G * 0.04) / 1.05,
      1e-9,
    );
  });

  test('energy: what the engine gives is what the car and its wheels gain, and drag and rolling take, to 1e-6', () => {
    const { points, upshifts } = accelerate(drive, {
      fromM: 125,
      fromMps: 30,
      gear: 4,
      toM: 300,
      jointsM: [],
      stepM: 1,
    });
    expect(upshifts).toHaveLength(0);
    // Three-point Gauss on the cubic through the squared speeds and their slopes at both ends of each step.
    const nodes = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)];
    const weights = [5 / 18, 8 / 18, 5 / 18];
    let taken = 0;
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1] as DrivePoint, points[i] as DrivePoint];
      const h = b.sM - a.sM;
      const [wa, wb] = [a.speedMps ** 2, b.speedMps ** 2];
      const [ma, mb] = [2 * h * a.accelerationMps2, 2 * h * b.accelerationMps2];
      nodes.forEach((node, j) => {
        const t = (1 + node) / 2;
        const w =
          wa + ma * t + (3 * (wb - wa) - 2 * ma - mb) * t ** 2 + (2 * (wa - wb) + ma + mb) * t ** 3;
        taken += (weights[j] as number) * h * (0.6 * w + 0.015 * (1250 * G + 1.8 * w));
      });
    }
    const given = ((450 * 1.15 * 3.4) / 0.33) * 175;
    const last = points.at(-1) as DrivePoint;
    expectRelative(given - taken, 0.5 * 1250 * 1.05 * (last.speedMps ** 2 - 900), 1e-6);
  });

  test('the last gear ends at its rev limit', () => {
    const car: Car = { ...EVEN, gearbox: { ...EVEN.gearbox, ratios: [2.6, 1.9, 1.45] } };
    const { exitSpeedMps } = timeDifferenceOf(car, 2000);
    expectRelative(exitSpeedMps, (((7500 * Math.PI) / 30) * 0.33) / (1.45 * 3.4), 1e-6);
  });
});

function timeDifferenceOf(car: Car, exitM: number): TimeDifference['one'] {
  const corner = {
    ...SMOOTH_CORNER,
    approachSpeedMps: 45,
    gears: { approach: 3, slowest: 3, shiftsAtM: null },
  };
  const derived = deriveTarget(car, corner);
  return timeDifference(derived, derived, exitM).one;
}

describe('parts of a difference', () => {
  const difference = gears(EVEN, SMOOTH_CORNER, 2, 3);

  test('add up to the whole, for both ways', () => {
    for (const { straightS, brakingS, cornerExitS, exitStraightS, totalS } of [
      difference.one,
      difference.other,
    ])
      expectRelative(straightS + brakingS + cornerExitS + exitStraightS, totalS, 1e-12);
  });

  test('one way against itself is no difference', () => {
    const same = gears(EVEN, SMOOTH_CORNER, 3, 3);
    expect(same.one).toEqual(same.other);
    expect(same.one.straightS).toBe(0);
  });

  test('the later brake point is driven to at the approach speed', () => {
    const early = deriveTarget(EVEN, { ...SMOOTH_CORNER, gripShare: 0.9 });
    const late = deriveTarget(EVEN, SMOOTH_CORNER);
    const { one, other } = timeDifference(late, early);
    expect(other.straightS).toBeCloseTo(0, 12);
    expectRelative(one.straightS, (late.zone.brakePointM - early.zone.brakePointM) / 60, 1e-9);
    expect(one.totalS).toBeLessThan(other.totalS);
  });

  test('the time without drive is that of the upshifts', () => {
    const { one } = gears(EVEN, SMOOTH_CORNER, 2, 2);
    expect(one.upshifts.length).toBeGreaterThan(0);
    expectRelative(one.shiftingS, one.upshifts.length * 0.1, 1e-6);
  });

  test('the exit straight takes longer where more of it counts', () => {
    const derived = deriveTarget(EVEN, SMOOTH_CORNER);
    const [none, some] = [0, 150].map((exitM) => timeDifference(derived, derived, exitM).one);
    expect(none?.exitStraightS).toBe(0);
    expect(some?.cornerExitS).toBe(none?.cornerExitS);
    const mean = 150 / (some?.exitStraightS ?? 0);
    expect(mean).toBeGreaterThan(none?.exitSpeedMps ?? 0);
    expect(mean).toBeLessThan(some?.exitSpeedMps ?? 0);
  });
});

describe('a second turn that is nearly as tight', () => {
  test('is not entered faster than it can be driven', () => {
    const chicane = SHEETS.find(({ id }) => id === 'ferry-chicane');
    const file = CARS.find(({ id }) => id === 'gt');
    if (chicane === undefined || file === undefined) throw new Error('bundled profiles');
    const [car, corner] = [buildCar(file), buildCorner(chicane, null)];
    const { slowestM, points } = deriveTarget(car, corner).zone;
    const toM = corner.path.lengthM + 100;
    const drive = exitDrive(car, corner, slowestM, toM);
    const driven = accelerate(drive, {
      fromM: slowestM,
      fromMps: points.at(-1)?.speedMps ?? 0,
      gear: 2,
      toM,
      jointsM: [],
      stepM: 1,
    }).points;
    for (const { sM, speedMps } of driven)
      expect(speedMps ** 2).toBeLessThanOrEqual(drive.ceiling(sM) * (1 + 1e-9));
  });
});

describe('a gear one lower out of a slow corner gains one to two tenths (common practice, no source)', () => {
  const sheet = (id: string) => SHEETS.find((one) => one.id === id) ?? SHEETS[0];
  const car = (id: string): Car => {
    const file = CARS.find((one) => one.id === id);
    if (file === undefined) throw new Error(id);
    return buildCar(file);
  };
  const gain = (carOf: Car, id: string): number => {
    const found = sheet(id);
    if (found === undefined) throw new Error(id);
    // Out of the corner alone: on the way in a foot that only eases would wait for the second apex.
    const driver = { ...carOf.driver, releaseNps: Number.POSITIVE_INFINITY };
    const { one, other } = gears({ ...carOf, driver }, buildCorner(found, null), 2, 3);
    return other.totalS - one.totalS;
  };

  test.each([
    ['gt', 'drovers-bowl'],
    ['gt', 'weavers-corner'],
    ['gt', 'twin-barrows'],
    ['prototype', 'coil-bend'],
    ['prototype', 'weavers-corner'],
  ])('%s in %s: second instead of third', (carId, cornerId) => {
    const seconds = gain(car(carId), cornerId);
    expect(seconds).toBeGreaterThan(0.1);
    // To the hundredth: between two apexes the lower gear pulls once more.
    expect(Math.round(100 * seconds)).toBeLessThanOrEqual(20);
  });

  test('a shorter final drive, a fuller torque curve and a slow shift take it away', () => {
    const gt = car('gt');
    const plain = gain(gt, 'weavers-corner');
    const short: Car = {
      ...gt,
      gearbox: { ...gt.gearbox, finalDrive: gt.gearbox.finalDrive * 1.2 },
    };
    const full: Car = {
      ...gt,
      engine: {
        ...gt.engine,
        driveTorque: [
          { rpm: 2500, torqueNm: 620 },
          { rpm: 7500, torqueNm: 420 },
        ],
      },
    };
    const slow: Car = { ...gt, gearbox: { ...gt.gearbox, shiftS: 0.3 } };
    expect(gain(short, 'weavers-corner')).toBeLessThan(plain - 0.02);
    expect(gain(full, 'weavers-corner')).toBeLessThan(plain - 0.02);
    expect(gain(slow, 'weavers-corner')).toBeLessThan(plain - 0.02);
  });
});

describe('as text and as data', () => {
  const one = deriveTarget(EVEN, inGear(SMOOTH_CORNER, 2));
  const other = deriveTarget(EVEN, inGear(SMOOTH_CORNER, 3));
  const difference = timeDifference(one, other);

  test('lines of 80 columns at most that name the parts', () => {
    const lines = timeDifferenceTable(difference, other, 'metric');
    const text = lines.join('\n');
    expect(text).toMatch(/^Against qualifying, gear 3 at the slowest point: \d\.\d{3} s quicker$/m);
    for (const name of ['straight before the brake', 'brake point to slowest', 'exit straight'])
      expect(text).toMatch(new RegExp(`^${name} .*\\d\\.\\d{3} s .*\\d\\.\\d{3} s`, 'm'));
    expect(text).toMatch(/^speed at the exit +\d+ km\/h +\d+ km\/h$/m);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
  });

  test('the differences of the parts add up to the whole', () => {
    const json = timeDifferenceJson(difference, other) as {
      difference_s: number;
      difference: Record<string, number>;
    };
    const { straight_s, braking_s, corner_exit_s, exit_straight_s } = json.difference;
    const sum = [straight_s, braking_s, corner_exit_s, exit_straight_s].reduce<number>(
      (a, b) => a + (b ?? 0),
      0,
    );
    expect(sum).toBeCloseTo(json.difference_s, 5);
    expect(json.difference_s).toBeLessThan(0);
  });
});
