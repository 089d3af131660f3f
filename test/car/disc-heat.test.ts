import { describe, expect, test } from 'vitest';
import {
  brakingWorkJ,
  cooledC,
  coolingTimeS,
  type Disc,
  fallingFluxPeakK,
  heatRiseK,
  repeatedStopsPeakC,
  surfaceFlashK,
} from '../../src/car/disc-heat.ts';
import { expectRelative } from '../close-to.ts';

const disc: Disc = {
  massKg: 9,
  specificHeatJpkgK: 480,
  coolingAreaM2: 0.12,
  coolingAtRestWpm2K: 4,
  coolingPerRadpsWpm2K: 0.73,
  heatShare: 0.95,
};

describe('heating', () => {
  test('Jindal, Machine Design, ex. 23-5, p. 621: 8.93 K on each of four 12 kg brakes', () => {
    const energy = brakingWorkJ(1100, { fromMps: 65 / 3.6, toMps: 0 }, 0.1, 0) / 4;
    expect(energy).toBeCloseTo(49307.97, 1);
    expect(
      heatRiseK({ ...disc, massKg: 12, specificHeatJpkgK: 460, heatShare: 1 }, energy),
    ).toBeCloseTo(8.93, 2);
  });

  test('Wentzell, Machine Design, ex. 16.5, p. 365: 289619.57 ft-lbf, 77.85 F on 40 lb', () => {
    const energy = brakingWorkJ(3500 / 32.2, { fromMps: 73, toMps: 0 }, 0, 0);
    expect(energy).toBeCloseTo(289619.57, 2);
    expect(
      heatRiseK({ ...disc, massKg: 40, specificHeatJpkgK: 93, heatShare: 1 }, energy),
    ).toBeCloseTo(77.85, 2);
  });

  test('the GT example from 75 to 25 m/s: 249.452 K in a front disc, hand-worked', () => {
    const work = brakingWorkJ(1250, { fromMps: 75, toMps: 25 }, 0, 206.419e3);
    expectRelative(work, 2918.581e3, 1e-6);
    expectRelative(heatRiseK(disc, 0.388665 * work), 249.452, 1e-5);
  });
});

describe('cooling', () => {
  test('Holman, Heat Transfer, ex. 4-1: a 5 cm steel ball from 450 to 150 C in 5818 s', () => {
    const ball: Disc = {
      ...disc,
      massKg: (7800 * Math.PI * 0.05 ** 3) / 6,
      specificHeatJpkgK: 460,
      coolingAreaM2: Math.PI * 0.05 ** 2,
      coolingAtRestWpm2K: 10,
    };
    const tau = coolingTimeS(ball, 0);
    expectRelative(1 / tau, 3.34448e-4, 1e-5);
    expect(cooledC(450, 100, 5818, tau)).toBeCloseTo(150, 1);
  });

  test('650 C in 30 C air, time constant 144 s, 20 s: 569.6013 C, hand-worked', () => {
    expectRelative(cooledC(650, 30, 20, 144), 569.6013, 1e-6);
  });

  test('McPhee and Johnson 2008: heat transfer of a vented rotor grows with speed', () => {
    // 27.0, 52.7, 78.3 W/m^2K at 342, 684, 1025 rpm: the slope per rad/s is between 0.73 and 0.76.
    const slope = (78.3 - 27.0) / (((1025 - 342) * Math.PI) / 30);
    expect(Math.abs(slope - disc.coolingPerRadpsWpm2K)).toBeLessThan(0.03);
  });
});

describe('repeated stops: rise 120 K every 30 s, time constant 144 s, 30 C', () => {
  test('closed form', () => {
    expectRelative(repeatedStopsPeakC(30, 120, 30, 144, Infinity), 668.0818, 1e-6);
    expectRelative(repeatedStopsPeakC(30, 120, 30, 144, 5), 442.9244, 1e-6);
    expectRelative(repeatedStopsPeakC(30, 120, 30, 144, Infinity) - 120, 548.0818, 1e-6);
  });

  test('is what heating and cooling in turn lead to', () => {
    let temperature = 30;
    for (let stop = 1; stop <= 5; stop++) {
      if (stop > 1) temperature = cooledC(temperature, 30, 30, 144);
      temperature += 120;
    }
    expectRelative(temperature, repeatedStopsPeakC(30, 120, 30, 144, 5), 1e-12);
  });
});

describe('surface flash', () => {
  test('Holman ex. 4-2: 3.2e5 W/m^2 for 30 s on steel reaches 199.444 C from 35', () => {
    // k 45 W/mK, alpha 1.4e-5 m^2/s: k rho c = k^2 / alpha
    expect(35 + surfaceFlashK(3.2e5, 30, 45 ** 2 / 1.4e-5)).toBeCloseTo(199.444, 3);
  });

  test('falling flux: 572.2581 K, Duhamel integral hand-worked', () => {
    expectRelative(fallingFluxPeakK(8e6, 3, 48 * 7200 * 480), 572.2581, 1e-6);
  });
});
