import { levelMap } from './level-map.ts';
import type { AxisAssignment } from './rig.ts';
import { steeringMap } from './steering-map.ts';

/**
 * Counts to what the axis stands for: degrees, left positive, for the steering, a level 0..1 for a pedal.
 * @throws Problem where the calibration cannot be used.
 */
export function axisMap(
  { role, calibration, field }: AxisAssignment,
  wheelLockDeg: number | null,
): (counts: number) => number {
  return role === 'steering'
    ? steeringMap(calibration, field, wheelLockDeg)
    : levelMap(calibration, field);
}
