import { test } from 'vitest';
import { criticalRateG } from '../../src/car/critical-rate.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CHASSIS } from '../reference/gt-example.ts';

// Hand-worked from Gillespie, Fundamentals of Vehicle Dynamics, ch. 3.
test('both axles of the GT example lock together at 1.713457 g', () => {
  expectRelative(criticalRateG(GT_CHASSIS, 0.777329), 1.713457, 1e-5);
});
