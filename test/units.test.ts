import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as units from '../src/units.ts';

describe('conversion factors of NIST SP 811 (2008), appendix B.8, to the digits printed there', () => {
  test.each([
    ['kilogram-force to newton', units.newtonsFromKgf(1), 9.80665],
    ['pound-force to newton, B.8 rounds to 4.448222', units.newtonsFromLbf(1), 4.4482216152605],
    ['bar to pascal', units.pascalsFromBar(1), 1e5],
    ['psi to pascal, B.8 rounds to 6.894757e3', units.pascalsFromPsi(1), 6894.757293168],
    [
      'kilometre per hour, B.8 rounds to 2.777778e-1',
      units.metresPerSecondFromKmh(1),
      0.2777777778,
    ],
    ['mile per hour', units.metresPerSecondFromMph(1), 0.44704],
    ['foot', units.metresFromFeet(1), 0.3048],
    ['degree, B.8 rounds to 1.745329e-2', units.radiansFromDegrees(1), 0.017453292519943],
    ['revolution per minute, B.8 1.047198e-1', units.radiansPerSecondFromRpm(1), 0.104719755],
  ])('%s', (_name, found, expected) => {
    expect(Math.abs(found / expected - 1)).toBeLessThan(5e-9);
  });

  test('standard gravity is the value of the 3rd CGPM, 1901', () => {
    expect(units.STANDARD_GRAVITY_MPS2).toBe(9.80665);
  });
});

describe('numbers a workshop meets', () => {
  test('1 bar is 14.503773773 psi', () => {
    expect(units.psiFromPascals(1e5)).toBeCloseTo(14.503773773, 9);
  });
  test('1200 psi is 82.737088 bar', () => {
    expect(units.barFromPascals(units.pascalsFromPsi(1200))).toBeCloseTo(82.737088, 6);
  });
  test('150 lbf is 667.233242 N', () => {
    expect(units.newtonsFromLbf(150)).toBeCloseTo(667.233242, 6);
  });
  test('a turn is 360 degrees', () => {
    expect(units.degreesFromRadians(2 * Math.PI)).toBeCloseTo(360, 12);
  });
});

test('there and back again is the identity', () => {
  const pairs: readonly [(x: number) => number, (x: number) => number][] = [
    [units.newtonsFromLbf, units.lbfFromNewtons],
    [units.pascalsFromBar, units.barFromPascals],
    [units.pascalsFromPsi, units.psiFromPascals],
    [units.metresPerSecondFromKmh, units.kmhFromMetresPerSecond],
    [units.metresPerSecondFromMph, units.mphFromMetresPerSecond],
    [units.metresFromFeet, units.feetFromMetres],
    [units.radiansFromDegrees, units.degreesFromRadians],
    [units.radiansPerSecondFromRpm, units.rpmFromRadiansPerSecond],
  ];
  // Subnormal numbers carry fewer digits than a relative comparison needs.
  const value = fc
    .double({ min: -1e6, max: 1e6, noNaN: true })
    .filter((x) => x === 0 || Math.abs(x) > 1e-300);
  fc.assert(
    fc.property(value, fc.constantFrom(...pairs), (x, [there, back]) => {
      expect(Math.abs(back(there(x)) - x)).toBeLessThanOrEqual(1e-14 * Math.abs(x));
    }),
  );
});
