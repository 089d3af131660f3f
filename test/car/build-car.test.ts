import { describe, expect, test } from 'vitest';
import { frontBrakeShare, linePressuresPa } from '../../src/car/brakes.ts';
import { buildCar } from '../../src/car/build-car.ts';
import { driveForceN } from '../../src/car/gearbox.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CAR } from '../reference/gt-car.ts';
import { bundledCar } from './car-files.ts';

const GT = bundledCar('gt');

describe("a variant's overrides", () => {
  test('10 kg of fuel for 70: the balance of moments, worked by hand', () => {
    // 1300 kg with 70 kg of fuel 1.5 m behind the front axle and 0.35 m high; centre of gravity 1.38 m and 0.45 m.
    const { chassis } = buildCar(GT, { fuelKg: 10 });
    expect(chassis.massKg).toBe(1240);
    expectRelative(chassis.cgToFrontM, 1.374193548, 1e-9);
    expectRelative(chassis.cgToRearM, 2.6 - 1.374193548, 1e-9);
    expectRelative(chassis.cgHeightM, 0.45483871, 1e-8);
  });

  test('grip factor, tyre state and tyre temperature multiply', () => {
    const front = (overrides: Parameters<typeof buildCar>[1]): number =>
      buildCar(GT, overrides).tyres.front.longitudinalFriction;
    expectRelative(front({}), 1.45, 1e-12);
    expectRelative(front({ gripFactor: 0.6 }), 0.87, 1e-12);
    expectRelative(front({ tyreState: 'worn' }), 1.45 * 0.93, 1e-12);
    // 0.82996329 at 30 C between 0.75 at 10 and 0.90 at 50 C: SciPy 1.17.1, PchipInterpolator.
    expectRelative(front({ tyreStartC: 30 }), 1.45 * 0.8299632877, 1e-9);
    const all = buildCar(GT, { gripFactor: 0.6, tyreState: 'worn', tyreStartC: 30 });
    expectRelative(all.tyres.rear.lateralFriction, 1.42 * 0.6 * 0.93 * 0.8299632877, 1e-9);
    expect(all.tyreStartC).toBe(30);
  });

  test('balance bar', () => {
    const { brakes } = buildCar(GT, { balanceBarFront: 0.5 });
    const before = buildCar(GT).brakes;
    // Half and half for 0.58 to 0.42: the odds of the front fall by 0.42 / 0.58.
    const odds = (brakesShare: number): number => brakesShare / (1 - brakesShare);
    expectRelative(
      odds(frontBrakeShare(brakes)),
      (odds(frontBrakeShare(before)) * 0.42) / 0.58,
      1e-9,
    );
    expectRelative(
      linePressuresPa(brakes, 500).front / linePressuresPa(before, 500).front,
      0.5 / 0.58,
      1e-12,
    );
  });

  test('cold discs and pads brake less; the pads alone only by their share of the heat', () => {
    const cold = buildCar(GT, {
      discStartC: { front: 20 },
      padStartC: { front: 20 },
    });
    expectRelative(cold.brakes.front.padFriction, 0.38, 1e-9);
    expectRelative(cold.brakes.rear.padFriction, 0.5, 1e-9);
    expect(cold.discStartC).toEqual({ front: 20, rear: 280 });
    const coldPads = buildCar(GT, { padStartC: { front: 20 } }).brakes.front.padFriction;
    expect(coldPads).toBeLessThan(0.5);
    expect(coldPads).toBeGreaterThan(0.49);
  });

  test('a full battery', () => {
    expect(buildCar(bundledCar('prototype')).electric?.powerW).toBe(200e3);
    expect(buildCar(bundledCar('prototype'), { batteryFull: true }).electric).toBeNull();
  });

  test('air', () => {
    expect(buildCar(GT).airC).toBe(25);
    expect(buildCar(GT, { airC: 5 }).airC).toBe(5);
  });

  test('an unknown tyre state names the known ones', () => {
    expect(() => buildCar(GT, { tyreState: 'slick' })).toThrow(
      expect.objectContaining({
        where: 'gt',
        next: expect.stringContaining('new, used, worn'),
      }),
    );
  });
});

describe('units', () => {
  const touring = buildCar(bundledCar('touring'));

  test('valve, pedal, understeer and drive are in SI', () => {
    expect(touring.brakes.rearValve).toEqual({ kneePa: 42e5, slope: 0.4 });
    expect(touring.brakes.pushOutPa).toBe(0.5e5);
    expectRelative(touring.pedal.travelM!, 0.055, 1e-12);
    expectRelative(touring.pedal.stiffnessNpm!, 16_000, 1e-12);
    // 1.2 degrees per g.
    expectRelative(touring.understeerRadpMps2, 0.020943951 / 9.80665, 1e-8);
    expect(touring.frontDriveShare).toBe(1);
  });

  test.each([
    [0, 0.36],
    [1, 0.31],
  ])('with %d of the engine at the front the driven wheels are those of %d m', (share, radiusM) => {
    const { tyres, gearbox } = GT;
    const car = buildCar({
      ...GT,
      tyres: {
        ...tyres,
        front: { ...tyres.front, rolling_radius_m: 0.31 },
        rear: { ...tyres.rear, rolling_radius_m: 0.36 },
      },
      gearbox: { ...gearbox, front_drive_share: share },
    });
    expect(car.gearbox.drivenWheelRadiusM).toBe(radiusM);
  });

  test('a pad ring acts at 0.156344 m between 0.13 and 0.18 m, uniform pressure, by hand', () => {
    const { effective_radius_m: _, ...front } = GT.brakes.front;
    const ring = { ...front, pad_inner_radius_m: 0.13, pad_outer_radius_m: 0.18 };
    const car = buildCar({ ...GT, brakes: { ...GT.brakes, front: ring } });
    expectRelative(car.brakes.front.effectiveRadiusM, 0.156344086, 1e-8);
  });

  test('full scale is what the driver can push where the file leaves it out', () => {
    const { full_scale_pedal_force_n: _, ...without } = GT;
    expect(buildCar(without).fullScalePedalForceN).toBe(1100);
    expect(buildCar(GT).fullScalePedalForceN).toBe(1000);
  });
});

test('driving force in second gear at 4000 rpm: 360 N m x 1.9 x 3.4 x 0.9 / 0.33 m, by hand', () => {
  const gearbox = { ...GT_CAR.gearbox, efficiency: 0.9 };
  const driveTorque = [
    { rpm: 3000, torqueNm: 340 },
    { rpm: 5000, torqueNm: 380 },
  ];
  const engine = { ...GT_CAR.engine, driveTorque };
  expectRelative(driveForceN(gearbox, engine, 2, 21.3978447), 6342.54545, 1e-8);
  // Beyond 7500 rpm there is none.
  expect(driveForceN(gearbox, engine, 2, 41)).toBe(0);
});
