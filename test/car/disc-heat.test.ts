import { describe, expect, test } from 'vitest';
import { cooledC, coolingTimeS, type Disc, heatRiseK } from '../../src/car/disc-heat.ts';
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
    expect(
      heatRiseK({ ...disc, massKg: 12, specificHeatJpkgK: 460, heatShare: 1 }, 49307.97),
    ).toBeCloseTo(8.93, 2);
  });

  test('Wentzell, Machine Design, ex. 16.5, p. 365: 289619.57 ft-lbf, 77.85 F on 40 lb', () => {
    expect(
      heatRiseK({ ...disc, massKg: 40, specificHeatJpkgK: 93, heatShare: 1 }, 289619.57),
    ).toBeCloseTo(77.85, 2);
  });

  test('the GT example from 75 to 25 m/s: 249.452 K in a front disc, hand-worked', () => {
    // 1250 kg less 206.419 kJ to the air: 2918.581 kJ, 0.388665 of it in this disc.
    expectRelative(heatRiseK(disc, 0.388665 * 2918.581e3), 249.452, 1e-5);
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

test('repeated stops: 120 K every 30 s, time constant 144 s, 30 C, hand-worked', () => {
  // Limpert, Brake Design and Safety, ch. 3: T_air + dT (1 - e^(-n x)) / (1 - e^-x), x = 30 / 144, n = 5.
  let temperature = 30;
  for (let stop = 1; stop <= 5; stop++) {
    if (stop > 1) temperature = cooledC(temperature, 30, 30, 144);
    temperature += 120;
  }
  expectRelative(temperature, 442.9244, 1e-6);
});
