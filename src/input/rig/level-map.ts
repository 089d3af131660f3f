import type { FieldLocation } from '../hid/report-field.ts';
import type { AxisCalibration } from './rig.ts';
import { shareOfSpan } from './share-of-span.ts';

/**
 * Resolves a pedal's calibration into the function that is applied to every sample: counts to level, clamped to
 * 0..1, dead zones taken out at both ends. Half of a combined axis is a calibration that rests in the middle; the
 * other pedal's travel then clamps to 0.
 * @throws Problem where the span is too small, outside the field or eaten up by its dead zones.
 */
export function levelMap(
  calibration: AxisCalibration,
  field: FieldLocation,
): (counts: number) => number {
  const share = shareOfSpan(calibration, field);
  const { deadStart } = calibration;
  const live = 1 - deadStart - calibration.deadEnd;
  return (counts) => Math.min(1, Math.max(0, (share(counts) - deadStart) / live));
}
