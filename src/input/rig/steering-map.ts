import { Problem } from '../../problem.ts';
import type { FieldLocation } from '../hid/report-field.ts';
import type { AxisCalibration } from './rig.ts';
import { shareOfSpan } from './share-of-span.ts';

/**
 * Resolves a wheel's calibration into counts to degrees at the wheel, left positive (ISO 8855), clamped to the stops.
 * `rest` is straight ahead and `full` the left stop; the right stop is taken to be as far away. Dead zones lie around
 * straight ahead and before both stops.
 * @param wheelLockDeg Degrees from stop to stop.
 * @throws Problem where the span or the lock cannot be used.
 */
export function steeringMap(
  calibration: AxisCalibration,
  field: FieldLocation,
  wheelLockDeg: number | null,
): (counts: number) => number {
  const share = shareOfSpan(calibration, field);
  const stopDeg = checkLock(wheelLockDeg) / 2;
  const { deadStart } = calibration;
  const live = 1 - deadStart - calibration.deadEnd;
  return (counts) => {
    const toLeft = share(counts);
    const turned = Math.min(1, Math.max(0, (Math.abs(toLeft) - deadStart) / live));
    return toLeft < 0 ? -turned * stopDeg : turned * stopDeg;
  };
}

function checkLock(wheelLockDeg: number | null): number {
  if (wheelLockDeg !== null && wheelLockDeg > 0 && Number.isFinite(wheelLockDeg))
    return wheelLockDeg;
  throw new Problem("the wheel's turn from stop to stop is not known", {
    where: 'rig',
    next: 'Run `ebbline rig setup` and give the degrees from stop to stop, for example 900.',
  });
}
