import { describe, expect, test } from 'vitest';
import { downforceN, dragN } from '../../src/car/aero.ts';
import { expectRelative } from '../close-to.ts';

// Perantoni and Limebeer, Vehicle System Dynamics 52(5), 2014: 660 kg, drag and lift coefficients 0.9 and 3.0 on
// 1.5 m^2, air 1.2 kg/m^3. Friction 1.5 is assumed; both axles at their limit. Evaluated by hand.
describe('a published single-seater at the limit of grip', () => {
  const aero = { dragAreaM2: 1.35, downforceAreaM2: 4.5, frontShare: 0.45, airDensityKgpm3: 1.2 };
  const weight = 660 * 9.80665;

  test.each([
    [60, 0.4505, 4.2032],
    [30, 0.1126, 2.1758],
  ])('at %i m/s', (speed, dragG, totalG) => {
    const drag = dragN(aero, speed) / weight;
    const { front, rear } = downforceN(aero, speed);
    expectRelative(drag, dragG, 4e-4);
    expectRelative(drag + 1.5 * (1 + (front + rear) / weight), totalG, 1e-4);
  });

  test('downforce is shared by axle and grows with the square of the speed', () => {
    // 0.5 x 1.2 x 4.5 x 60^2 = 9720 N.
    const { front, rear } = downforceN(aero, 60);
    expectRelative(front, 4374, 1e-12);
    expectRelative(rear, 5346, 1e-12);
    expect(downforceN(aero, 0)).toEqual({ front: 0, rear: 0 });
  });
});
