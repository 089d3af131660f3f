import { expect, test } from 'vitest';
import type { LogRole } from '../../../src/trace/log/log-roles.ts';
import { unitFactor } from '../../../src/trace/log/log-units.ts';

/** NIST SP 811 (2008), appendix B.8. */
test.each<[LogRole, string, number]>([
  ['brake-front', 'bar', 1e5],
  ['brake-front', 'psi', 6894.757],
  ['brake-rear', 'MPa', 1e6],
  ['pedal-force', 'lbf', 4.448222],
  ['pedal-force', 'kgf', 9.80665],
  ['speed', 'mph', 0.44704],
  ['speed', 'km/h', 1 / 3.6],
  ['steering', 'rad', 57.29578],
  ['yaw-rate', 'deg/s', 0.01745329],
  ['lateral-acceleration', 'm/s²', 1],
  ['longitudinal-acceleration', 'g', 9.80665],
  ['distance', 'ft', 0.3048],
  ['time', 'ms', 1e-3],
  ['throttle', '%', 0.01],
])('%s in %s', (role, unit, factor) => {
  expect(unitFactor(role, unit)! / factor).toBeCloseTo(1, 6);
});

test('a unit of something else is none', () => {
  expect(unitFactor('speed', 'bar')).toBe(null);
  expect(unitFactor('brake-front', '')).toBe(null);
});
