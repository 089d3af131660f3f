import { describe, expect, test } from 'vitest';
import { axleFrictionFactor, frictionFactor, type Tyre } from '../../src/car/tyre.ts';
import { expectRelative } from '../close-to.ts';

const tyre: Tyre = {
  longitudinalFriction: 1.6,
  lateralFriction: 1.6,
  referenceLoadN: 3000,
  loadSensitivity: -0.1,
};

describe('load sensitivity (friction 1.6, -0.1 at 3000 N)', () => {
  test('an axle of 6000 N carries 9600 N evenly loaded and 9493.333 N at 4000 and 2000 N', () => {
    expectRelative(1.6 * 6000 * axleFrictionFactor(tyre, 6000, 0), 9600, 1e-9);
    expectRelative(1.6 * 6000 * axleFrictionFactor(tyre, 6000, 1000), 9493.333, 1e-6);
    expectRelative(1.6 * 6000 * axleFrictionFactor(tyre, 6000, -1000), 9493.333, 1e-6);
  });

  test('a lifted inner wheel takes no load beyond all of it', () => {
    expect(axleFrictionFactor(tyre, 6000, 9000)).toBeCloseTo(frictionFactor(tyre, 6000), 12);
  });
});
