import { describe, expect, test } from 'vitest';
import { spectralArcLength } from '../../src/score/smoothness.ts';
import { amplitudeSpectrum } from '../../src/score/spectrum.ts';
import golden from '../reference/score-signal.json' with { type: 'json' };

const { smoothness } = golden;
const profile = (length: number, at: (i: number) => number): Float64Array =>
  Float64Array.from({ length }, (_, i) => at(i));
const gaussian = profile(200, (i) => Math.exp(-5 * (i / 100 - 1) ** 2));
const minJerk = (n: number): Float64Array =>
  profile(n, (i) => {
    const u = i / (n - 1);
    return 30 * u ** 4 - 60 * u ** 3 + 30 * u ** 2;
  });
const hill = (t: number, centre: number): number => Math.exp(-25 * (t - centre) ** 2);

describe('spectralArcLength', () => {
  test.each([
    ['a Gaussian', gaussian, 100, smoothness.gaussian.sparc],
    ['minimum jerk, 101 points', minJerk(101), 100, smoothness.minJerk101.sparc],
    ['minimum jerk, 1001 points', minJerk(1001), 1000, smoothness.minJerk1001.sparc],
    [
      'two hills',
      profile(2500, (i) => hill(i / 1000, 0.5) + hill(i / 1000, 1.2)),
      1000,
      smoothness.twoGaussians.sparc,
    ],
    ['one hill', profile(2500, (i) => hill(i / 1000, 0.5)), 1000, smoothness.oneGaussian.sparc],
    ['a constant rate', new Float64Array(1000).fill(1), 1000, smoothness.ones.sparc],
    // nothing below a quarter of a hertz: the first frequency is not 0; by NumPy, from the definition
    [
      'four whole waves',
      profile(1000, (i) => Math.sin((2 * Math.PI * 4 * i) / 1000)),
      1000,
      -3.951124184448078,
    ],
  ])('of %s', (_, speed, rateHz, expected) => {
    expect(Math.abs(spectralArcLength(speed, rateHz)! - expected)).toBeLessThan(1e-8);
  });

  test('does not depend on the height', () => {
    const high = gaussian.map((v) => 80 * v);
    expect(spectralArcLength(high, 100)).toBeCloseTo(spectralArcLength(gaussian, 100)!, 12);
  });

  test('is absent for a profile at rest', () => {
    expect(spectralArcLength(new Float64Array(500), 1000)).toBeNull();
  });
});

describe('amplitudeSpectrum', () => {
  test('is the definition', () => {
    const signal = profile(11, (i) => Math.sin(i * i));
    const amplitudes: number[] = [];
    for (let bin = 0; bin <= 16; bin++) {
      let real = 0;
      let imaginary = 0;
      signal.forEach((value, i) => {
        real += value * Math.cos((2 * Math.PI * bin * i) / 32);
        imaginary += value * Math.sin((2 * Math.PI * bin * i) / 32);
      });
      amplitudes.push(Math.hypot(real, imaginary));
    }
    const { lowest, largest } = amplitudeSpectrum(signal, 32, 17);
    expect(lowest).toHaveLength(17);
    amplitudes.forEach((amplitude, bin) => {
      expect(lowest[bin]).toBeCloseTo(amplitude, 12);
    });
    expect(largest).toBeCloseTo(Math.max(...amplitudes), 12);
    expect(amplitudeSpectrum(signal, 32, 3)).toEqual({ lowest: lowest.slice(0, 3), largest });
  });
});
