import { describe, expect, test } from 'vitest';
import { frontBrakeShare } from '../../src/car/brakes.ts';
import { buildCar } from '../../src/car/build-car.ts';
import type { Car } from '../../src/car/car.ts';
import type { CarFile } from '../../src/car/car-file.ts';
import { overRevSpeedMps } from '../../src/car/gearbox.ts';
import { straightLimit } from '../../src/car/straight-limit.ts';
import { barFromPascals } from '../../src/units.ts';
import { bundledCar, CAR_FILE_NAMES, carText } from './car-files.ts';

/** The car without what the table below leaves out: push-out, rolling resistance, rotating parts, load sensitivity. */
function plain(file: CarFile): Car {
  const car = buildCar(file);
  const constant = { loadSensitivity: 0 };
  return {
    ...car,
    rollingResistance: 0,
    rotatingShare: 0,
    brakes: { ...car.brakes, pushOutPa: 0 },
    tyres: {
      front: { ...car.tyres.front, ...constant },
      rear: { ...car.tyres.rear, ...constant },
    },
  };
}

// Plausible presets, computed independently of the program from the closed forms of Limpert, Brake Design and Safety,
// ch. 5 and 7, with constant friction, air of 1.2 kg/m^3 and g 9.80665; printed with four digits.
describe.each([
  [
    'light-single-seater',
    0.7978,
    [
      [20, 1.686, 429, 56.2],
      [30, 2.025, 488, 63.9],
    ],
  ],
  [
    'touring',
    0.8,
    [
      [20, 1.195, 482, 50.7],
      [60, 1.375, 503, 53.0],
    ],
  ],
  [
    'gt',
    0.781,
    [
      [20, 1.359, 474, 47.9],
      [60, 1.959, 633, 64.0],
      [80, 2.484, 772, 78.1],
    ],
  ],
  [
    'prototype',
    0.6884,
    [
      [20, 1.679, 418, 49.1],
      [60, 3.078, 722, 84.8],
      [80, 4.302, 988, 116.1],
    ],
  ],
  [
    'single-seater',
    0.6239,
    [
      [20, 1.783, 478, 44.6],
      [60, 3.566, 880, 82.0],
      [80, 5.126, 1231, 114.8],
    ],
  ],
])('%s', (id, share, rows) => {
  const file = bundledCar(id);
  const car = plain(file);

  test('share of the front brakes', () => {
    expect(Math.abs(frontBrakeShare(car.brakes) - share)).toBeLessThan(6e-5);
  });

  test.each(rows)('at %f m/s', (speed, rateG, pedal, bar) => {
    const limit = straightLimit(car, speed as number);
    expect(Math.abs(limit.decelerationG - (rateG as number))).toBeLessThan(6e-4);
    expect(Math.abs(limit.pedalForceN - (pedal as number))).toBeLessThan(0.6);
    expect(Math.abs(barFromPascals(limit.pressuresPa.front) - (bar as number))).toBeLessThan(0.06);
    expect(limit.locksFirst).toBe('front');
  });

  test('as it stands in the file it brakes within a tenth of that, and its front locks first', () => {
    for (const [speed, rateG] of rows) {
      const limit = straightLimit(buildCar(file), speed as number);
      expect(Math.abs(limit.decelerationG / (rateG as number) - 1)).toBeLessThan(0.1);
      expect(limit.locksFirst).toBe('front');
    }
  });

  test('the driver can press what the car needs at its top speed', () => {
    const whole = buildCar(file);
    const top = overRevSpeedMps(whole.gearbox, whole.gearbox.ratios.length);
    const needed = straightLimit(whole, top).pedalForceN;
    expect(needed).toBeLessThan(whole.driver.peakPedalForceN);
    expect(needed).toBeLessThan(whole.fullScalePedalForceN * 1.2);
  });
});

describe.each(CAR_FILE_NAMES)('%s', (fileName) => {
  test('names its schema, so that editors complete it', () => {
    expect(carText(fileName).split('\n')[0]).toBe(
      '# yaml-language-server: $schema=../schema/car.schema.json',
    );
  });
});

test('five cars or more, one with a motor, one with anti-lock and a rear valve', () => {
  const cars = CAR_FILE_NAMES.map((name) => buildCar(bundledCar(name.replace('.yaml', ''))));
  expect(cars.length).toBeGreaterThanOrEqual(5);
  expect(cars.filter(({ electric }) => electric !== null).map(({ id }) => id)).toEqual([
    'prototype',
  ]);
  expect(cars.filter(({ antiLock }) => antiLock !== null).map(({ id }) => id)).toEqual(['touring']);
  expect(cars.filter(({ brakes }) => brakes.rearValve !== null).map(({ id }) => id)).toEqual([
    'touring',
  ]);
});
